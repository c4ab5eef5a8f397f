// SPDX-License-Identifier: GPL-3.0-or-later
/// The air that is kept between pieces, and between pieces and walls.
#pragma once

namespace tuckwright::packing {

/// mm: where curved or turned surfaces meet, where flat faces along the axes do, and at the side walls of vessels as far as
/// there is play.
struct Air {
    double curved = 0, flat = 0, wall = 0;
};

} // namespace tuckwright::packing
