// SPDX-License-Identifier: GPL-3.0-or-later
/// What the program's exit status means.
#pragma once

namespace tuckwright::cli
{

inline constexpr int done = 0;
inline constexpr int no_bundle = 1;   ///< it does not fit, was not found, or was refused
inline constexpr int wrong_input = 2; ///< a file or an option
inline constexpr int our_bug = 3;
inline constexpr int interrupted = 130; ///< with the best bundle so far written

} // namespace tuckwright::cli
