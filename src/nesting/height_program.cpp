// SPDX-License-Identifier: GPL-3.0-or-later
#include "nesting/height_program.hpp"

#include <algorithm>
#include <cmath>

#include "nesting/tiny.hpp"
#include "packing/column_program.hpp"

namespace tuckwright::nesting {

namespace {

constexpr int most_sets = 4000;    // looked at for one cell


using CellSet = std::uint64_t;

/// [cell]: the cells whose levels its contents may cross.
std::vector<CellSet> reaches(const LevelModel& model, const ChoicesLeft& left)
{
    const std::size_t n = model.cells.size();
    std::vector<CellSet> found(n, 0);
    for (std::size_t cell = 0; cell < n; ++cell) {
        found[cell] = CellSet{1} << cell;
    }
    for (bool grown = true; grown;) {
        grown = false;
        for (std::size_t cell = 1; cell < n; ++cell) {
            if (!model.cells[cell].open) {
                continue;
            }
            CellSet reach = found[cell];
            const auto& choices = model.choices[at(model.cells[cell].body)];
            for (std::size_t k = 0; k < choices.size(); ++k) {
                const bool is_left = (left[at(model.cells[cell].body)] >> k & 1) != 0;
                if (!is_left) {
                    continue;
                }
                if (choices[k].cell == vague) { // it may be anywhere
                    reach = ~CellSet{0};
                } else if (model.stances[at(choices[k].stance)].form == packing::Form::standing) {
                    reach |= found[at(choices[k].cell)];
                }
            }
            grown = grown || reach != found[cell];
            found[cell] = reach;
        }
    }
    return found;
}

} // namespace

std::vector<Turned> turned_in(const LevelModel& model, std::size_t cell, const ChoicesLeft& left)
{
    std::vector<Turned> turned(model.slabs.size(), Turned::square);
    if (model.cells[cell].plan.round && cell > 0) {
        return turned; // of no matter
    }
    const std::vector<CellSet> reach = reaches(model, left);
    for (std::size_t body = 0; body < left.size(); ++body) {
        for (std::size_t k = 0; k < model.choices[body].size(); ++k) {
            const Choice& choice = model.choices[body][k];
            const Stance& stance = model.stances[at(choice.stance)];
            const bool stands_out = (left[body] >> k & 1) != 0 && stance.nested && choice.cell != static_cast<int>(cell) &&
                                    (choice.cell == vague || (reach[at(choice.cell)] >> cell & 1) != 0);
            for (int s = stance.first; stands_out && s < stance.first + stance.slabs; ++s) {
                turned[at(s)] = Turned::anyhow;
            }
        }
    }
    return turned;
}

LevelState::LevelState(const LevelModel& model, const SharedRules& cells, const ChoicesLeft& left)
    : reach_(reaches(model, left)), stance_left_(model.stances.size(), false),
      takes_fluid_(model.cells.size(), false)
{
    for (const auto& rules : cells) {
        cells_.push_back(*rules);
    }
    for (std::size_t body = 0; body < left.size(); ++body) {
        for (std::size_t k = 0; k < model.choices[body].size(); ++k) {
            if ((left[body] >> k & 1) != 0) {
                stance_left_[at(model.choices[body][k].stance)] = true;
            }
        }
    }
    allow_slabs(model, left);
    keep_off_vessels(model, left);
}

void LevelState::allow_slabs(const LevelModel& model, const ChoicesLeft& left)
{
    std::vector<SlabSet> may(cells_.size());
    for (std::size_t body = 0; body < left.size(); ++body) {
        CellSet fluid = 0;
        for (std::size_t k = 0; k < model.choices[body].size(); ++k) {
            if ((left[body] >> k & 1) == 0) {
                continue;
            }
            const Choice& choice = model.choices[body][k];
            const Stance& stance = model.stances[at(choice.stance)];
            const CellSet reach = choice.cell == vague ? ~CellSet{0} : reach_[at(choice.cell)];
            fluid |= stance.missed > 0 ? reach : 0;
            for (std::size_t cell = 0; cell < cells_.size(); ++cell) {
                for (int s = stance.first; (reach >> cell & 1) != 0 && s < stance.first + stance.slabs; ++s) {
                    may[cell].set(at(s));
                }
            }
        }
        for (std::size_t cell = 0; cell < cells_.size(); ++cell) {
            takes_fluid_[cell] = takes_fluid_[cell] || (fluid >> cell & 1) != 0 || model.missed_always > 0;
        }
    }
    for (std::size_t cell = 0; cell < cells_.size(); ++cell) {
        cells_[cell].allowed &= may[cell];
    }
}

namespace {

/// The one open vessel that the body may lie in, if there is no other; 0 if there is none or several.
std::size_t only_open_vessel(const LevelModel& model, const ChoicesLeft& left, std::size_t body)
{
    std::size_t vessel = 0;
    for (std::size_t k = 0; k < model.choices[body].size(); ++k) {
        const Choice& choice = model.choices[body][k];
        if ((left[body] >> k & 1) == 0 || !model.stances[at(choice.stance)].nested) {
            continue;
        }
        if (choice.cell == vague) {
            return 0;
        }
        if (model.cells[at(choice.cell)].open) {
            if (vessel != 0 && vessel != at(choice.cell)) {
                return 0;
            }
            vessel = at(choice.cell);
        }
    }
    return vessel;
}

/// Whether the body can lie directly in no other cell.
bool lies_only_in(const LevelModel& model, const ChoicesLeft& left, std::size_t body, std::size_t cell)
{
    for (std::size_t k = 0; k < model.choices[body].size(); ++k) {
        if ((left[body] >> k & 1) != 0 && model.choices[body][k].cell != static_cast<int>(cell)) {
            return false;
        }
    }
    return true;
}

} // namespace

/// What can lie in one open vessel only and crosses a level outside of it is above that vessel's rim there, and within
/// its prism: so it is beside nothing of the vessel, and only beside such other contents as it would lie beside within.
/// The same holds for the vessel that this vessel can only lie in, and so on. Beside other things it is no farther to the
/// side than its vessel allows.
void LevelState::keep_off_vessels(const LevelModel& model, const ChoicesLeft& left)
{
    std::vector<SlabSet> contents(cells_.size()), direct(cells_.size()), of_body(left.size()), nested(left.size());
    for (std::size_t s = 0; s < model.slabs.size(); ++s) {
        of_body[at(model.slabs[s].body)].set(s);
        nested[at(model.slabs[s].body)].set(s, model.slabs[s].nested);
    }
    for (std::size_t body = 0; body < left.size(); ++body) {
        for (std::size_t k = 0; k < model.choices[body].size(); ++k) {
            const int cell = model.choices[body][k].cell;
            if ((left[body] >> k & 1) != 0 && cell > 0) {
                direct[at(cell)] |= nested[body];
            }
        }
        std::size_t vessel = only_open_vessel(model, left, body);
        for (std::size_t step = 0; vessel != 0 && step < cells_.size(); ++step) {
            contents[vessel] |= nested[body];
            const std::size_t holder = at(model.cells[vessel].body), outer = only_open_vessel(model, left, holder);
            vessel = outer != 0 && lies_only_in(model, left, holder, outer) ? outer : 0;
        }
    }
    for (std::size_t vessel = 1; vessel < cells_.size(); ++vessel) {
        keep_near_vessel(model, vessel, contents[vessel], direct);
        const SlabSet& its = of_body[at(model.cells[vessel].body)];
        for (std::size_t s = 0; contents[vessel].any() && s < model.slabs.size(); ++s) {
            const bool inside = contents[vessel].test(s);
            if (!inside && !its.test(s)) {
                continue;
            }
            const SlabSet off = inside ? its | (contents[vessel] & ~cells_[vessel].together[s]) : contents[vessel];
            for (std::size_t cell = 0; cell < cells_.size(); ++cell) {
                if (cell != vessel && !(inside && direct[cell].test(s))) { // what lies in a cell may be beside a vessel there
                    cells_[cell].together[s] &= ~(off & ~(contents[vessel] & direct[cell]));
                }
            }
        }
    }
}

void LevelState::keep_near_vessel(const LevelModel& model, std::size_t vessel, const SlabSet& contents,
                                  const std::vector<SlabSet>& direct)
{
    const RoundVessel its{model.cells[vessel].outside, model.cells[vessel].plan.half_length};
    if (its.outside <= 0 || contents.none()) {
        return;
    }
    const auto lying = [&](std::size_t cell, std::size_t s) {
        return Lying{model.slabs[s].footprint, model.slabs[s].whole, cells_[cell].turned[s]};
    };
    for (std::size_t cell = 0; cell < cells_.size(); ++cell) {
        for (std::size_t s = 0; cell != vessel && s < model.slabs.size(); ++s) {
            if (!contents.test(s) || direct[cell].test(s) || !cells_[cell].allowed.test(s)) {
                continue;
            }
            for (std::size_t other = 0; other < model.slabs.size(); ++other) {
                if (cells_[cell].together[s].test(other) && (!contents.test(other) || direct[cell].test(other)) &&
                    !fit_beside_standing_out(lying(cell, s), its, lying(cell, other), cells_[cell].plan)) {
                    cells_[cell].together[s].reset(other);
                    cells_[cell].together[other].reset(s);
                }
            }
        }
    }
}

namespace {

double stance_worth(const LevelModel& model, const Stance& stance, const LevelWeights& weights)
{
    double worth = weights.fluid * stance.missed;
    for (int s = stance.first; s < stance.first + stance.slabs; ++s) {
        worth += weights.slab[at(s)] * model.slabs[at(s)].height;
    }
    return worth;
}

/// What the bodies are worth at least.
double least_worth(const LevelModel& model, const LevelState& state, const LevelWeights& weights)
{
    std::vector<double> least(model.choices.size(), infinite);
    for (std::size_t k = 0; k < model.stances.size(); ++k) {
        const Stance& stance = model.stances[k];
        if (state.has_stance(static_cast<int>(k))) {
            least[at(stance.body)] = std::min(least[at(stance.body)], stance_worth(model, stance, weights));
        }
    }
    double sum = weights.fluid * (model.missed_always - model.vague_room);
    for (std::size_t body = 0; body < least.size(); ++body) {
        sum += model.choices[body].empty() ? 0 : least[body];
    }
    return sum;
}

struct Priced {
    double height = 0;
    std::vector<Heaviest> heaviest; ///< by cell
};

Priced priced(const LevelModel& model, const LevelState& state, const LevelWeights& weights, std::uint64_t& work)
{
    Priced found;
    double rest = least_worth(model, state, weights) * (1 - hair);
    for (std::size_t cell = 0; cell < model.cells.size(); ++cell) {
        const double fluid = state.takes_fluid(cell) ? weights.fluid : 0;
        found.heaviest.push_back(heaviest_set(model.slabs, state.cells()[cell], weights.slab, fluid, most_sets, work));
        rest -= cell == 0 ? 0 : found.heaviest.back().weight * model.cells[cell].depth;
    }
    const double level = found.heaviest.front().weight;
    constexpr double nothing = 1e-12;
    found.height = rest <= nothing ? 0 : level <= nothing ? infinite : rest / level;
    return found;
}

/// The linear program: how much of each stance each body takes, and how much of the cells' heights each set.
class Master {
public:
    Master(const LevelModel& model, const LevelState& state, double enough)
        : model_(model), state_(state), slab_row_(model.slabs.size(), -1), area_(state.cells().front().plan.area()),
          program_(bounds())
    {
        for (std::size_t body = 0; body < model.choices.size(); ++body) {
            if (!model.choices[body].empty()) { // at such a cost it need not be anywhere
                program_.add(20 * enough, {{body_row(body), 1}});
            }
        }
        for (std::size_t k = 0; k < model.stances.size(); ++k) {
            if (state.has_stance(static_cast<int>(k))) {
                add_stance(model.stances[k]);
            }
        }
    }

