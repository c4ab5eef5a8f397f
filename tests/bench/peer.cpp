// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/peer.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fmt/format.h>
#include <future>
#include <iterator>
#include <memory>

namespace tuckwright::bench {

namespace {

namespace fs = std::filesystem;

/// A folder of its own that is gone afterwards.
class Scratch {
public:
    Scratch()
    {
        std::string name = (fs::temp_directory_path() / "tuckwright_bench.XXXXXX").string();
        if (mkdtemp(name.data()) != nullptr) {
            folder_ = name;
        }
    }
    Scratch(const Scratch&) = delete;
    Scratch& operator=(const Scratch&) = delete;
    ~Scratch()
    {
        std::error_code ignored;
        fs::remove_all(folder_, ignored);
    }
    const fs::path& folder() const { return folder_; }

private:
    fs::path folder_;
};

bool succeeds(const std::string& command) { return std::system(command.c_str()) == 0; }

/// The lines of a command's output, each as soon as it comes.
template <class Take> void run_and_read(const std::string& command, const Take& take)
{
    const std::unique_ptr<std::FILE, int (*)(std::FILE*)> pipe(popen(command.c_str(), "r"), pclose);
    char buffer[512];
    while (pipe != nullptr && std::fgets(buffer, sizeof buffer, pipe.get()) != nullptr) {
        take(std::string(buffer));
    }
}

/// The model as the solver reads it, in a file of its own; whether that could be done.
bool translated(const PeerModel& model, const fs::path& flat)
{
    const std::string path = fmt::format("{}/tests/bench/{}", TUCKWRIGHT_SOURCE_DIR, model.file), to = flat.string();
    return succeeds(
        fmt::format("timeout 60 minizinc -c --solver gecode '{}' -D '{}' --fzn '{}' --ozn '{}.out' 2> /dev/null", path,
                    model.data, to, to));
}

PeerAnswer solved(const fs::path& flat, const PeerTask& task, double scale, double seconds)
{
    PeerAnswer answer;
    std::optional<double> told = task.only;
    const auto begin = std::chrono::steady_clock::now();
    // 'timeout' in case that the solver does not look at its clock for long.
    run_and_read(fmt::format("timeout {:.0f} fzn-gecode -a -t {:.0f} '{}' 2> /dev/null", std::ceil(seconds) + 2,
                             1000 * seconds, flat.string()),
                 [&](const std::string& line) {
                     const std::chrono::duration<double> so_far = std::chrono::steady_clock::now() - begin;
                     if (const auto value = objective_in(line, task.objective)) {
                         told = *value * scale;
                     } else if (ends_solution(line) && told) {
                         answer.trace.push_back({so_far.count(), *told});
                     }
                     answer.finished |= ends_search(line);
                 });
    return answer;
}

} // namespace

std::optional<double> objective_in(const std::string& line, const std::string& objective)
{
    const std::string start = objective + " = ";
    if (line.rfind(start, 0) != 0) {
        return std::nullopt;
    }
    const char* number = line.c_str() + start.size();
    char* end = nullptr;
    const double value = std::strtod(number, &end);
    return end != number && *end == ';' ? std::optional<double>(value) : std::nullopt;
}

bool ends_solution(const std::string& line) { return line.rfind("----------", 0) == 0; }

bool ends_search(const std::string& line) { return line.rfind("==========", 0) == 0; }

bool has_peer()
{
    return succeeds("command -v minizinc > /dev/null 2>&1") && succeeds("command -v fzn-gecode > /dev/null 2>&1");
}

Trace merged(const std::vector<Trace>& traces)
{
    Trace all, best;
    for (const Trace& trace : traces) {
        all.insert(all.end(), trace.begin(), trace.end());
    }
    std::sort(all.begin(), all.end(), [](const Point& a, const Point& b) { return a.seconds < b.seconds; });
    std::copy_if(all.begin(), all.end(), std::back_inserter(best),
                 [&best](const Point& point) { return best.empty() || point.value < best.back().value; });
    return best;
}

std::optional<PeerAnswer> ask_peer(const PeerTask& task, double seconds)
{
    const Scratch scratch;
    std::vector<fs::path> flat;
    for (const PeerModel& model : task.models) {
        flat.push_back(scratch.folder() / fmt::format("model-{}.fzn", flat.size()));
        if (!translated(model, flat.back())) {
            return std::nullopt;
        }
    }
    std::vector<std::future<PeerAnswer>> at_work;
    for (std::size_t k = 0; k < flat.size(); ++k) {
        at_work.push_back(std::async(std::launch::async, solved, flat[k], task, task.models[k].scale, seconds));
    }
    PeerAnswer together;
    std::vector<Trace> traces;
    for (auto& one : at_work) {
        PeerAnswer answer = one.get();
        together.finished |= answer.finished;
        traces.push_back(std::move(answer.trace));
    }
    together.trace = merged(traces);
    return together;
}

} // namespace tuckwright::bench
