// SPDX-License-Identifier: GPL-3.0-or-later
#include "packing/column_program.hpp"

#include <glpk.h>

#include "packing/solver_environment.hpp"

namespace tuckwright::packing {

struct ColumnProgram::Problem {
    glp_prob* lp = glp_create_prob();
    Problem() = default;
    ~Problem() { glp_delete_prob(lp); }
    Problem(const Problem&) = delete;
    Problem& operator=(const Problem&) = delete;
};

ColumnProgram::ColumnProgram(const std::vector<double>& row_bounds)
{
    use_solver();
    problem_ = std::make_unique<Problem>();
    glp_add_rows(problem_->lp, static_cast<int>(row_bounds.size()));
    for (std::size_t row = 0; row < row_bounds.size(); ++row) {
        glp_set_row_bnds(problem_->lp, static_cast<int>(row) + 1, GLP_LO, row_bounds[row], 0);
    }
}

ColumnProgram::~ColumnProgram() = default;

int ColumnProgram::add(double cost, const std::vector<Entry>& entries)
{
    const int column = glp_add_cols(problem_->lp, 1);
    glp_set_col_bnds(problem_->lp, column, GLP_LO, 0, 0);
    glp_set_obj_coef(problem_->lp, column, cost);
    std::vector<int> rows{0}; // GLPK's arrays count from 1
    std::vector<double> factors{0};
    for (const Entry& entry : entries) {
        rows.push_back(entry.row + 1);
        factors.push_back(entry.factor);
    }
    glp_set_mat_col(problem_->lp, column, static_cast<int>(entries.size()), rows.data(), factors.data());
    return column - 1;
}

bool ColumnProgram::solve(int pivots)
{
    glp_smcp parameters;
    glp_init_smcp(&parameters);
    parameters.msg_lev = GLP_MSG_OFF;
    parameters.meth = GLP_PRIMAL;
    parameters.it_lim = pivots;
    return glp_simplex(problem_->lp, &parameters) == 0 && glp_get_status(problem_->lp) == GLP_OPT;
}

double ColumnProgram::cost() const { return glp_get_obj_val(problem_->lp); }
double ColumnProgram::value(int column) const { return glp_get_col_prim(problem_->lp, column + 1); }
double ColumnProgram::dual(int row) const { return glp_get_row_dual(problem_->lp, row + 1); }

} // namespace tuckwright::packing
