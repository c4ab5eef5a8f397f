// SPDX-License-Identifier: GPL-3.0-or-later
/// Problems in what the user gave, and results that are either a value or a list of problems.
#pragma once
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "tuckwright/contract.hpp"

namespace tuckwright {

/// One thing wrong with an input file. Lines and columns count from 1; 0 means that there is no such place.
struct Problem {
    std::string file;
    int line = 0;
    int column = 0;
    std::string what;   ///< what is wrong, with the figures
    std::string remedy; ///< how to mend it
};

/// "file:line:column: what; remedy", without the parts that are empty.
std::string to_string(const Problem& problem);

/// A value, or at least one problem.
template <class T> class Result {
public:
    Result(T value) : held_(std::move(value)) {}
    Result(std::vector<Problem> problems) : held_(std::move(problems))
    {
        require(!std::get<1>(held_).empty(), "a failed result has at least one problem");
    }
    Result(Problem problem) : held_(std::vector<Problem>{std::move(problem)}) {}

    bool ok() const { return held_.index() == 0; }
    explicit operator bool() const { return ok(); }
    /// Requires: ok().
    const T& value() const&
    {
        require(ok(), "a result's value is only read when it is ok");
        return std::get<0>(held_);
    }
    T&& value() &&
    {
        require(ok(), "a result's value is only read when it is ok");
        return std::get<0>(std::move(held_));
    }
    const T& operator*() const& { return value(); }
    const T* operator->() const { return &value(); }
    /// Requires: not ok().
    const std::vector<Problem>& problems() const
    {
        require(!ok(), "a result's problems are only read when it failed");
        return std::get<1>(held_);
    }

private:
    std::variant<T, std::vector<Problem>> held_;
};

} // namespace tuckwright
