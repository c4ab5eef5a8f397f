// SPDX-License-Identifier: GPL-3.0-or-later
/// Numbered tasks on several threads.
#pragma once
#include <atomic>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace tuckwright::nesting {

/// Runs task(0) .. task(count - 1) on the given number of threads, or on as many as the system gives; an exception of one
/// is passed on.
template <class Task> void run_tasks(std::size_t count, unsigned threads, Task task)
{
    std::atomic<std::size_t> next{0};
    std::exception_ptr failure;
    std::mutex guard;
    const auto work = [&] {
        try {
            for (std::size_t k = next++; k < count; k = next++) {
                task(k);
            }
        } catch (...) {
            const std::lock_guard lock(guard);
            failure = std::current_exception();
        }
    };
    std::vector<std::thread> helpers;
    try {
        for (unsigned k = 1; k < threads; ++k) {
            helpers.emplace_back(work);
        }
    } catch (const std::exception&) { // no more threads, or no memory for them: those that there are do it all
    }
    work();
    for (auto& helper : helpers) {
        helper.join();
    }
    if (failure) {
        std::rethrow_exception(failure);
    }
}

} // namespace tuckwright::nesting
