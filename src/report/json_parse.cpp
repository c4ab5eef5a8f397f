// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/json_parse.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <vector>

namespace tuckwright::report
{

namespace
{

using nlohmann::json;

constexpr std::size_t most_bytes = std::size_t{64} * 1024 * 1024;
constexpr int deepest = 32;
constexpr std::size_t most_values = 8'000'000;

/// What ends the parsing early.
struct Refusal {
    std::string what;
};

/// Watches the parser's events.
class Watch
{
public:
    bool operator()(int depth, json::parse_event_t event, const json& parsed)
    {
        if (depth > deepest) {
            throw Refusal{fmt::format("nested deeper than {} levels", deepest)};
        }
        if (++values_ > most_values) {
            throw Refusal{fmt::format("more than {} values", most_values)};
        }
        if (event == json::parse_event_t::object_start) {
            keys_.emplace_back();
        } else if (event == json::parse_event_t::object_end) {
            keys_.pop_back();
        } else if (event == json::parse_event_t::key) {
            const auto& key = parsed.get_ref<const std::string&>();
            if (!keys_.back().insert(key).second) {
                throw Refusal{"the key " + parsed.dump() + " is there twice in one object"};
            }
        }
        return true;
    }

private:
    std::size_t values_ = 0;
    std::vector<std::set<std::string>> keys_;
};

Problem not_json(std::string_view text, const std::string& file, std::size_t byte, std::string what)
{
    const std::string_view before = text.substr(0, std::min(text.size(), byte > 0 ? byte - 1 : 0));
    const auto line = 1 + std::count(before.begin(), before.end(), '\n');
    const std::size_t start = before.rfind('\n') == std::string_view::npos ? 0 : before.rfind('\n') + 1;
    // The parser's message starts with its own name and place.
    if (const auto at = what.find("column "); at != std::string::npos) {
        if (const auto colon = what.find(": ", at); colon != std::string::npos) {
            what = what.substr(colon + 2);
        }
    }
    return {file, static_cast<int>(line), static_cast<int>(before.size() - start) + 1, "not JSON: " + what,
            "give a file that `pack --json` wrote"};
}

} // namespace

Result<json> parse_json(std::string_view text, const std::string& file)
{
    if (text.size() > most_bytes) {
        return Problem{file, 0, 0, "larger than 64 MiB", "give a file that `pack --json` wrote"};
    }
    try {
        Watch watch;
        return json::parse(
            text, [&](int depth, json::parse_event_t event, json& parsed) { return watch(depth, event, parsed); });
    } catch (const Refusal& refusal) {
        return Problem{file, 0, 0, refusal.what, "give a file that `pack --json` wrote"};
    } catch (const json::parse_error& error) {
        return not_json(text, file, error.byte, error.what());
    } catch (const json::exception& error) {
        return not_json(text, file, 0, error.what()); // a number beyond all doubles
    }
}

} // namespace tuckwright::report
