// SPDX-License-Identifier: GPL-3.0-or-later
/// Problems gathered while a file is read, in any order, and put in order at the end.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "tuckwright/result.hpp"

namespace tuckwright::reading
{

/// A place in the text: line and byte of the line, both from 0, as the YAML parser counts.
struct Place {
    int line = 0, byte = 0;
    friend auto operator<=>(const Place&, const Place&) = default;
};

class ProblemList
{
public:
    void add(Place place, std::string what, std::string remedy);
    /// Adds the problems of another list, but for those that are told of the same place in the same words already.
    void merge(const ProblemList& other);
    bool empty() const { return found_.empty(); }

    /// Every problem, by line and column (characters, from 1); those of one place stay in the order in which they were
    /// added. Ensures: at most `most`, the last of which then says how many more there are.
    /// Complexity: the text once, and sorting.
    std::vector<Problem> in_order(std::string_view text, const std::string& file) const;

    static constexpr std::size_t most = 1000;

private:
    struct Found {
        Place place;
        std::string what, remedy;
    };
    std::vector<Found> found_;
};

} // namespace tuckwright::reading
