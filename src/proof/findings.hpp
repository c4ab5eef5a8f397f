// SPDX-License-Identifier: GPL-3.0-or-later
/// Objections as they are found, and the words they are made of.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/proof.hpp"

namespace tuckwright::proof {

/// Collects at most a given number of objections.
class Findings {
public:
    /// Requires: at least one may be kept.
    explicit Findings(std::size_t most);
    void add(std::string rule, std::string what);
    bool full() const { return found_.size() >= most_; }
    bool empty() const { return found_.empty(); }
    std::vector<Objection> take() { return std::move(found_); }

private:
    std::size_t most_;
    std::vector<Objection> found_;
};

/// "cup 2" in quotation marks.
std::string named(const Bundle& bundle, std::size_t item);

/// A length as "0.3 mm", for a number of nanometres; "less than 0.000001 mm" where it is too small to print.
std::string in_mm(double nanometres);

} // namespace tuckwright::proof
