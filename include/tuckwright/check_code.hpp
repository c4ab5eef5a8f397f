// SPDX-License-Identifier: GPL-3.0-or-later
/// A short code for a bundle, by which a printed card and a saved bundle are known to belong together.
#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "tuckwright/bundle.hpp"

namespace tuckwright {

/// Seven letters and digits, "7K3F-Q2W": the CRC-32 of everything that decides how the bundle is put together (the kit's
/// name, the envelope, every item's place, form, size and weight, the bag and bands, and the order of the steps) in the
/// thirty-two digits of Crockford. It tells mix-ups apart, all but one in four thousand million; it does not protect
/// against somebody who wants two bundles to have the same code.
/// Requires: steps that refer to items of the bundle. Ensures: the same for a bundle and its saved form.
/// Source: CRC-32 as in ITU-T V.42 (2002), 8.1.1.6.2, by Boost.CRC.
std::string check_code(const Bundle& bundle);

/// A code as somebody typed it, as check_code writes it: small letters, blanks and a missing dash do not matter, nor
/// O for 0 and I or L for 1. Nothing if it is no code.
std::optional<std::string> code_as_written(std::string_view typed);

} // namespace tuckwright