    void add(const LevelColumn& column)
    {
        std::vector<packing::ColumnProgram::Entry> entries;
        double free = state_.cells()[column.cell].plan.area();
        for (std::size_t s = 0; s < model_.slabs.size(); ++s) {
            if (column.set.test(s)) {
                entries.push_back({slab_row_[s], 1});
                free -= model_.slabs[s].footprint.area();
            }
        }
        if (state_.takes_fluid(column.cell)) {
            entries.push_back({fluid_row(), free / area_});
        }
        if (column.cell > 0) {
            entries.push_back({cell_row(column.cell), -1});
        }
        program_.add(column.cell == 0 ? 1 : 0, entries);
        columns_.push_back(column);
    }

    bool solve() { return program_.solve(2000); }
    double cost() const { return program_.cost(); }
    int rows() const { return rows_; }
    const std::vector<LevelColumn>& columns() const { return columns_; }

    LevelWeights weights() const
    {
        LevelWeights found{std::vector<double>(model_.slabs.size(), 0), 0};
        for (std::size_t s = 0; s < slab_row_.size(); ++s) {
            found.slab[s] = slab_row_[s] < 0 ? 0 : std::max(0.0, program_.dual(slab_row_[s]));
        }
        found.fluid = std::max(0.0, program_.dual(fluid_row())) / area_;
        return found;
    }
    double cell_price(std::size_t cell) const { return cell == 0 ? 1 : program_.dual(cell_row(cell)); }

private:
    int body_row(std::size_t body) const { return static_cast<int>(body); }
    int cell_row(std::size_t cell) const { return static_cast<int>(model_.choices.size() + cell - 1); }
    int fluid_row() const { return static_cast<int>(model_.choices.size() + model_.cells.size()) - 1; }

