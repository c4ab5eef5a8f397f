// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/problem_list.hpp"

#include <algorithm>
#include <numeric>
#include <set>
#include <utility>

namespace tuckwright::reading {

namespace {

/// Turns places into lines and columns of characters. Asked in the order of places, it reads the text once.
class ColumnCounter {
public:
    explicit ColumnCounter(std::string_view text) : text_(text) {}

    int column(Place place)
    {
        while (line_ < place.line) {
            const auto end = text_.find('\n', start_);
            if (end == std::string_view::npos) {
                break;
            }
            start_ = end + 1;
            ++line_;
            byte_ = 0;
            column_ = 1;
        }
        for (; byte_ < place.byte; ++byte_) {
            const std::size_t at = start_ + static_cast<std::size_t>(byte_);
            const bool starts_character =
                at >= text_.size() || (static_cast<unsigned char>(text_[at]) & 0xC0U) != 0x80U;
            column_ += starts_character ? 1 : 0;
        }
        return column_;
    }

private:
    std::string_view text_;
    std::size_t start_ = 0;
    int line_ = 0, byte_ = 0, column_ = 1;
};

} // namespace

void ProblemList::add(Place place, std::string what, std::string remedy)
{
    found_.push_back({place, std::move(what), std::move(remedy)});
}

void ProblemList::merge(const ProblemList& other)
{
    const auto key = [](const Found& f) { return std::pair(f.place, f.what); };
    std::set<std::pair<Place, std::string>> told;
    if (!other.empty()) {
        for (const Found& f : found_) {
            told.insert(key(f));
        }
    }
    for (const Found& f : other.found_) {
        if (!told.contains(key(f))) {
            found_.push_back(f);
        }
    }
}

void ProblemList::merge(const ProblemList& other, const std::set<Place>& own, std::string_view lead)
{
    std::set<std::pair<Place, std::string>> told;
    for (const Found& f : found_) {
        told.insert({f.place, f.what});
    }
    ProblemList led;
    for (const Found& f : other.found_) {
        if (own.contains(f.place)) {
            led.found_.push_back(f);
        } else if (!lead.empty() && !told.contains({f.place, f.what})) {
            led.found_.push_back({f.place, std::string(lead) + f.what, f.remedy});
        }
    }
    merge(led);
}

void ProblemList::belong_to(int file)
{
    for (Found& f : found_) {
        f.place.file = file;
    }
}

std::vector<Problem> ProblemList::in_order(std::span<const Source> sources) const
{
    std::vector<std::size_t> order(found_.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return found_[a].place < found_[b].place; });
    const std::size_t shown = found_.size() <= most ? found_.size() : most - 1;
    std::vector<Problem> problems;
    std::vector<ColumnCounter> counters;
    for (const Source& source : sources) {
        counters.emplace_back(source.text);
    }
    for (std::size_t i = 0; i < shown; ++i) {
        const Found& f = found_[order[i]];
        const auto file = static_cast<std::size_t>(f.place.file);
        require(file < sources.size(), "a problem's file is one of the sources");
        problems.push_back({sources[file].name, f.place.line + 1, counters[file].column(f.place), f.what, f.remedy});
    }
    if (shown < found_.size()) {
        problems.push_back({sources.front().name, 0, 0,
                            std::to_string(found_.size() - shown) + " more problems are not shown",
                            "mend those above first"});
    }
    return problems;
}

} // namespace tuckwright::reading
