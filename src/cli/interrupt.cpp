// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/interrupt.hpp"

#include <signal.h> // NOLINT(modernize-deprecated-headers): sigaction is not in <csignal>

namespace tuckwright::cli
{

namespace
{

std::atomic<bool> stop_asked{false};
static_assert(std::atomic<bool>::is_always_lock_free, "a signal handler may set it");

extern "C" void ask_to_stop(int) { stop_asked = true; }

} // namespace

const std::atomic<bool>& watch_for_interrupts()
{
    struct sigaction action {
    };
    action.sa_handler = ask_to_stop;
    // Back to the usual answer after the first; and no write is broken off by it.
    action.sa_flags = static_cast<int>(SA_RESETHAND | SA_RESTART);
    sigaction(SIGINT, &action, nullptr);
    sigaction(SIGTERM, &action, nullptr);
    return stop_asked;
}

} // namespace tuckwright::cli
