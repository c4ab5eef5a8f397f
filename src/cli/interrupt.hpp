// SPDX-License-Identifier: GPL-3.0-or-later
/// The user's wish to stop.
#pragma once
#include <atomic>

namespace tuckwright::cli
{

/// From now on SIGINT and SIGTERM set the flag that is returned; a second one of the kind ends the program at once.
const std::atomic<bool>& watch_for_interrupts();

} // namespace tuckwright::cli
