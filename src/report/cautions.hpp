// SPDX-License-Identifier: GPL-3.0-or-later
/// Usual cautions for what burns, cuts or stands under pressure.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/bundle.hpp"

namespace tuckwright::report
{

/// One sentence for each kind of danger that the items' ids, names or contents speak of, with the items it is about.
std::vector<std::string> cautions(const Bundle& bundle);

} // namespace tuckwright::report
