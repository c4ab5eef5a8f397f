// SPDX-License-Identifier: GPL-3.0-or-later
/// Problems gathered while a file is read, in any order, and put in order at the end.
#pragma once
#include <compare>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

#include "tuckwright/result.hpp"

namespace tuckwright::reading {

/// A place in a text: line and byte of the line, both from 0, as the YAML parser counts.
struct Place {
    int line = 0, byte = 0;
    int file = 0; ///< 0 for the file that was given, 1 for the one that it names
    friend bool operator==(const Place&, const Place&) = default;
    /// By file, line and byte.
    friend auto operator<=>(const Place& a, const Place& b)
    {
        return std::tie(a.file, a.line, a.byte) <=> std::tie(b.file, b.line, b.byte);
    }
};

/// A file as people know it.
struct Source {
    std::string_view text;
    std::string name;
};

class ProblemList {
public:
    void add(Place place, std::string what, std::string remedy);
    /// Adds the problems of another list, but for those that are told of the same place in the same words already.
    void merge(const ProblemList& other);
    /// The same for a second reading of the text, in which `own` places have another meaning: the problems there as they
    /// are, all others with `lead` before them, or not at all where there is none.
    void merge(const ProblemList& other, const std::set<Place>& own, std::string_view lead);
    /// From now on, the problems so far are those of that file.
    void belong_to(int file);
    std::size_t size() const { return found_.size(); }
    bool empty() const { return found_.empty(); }

    /// Every problem, by file, line and column (characters, from 1); those of one place stay in the order in which they were
    /// added. Ensures: at most `most`, the last of which then says how many more there are.
    /// Requires: a source for each file. Complexity: the texts once, and sorting.
    std::vector<Problem> in_order(std::span<const Source> sources) const;

    static constexpr std::size_t most = 1000;

private:
    struct Found {
        Place place;
        std::string what, remedy;
    };
    std::vector<Found> found_;
};

} // namespace tuckwright::reading
