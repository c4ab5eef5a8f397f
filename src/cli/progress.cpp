// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/progress.hpp"

#include <fmt/format.h>
#include <unistd.h>

#include <chrono>
#include <condition_variable>
#include <cstdio>
#include <mutex>

#include "cli/messages.hpp"
#include "report/words.hpp"

namespace tuckwright::cli
{

namespace
{

/// A line on the terminal that says how far the search has come; nothing where standard error is no terminal.
class ProgressLine
{
public:
    ProgressLine() : terminal_(::isatty(STDERR_FILENO) == 1 && !is_quiet()) {}
    ProgressLine(const ProgressLine&) = delete;
    ProgressLine& operator=(const ProgressLine&) = delete;
    ~ProgressLine() { wipe(); }

    void show(double best_ml)
    {
        const std::string text = "searching; best so far " + report::volume_in_words(best_ml, report::Rounding::up);
        if (text == shown_) {
            return;
        }
        if (is_verbose()) {
            note(text);
            shown_ = text;
        } else if (terminal_) {
            wipe();
            std::fputs(text.c_str(), stderr);
            std::fflush(stderr);
            shown_ = text;
        }
    }

private:
    void wipe() const
    {
        if (terminal_ && !is_verbose() && !shown_.empty()) {
            std::fprintf(stderr, "\r%*s\r", static_cast<int>(shown_.size()), "");
            std::fflush(stderr);
        }
    }

    bool terminal_; ///< and not told to be quiet
    std::string shown_;
};

} // namespace

Bundle search(const Kit& kit, SolveOptions options)
{
    note(fmt::format("{} things, {} effort, seed {}", kit.items.size(), to_string(options.effort), options.seed));
    ProgressLine line;
    options.progress = [&line](double best_ml) { line.show(best_ml); };
    return solve(kit, options);
}

WorkingLine::WorkingLine(const std::string& what)
{
    if (::isatty(STDERR_FILENO) != 1 || is_quiet() || is_verbose()) {
        return;
    }
    teller_ = std::jthread([what](const std::stop_token& stop) {
        std::mutex mutex;
        std::condition_variable_any ended;
        std::unique_lock lock(mutex);
        std::size_t width = 0;
        for (int seconds = 1; !stop.stop_requested(); ++seconds) {
            ended.wait_for(lock, stop, std::chrono::seconds(1), [] { return false; });
            if (!stop.stop_requested()) {
                const std::string text = fmt::format("{}; {} s", what, seconds);
                std::fprintf(stderr, "\r%s", text.c_str());
                std::fflush(stderr);
                width = text.size();
            }
        }
        std::fprintf(stderr, "\r%*s\r", static_cast<int>(width), "");
    });
}

} // namespace tuckwright::cli
