// SPDX-License-Identifier: GPL-3.0-or-later
/// A kit from the tree of its file, without choices.
#pragma once
#include "kit/fields.hpp"
#include "tuckwright/kit.hpp"

namespace tuckwright::reading
{

/// The kit; not sound where a problem has been reported.
Kit read_kit(Reading& reading, const Node& node);

} // namespace tuckwright::reading
