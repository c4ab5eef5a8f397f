// SPDX-License-Identifier: GPL-3.0-or-later
/// The last overlap of large layouts removed without linear programs.
#pragma once
#include "packing/polish.hpp"

namespace tuckwright::packing {

/// Pushes all bodies apart until they keep the air of the options, and wraps the envelope round them, a little larger
/// where they are jammed. Ensures: true, and overlaps and excesses below 2e-8 mm and gaps kept; or false, and the layout as
/// it was. Complexity: that of relax(), times few.
bool loosen(Layout& layout, const PolishOptions& options);

} // namespace tuckwright::packing
