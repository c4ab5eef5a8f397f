// SPDX-License-Identifier: GPL-3.0-or-later
/// A linear program that grows by columns and tells its dual values; GLPK solves it.
#pragma once
#include <memory>
#include <vector>

namespace tuckwright::packing {

/// Minimises the cost over columns that are not negative, subject to rows that are at least their bounds.
class ColumnProgram {
public:
    /// Requires: at least one row.
    explicit ColumnProgram(const std::vector<double>& row_bounds);
    ~ColumnProgram();
    ColumnProgram(const ColumnProgram&) = delete;
    ColumnProgram& operator=(const ColumnProgram&) = delete;

    struct Entry {
        int row = 0;
        double factor = 0;
    };
    /// Adds a column and returns its index. Requires: no row twice.
    int add(double cost, const std::vector<Entry>& entries);
    /// Minimises, from where the last call ended. Returns whether an optimum was found within `pivots` steps.
    bool solve(int pivots);
    double cost() const;
    double value(int column) const;
    double dual(int row) const;

private:
    struct Problem;
    std::unique_ptr<Problem> problem_;
};

} // namespace tuckwright::packing
