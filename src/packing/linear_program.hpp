// SPDX-License-Identifier: GPL-3.0-or-later
/// A small linear program, row by row; GLPK solves it.
#pragma once
#include <memory>
#include <vector>

namespace tuckwright::packing {

class LinearProgram {
public:
    /// Values are of the order of `unit`: the solver's tolerance is about 1e-7 of it. Requires: unit > 0.
    explicit LinearProgram(double unit) : unit_(unit) {}

    /// Adds columns with the same bounds; returns the index of the first.
    int add_columns(int count, double low, double high);
    void set_cost(int column, double cost);
    /// Holds a column at a value.
    void fix(int column, double value);
    /// Adds a term to the row in the making.
    void add(int column, double factor);
    /// Closes the row in the making: its sum is at least `bound`.
    void at_least(double bound);
    std::size_t rows() const { return bounds_.size(); }
    /// Minimises the cost. Returns whether an optimum was found.
    bool solve();
    /// The column's value in the optimum.
    double value(int column) const { return values_[static_cast<std::size_t>(column)] * unit_; }

private:
    struct Column {
        double low, high, cost;
    };
    double unit_;
    std::vector<Column> columns_; // bounds in units
    std::vector<int> row_of_, column_of_;
    std::vector<double> factor_;
    std::vector<double> bounds_;
    std::vector<double> values_;
    std::vector<double> row_;      // dense row in the making
    std::vector<int> touched_;
};

} // namespace tuckwright::packing
