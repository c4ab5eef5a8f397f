// SPDX-License-Identifier: GPL-3.0-or-later
/// What the figures were measured on.
#pragma once
#include <string>

namespace tuckwright::bench {

/// The processor's model as the system names it, and how many cores there are: "Some CPU @ 2 GHz, 2 cores".
std::string machine();

/// The program: version, kind of build, compiler.
std::string build();

} // namespace tuckwright::bench
