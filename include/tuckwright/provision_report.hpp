// SPDX-License-Identifier: GPL-3.0-or-later
/// What a trip needs, for people and programs to read.
#pragma once
#include <string>

#include "tuckwright/provision.hpp"

namespace tuckwright {

/// The answer for a person at the table: what to take along, in what; the working line by line; where the figures come
/// from; cautions. Requires: a kit with a trip, and what provision() says of that.
std::string provision_text(const Provision& needs, const Kit& kit);

/// The same as one JSON object ("tuckwright-provision", version 1), ending in a newline. Requires: the same.
std::string provision_json(const Provision& needs, const Kit& kit);

/// A few lines for below a packed bundle: what was packed for the trip, or that nothing was. Requires: the same.
std::string provided_text(const Provision& needs);

} // namespace tuckwright
