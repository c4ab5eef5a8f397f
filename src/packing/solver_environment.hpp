// SPDX-License-Identifier: GPL-3.0-or-later
/// GLPK's memory for each thread.
#pragma once

namespace tuckwright::packing {

/// To be called before a program is made: GLPK keeps an environment for each thread and frees none by itself.
void use_solver();

} // namespace tuckwright::packing
