// SPDX-License-Identifier: GPL-3.0-or-later
#include "packing/linear_program.hpp"

#include <glpk.h>

#include "packing/solver_environment.hpp"

namespace tuckwright::packing {

namespace {

struct SolverEnvironment {
    SolverEnvironment() { glp_init_env(); }
    ~SolverEnvironment() { glp_free_env(); }
    SolverEnvironment(const SolverEnvironment&) = delete;
    SolverEnvironment& operator=(const SolverEnvironment&) = delete;
};

} // namespace

void use_solver()
{
    thread_local const SolverEnvironment environment;
    (void)environment; // made on a thread's first use, freed when the thread ends
}

int LinearProgram::add_columns(int count, double low, double high)
{
    const int first = static_cast<int>(columns_.size());
    columns_.insert(columns_.end(), static_cast<std::size_t>(count), Column{low / unit_, high / unit_, 0});
    row_.resize(columns_.size(), 0);
    return first;
}

void LinearProgram::set_cost(int column, double cost) { columns_[static_cast<std::size_t>(column)].cost = cost; }

void LinearProgram::fix(int column, double value)
{
    columns_[static_cast<std::size_t>(column)].low = columns_[static_cast<std::size_t>(column)].high = value / unit_;
}

void LinearProgram::add(int column, double factor)
{
    if (factor != 0) {
        if (row_[static_cast<std::size_t>(column)] == 0) {
            touched_.push_back(column);
        }
        row_[static_cast<std::size_t>(column)] += factor;
    }
}

void LinearProgram::at_least(double bound)
{
    bounds_.push_back(bound / unit_);
    for (const int column : touched_) {
        double& factor = row_[static_cast<std::size_t>(column)];
        if (factor != 0) {
            row_of_.push_back(static_cast<int>(bounds_.size()));
            column_of_.push_back(column + 1);
            factor_.push_back(factor);
            factor = 0;
        }
    }
    touched_.clear();
}

bool LinearProgram::solve()
{
    use_solver();
    const std::unique_ptr<glp_prob, void (*)(glp_prob*)> problem(glp_create_prob(), glp_delete_prob);
    glp_add_cols(problem.get(), static_cast<int>(columns_.size()));
    for (std::size_t k = 0; k < columns_.size(); ++k) {
        const Column& column = columns_[k];
        glp_set_col_bnds(problem.get(), static_cast<int>(k) + 1, column.low < column.high ? GLP_DB : GLP_FX, column.low,
                         column.high);
        glp_set_obj_coef(problem.get(), static_cast<int>(k) + 1, column.cost);
    }
    if (!bounds_.empty()) {
        glp_add_rows(problem.get(), static_cast<int>(bounds_.size()));
    }
    for (std::size_t k = 0; k < bounds_.size(); ++k) {
        glp_set_row_bnds(problem.get(), static_cast<int>(k) + 1, GLP_LO, bounds_[k], 0);
    }
    // GLPK's arrays count from 1.
    row_of_.insert(row_of_.begin(), 0);
    column_of_.insert(column_of_.begin(), 0);
    factor_.insert(factor_.begin(), 0);
    glp_load_matrix(problem.get(), static_cast<int>(factor_.size()) - 1, row_of_.data(), column_of_.data(), factor_.data());
    glp_smcp parameters;
    glp_init_smcp(&parameters);
    parameters.msg_lev = GLP_MSG_OFF;
    parameters.meth = GLP_DUALP;
    parameters.it_lim = static_cast<int>(200 + 3 * bounds_.size()); // it may cycle where contacts abound
    const bool solved = glp_simplex(problem.get(), &parameters) == 0 && glp_get_status(problem.get()) == GLP_OPT;
    values_.assign(columns_.size(), 0);
    for (std::size_t k = 0; solved && k < columns_.size(); ++k) {
        values_[k] = glp_get_col_prim(problem.get(), static_cast<int>(k) + 1);
    }
    return solved;
}

} // namespace tuckwright::packing
