// SPDX-License-Identifier: GPL-3.0-or-later
/// How much a test may do: sanitizers make everything some eight times slower, and look for other faults.
#pragma once

namespace tuckwright::test {

#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
inline constexpr bool slow_build = true;
#else
inline constexpr bool slow_build = false;
#endif

/// The count for an ordinary build, and the smaller one for a build with sanitizers.
constexpr int count(int ordinary, int slow) { return slow_build ? slow : ordinary; }

} // namespace tuckwright::test
