// SPDX-License-Identifier: GPL-3.0-or-later
/// Random bundles without a search: things thrown into vessels and beside them, as far as they stand free.
#pragma once
#include <cstdint>

#include "tuckwright/bundle.hpp"

namespace room_test {

/// A vessel or two, open or shut, round or square, with cylinders, boxes and cups in and beside them, some on top of each
/// other, in a bundle with room to spare. Ensures: check() has no objection; the same seed, the same bundle.
tuckwright::Bundle random_bundle(std::uint64_t seed);

} // namespace room_test
