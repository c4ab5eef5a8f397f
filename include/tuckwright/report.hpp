// SPDX-License-Identifier: GPL-3.0-or-later
/// What people and programs read: text and JSON.
#pragma once
#include <string>
#include <string_view>

#include "tuckwright/bundle.hpp"
#include "tuckwright/result.hpp"

namespace tuckwright {

/// The bundle for a person at the table: envelope, volume, weight, bound and gap, what lies in what, steps, cautions.
std::string text_report(const Bundle& bundle);

/// The bundle as one JSON object ("tuckwright-bundle", version 1), ending in a newline; the same bundle gives the
/// same bytes. Lengths have as many decimals as they need, six at most, and are the very numbers that were proved.
std::string to_json(const Bundle& bundle);

/// A bundle from its JSON. Errors: not JSON, not this format or version, fields missing or of the wrong kind, numbers
/// that are not finite, printed figures (volume, total weight, gap, rotation matrices) that do not follow from the rest.
Result<Bundle> from_json(std::string_view text, const std::string& name);

} // namespace tuckwright
