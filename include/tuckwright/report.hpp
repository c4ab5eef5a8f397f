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
/// Without a bundle (does-not-fit, not-found) "bundle", "gap" and "weight_g" are null and the lists empty.
/// Requires: finite numbers, and items, containers and steps that refer to items of the bundle.
std::string to_json(const Bundle& bundle);

/// A bundle from its JSON; from what to_json wrote, to_json gives the same bytes again.
/// Errors, each with its path, such as items[3].solids[0].center: too large, not JSON, not this format or version,
/// fields missing or of the wrong kind, references to no item, items twice, numbers that are not finite, printed
/// figures (volume, weights, gap, rotation matrices, where steps lead) that do not follow from the rest.
Result<Bundle> from_json(std::string_view text, const std::string& name);

} // namespace tuckwright
