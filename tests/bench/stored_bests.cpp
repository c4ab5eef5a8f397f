// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/stored_bests.hpp"

#include <filesystem>
#include <fmt/format.h>
#include <fstream>
#include <iterator>
#include <optional>
#include <sstream>

namespace tuckwright::bench {

namespace {

constexpr const char* heading = "case,best_ml,minutes,seed,seeds";

std::optional<std::pair<std::string, StoredBest>> entry_of(const std::string& line)
{
    const auto comma = line.find(',');
    if (comma == 0 || comma == std::string::npos) {
        return std::nullopt;
    }
    std::istringstream rest(line.substr(comma));
    StoredBest best;
    char first = 0, second = 0, third = 0, fourth = 0;
    rest >> first >> best.best_ml >> second >> best.minutes >> third >> best.seed >> fourth >> best.seeds;
    const bool sound = rest && rest.peek() == std::istringstream::traits_type::eof() && first == ',' && second == ',' &&
                       third == ',' && fourth == ',' && best.best_ml > 0 && best.minutes >= 0;
    return sound ? std::optional(std::pair(line.substr(0, comma), best)) : std::nullopt;
}

} // namespace

std::string csv_of(const StoredBests& bests)
{
    std::string text = std::string(heading) + "\n";
    for (const auto& [name, best] : bests) {
        text += fmt::format("{},{:.6f},{:.1f},{},{}\n", name, best.best_ml, best.minutes, best.seed, best.seeds);
    }
    return text;
}

Result<StoredBests> stored_bests(const std::string& text, const std::string& name)
{
    std::istringstream lines(text);
    std::string line;
    if (!std::getline(lines, line) || line != heading) {
        return Problem{name, 1, 1, "this is no file of stored bests", fmt::format("its first line is '{}'", heading)};
    }
    StoredBests bests;
    for (int number = 2; std::getline(lines, line); ++number) {
        const auto entry = entry_of(line);
        if (!entry) {
            return Problem{name, number, 1, "this is no stored best", "give a name and four numbers"};
        }
        bests.insert_or_assign(entry->first, entry->second);
    }
    return bests;
}

Result<StoredBests> read_stored_bests(const std::string& path)
{
    if (!std::filesystem::exists(path)) {
        return StoredBests();
    }
    std::ifstream file(path);
    const std::string text{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
    return stored_bests(text, path);
}

bool write_stored_bests(const std::string& path, const StoredBests& bests)
{
    const std::string beside = path + ".new"; // so that an interrupted run loses nothing
    {
        std::ofstream file(beside);
        file << csv_of(bests);
        if (!file.flush()) {
            return false;
        }
    }
    std::error_code error;
    std::filesystem::rename(beside, path, error);
    return !error;
}

} // namespace tuckwright::bench