    std::vector<double> bounds()
    {
        std::vector<double> found;
        for (const auto& choices : model_.choices) {
            found.push_back(choices.empty() ? 0 : 1);
        }
        for (std::size_t cell = 1; cell < model_.cells.size(); ++cell) {
            found.push_back(-model_.cells[cell].depth);
        }
        found.push_back((model_.missed_always - model_.vague_room) / area_);
        for (std::size_t k = 0; k < model_.stances.size(); ++k) {
            const Stance& stance = model_.stances[k];
            for (int s = stance.first; state_.has_stance(static_cast<int>(k)) && s < stance.first + stance.slabs; ++s) {
                slab_row_[at(s)] = static_cast<int>(found.size());
                found.push_back(0);
            }
        }
        rows_ = static_cast<int>(found.size());
        return found;
    }

    void add_stance(const Stance& stance)
    {
        std::vector<packing::ColumnProgram::Entry> entries{{body_row(at(stance.body)), 1}};
        for (int s = stance.first; s < stance.first + stance.slabs; ++s) {
            entries.push_back({slab_row_[at(s)], -model_.slabs[at(s)].height});
        }
        entries.push_back({fluid_row(), -stance.missed / area_});
        program_.add(0, entries);
    }

    const LevelModel& model_;
    const LevelState& state_;
    std::vector<int> slab_row_;
    double area_;
    int rows_ = 0;
    std::vector<LevelColumn> columns_;
    packing::ColumnProgram program_;
};

void add_first_columns(Master& master, const LevelModel& model, const LevelState& state,
                       const std::vector<LevelColumn>& columns)
{
    for (std::size_t cell = 0; cell < model.cells.size(); ++cell) {
        master.add({cell, {}});
        for (std::size_t s = 0; s < model.slabs.size(); ++s) {
            if (state.cells()[cell].allowed.test(s)) {
                SlabSet alone;
                master.add({cell, alone.set(s)});
            }
        }
    }
    for (LevelColumn column : columns) {
        column.set &= state.cells()[column.cell].allowed;
        if (column.set.count() > 1 && may_share_level(model.slabs, state.cells()[column.cell], column.set)) {
            master.add(column);
        }
    }
}

} // namespace

double height_by_weights(const LevelModel& model, const LevelState& state, const LevelWeights& weights,
                         std::uint64_t& work)
{
    return priced(model, state, weights, work).height;
}

HeightBound height_by_program(const LevelModel& model, const LevelState& state, const std::vector<LevelColumn>& columns,
                              double enough, std::uint64_t& work)
{
    HeightBound best;
    Master master(model, state, enough);
    add_first_columns(master, model, state, columns);
    constexpr int most_turns = 60;
    constexpr double near = 0.003;
    for (int turn = 0; turn < most_turns && master.solve(); ++turn) {
        const auto rows = static_cast<std::uint64_t>(master.rows());
        work += rows * rows / 4 + rows * 8; // about what pivots cost, in sets
        const LevelWeights weights = master.weights();
        const Priced found = priced(model, state, weights, work);
        if (best.weights.slab.empty() || found.height > best.height) {
            best.height = found.height;
            best.weights = weights;
        }
        bool added = false;
        for (std::size_t cell = 0; cell < model.cells.size(); ++cell) {
            if (found.heaviest[cell].weight > master.cell_price(cell) + 1e-7) {
                master.add({cell, found.heaviest[cell].set});
                added = true;
            }
        }
        if (!added || best.height >= enough || best.height >= master.cost() * (1 - near)) {
            break;
        }
    }
    best.columns.assign(master.columns().begin(), master.columns().end());
    best.columns.erase(std::remove_if(best.columns.begin(), best.columns.end(),
                                      [](const LevelColumn& c) { return c.set.count() < 2; }),
                       best.columns.end());
    constexpr std::size_t most_kept = 300;
    if (best.columns.size() > most_kept) {
        best.columns.erase(best.columns.begin(), best.columns.end() - most_kept);
    }
    return best;
}

} // namespace tuckwright::nesting
