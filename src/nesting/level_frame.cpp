// SPDX-License-Identifier: GPL-3.0-or-later
// Two that can't be side by side at some of their levels. What is side by side is so in the innermost cell that holds both:
// what stands out of an open vessel keeps to that vessel's prism.
//
// Lying cylinders: at a level h above or below its middle one is sqrt(r^2 - h^2) wide to each side. The widest share of its
// width that still fits beside the other, found by halving, gives the levels that must be apart. Two of them: for twelve
// levels of the one.
//
// What leans: a limited height means that it leans so far at least, so that it goes from side to side; beside anything
// wide only so many of its levels may be (plan_sets). Of two intervals longer than that, one then begins no more than
// that below the other's end.
#include "nesting/level_frame.hpp"

#include <algorithm>
#include <cmath>

#include "nesting/tiny.hpp"

namespace tuckwright::nesting {

namespace {

std::optional<Choice> only_choice(const LevelModel& model, const ChoicesLeft& left, int body)
{
    const auto& choices = model.choices[at(body)];
    std::optional<Choice> found;
    for (std::size_t k = 0; k < choices.size(); ++k) {
        if ((left[at(body)] >> k & 1) != 0) {
            if (found) {
                return std::nullopt;
            }
            found = choices[k];
        }
    }
    return found;
}

} // namespace

LevelFrame::LevelFrame(const LevelModel& model, const LevelState& state, const ChoicesLeft& left, std::size_t root)
    : model_(model), state_(state), left_(left), root_(root)
{
    for (std::size_t body = 0; body < left.size(); ++body) {
        add_job(static_cast<int>(body));
    }
    for (LevelJob& job : jobs_) {
        for (std::size_t k = 0; k + 1 < job.cells.size(); ++k) {
            for (std::size_t other = 0; other < jobs_.size(); ++other) {
                if (jobs_[other].body == model_.cells[job.cells[k]].body) {
                    job.holders.push_back(other);
                }
            }
        }
    }
}

bool LevelFrame::holds(std::size_t vessel, std::size_t job) const
{
    const auto& holders = jobs_[job].holders;
    return std::find(holders.begin(), holders.end(), vessel) != holders.end();
}

bool LevelFrame::is_in(const LevelJob& job, std::size_t cell)
{
    return std::find(job.cells.begin(), job.cells.end(), cell) != job.cells.end();
}

std::size_t LevelFrame::cell_of(const LevelJob& job, std::size_t holder) const
{
    return *std::find_if(job.cells.begin(), job.cells.end(),
                         [&](std::size_t cell) { return model_.cells[cell].body == jobs_[holder].body; });
}

std::optional<double> LevelFrame::floor(const LevelJob& job, std::size_t holder) const
{
    const LevelCell& cell = model_.cells[cell_of(job, holder)];
    return cell.open_below ? std::nullopt : std::optional(std::max(0.0, jobs_[holder].height - cell.depth));
}

/// Whether what is in the cell may stand out of it, and its vessel stands in a known place.
LevelFrame::Rim LevelFrame::rim(std::size_t cell) const
{
    if (cell == 0 || !model_.cells[cell].open) {
        return Rim::closed;
    }
    const int vessel = model_.cells[cell].body;
    const auto& choices = model_.choices[at(vessel)];
    bool may_stand = false;
    for (std::size_t k = 0; k < choices.size(); ++k) {
        may_stand = may_stand || ((left_[at(vessel)] >> k & 1) != 0 &&
                                  (choices[k].cell == vague ||
                                   model_.stances[at(choices[k].stance)].form == packing::Form::standing));
    }
    return !may_stand ? Rim::closed : only_choice(model_, left_, vessel) ? Rim::open : Rim::unknown;
}

void LevelFrame::add_job(int body)
{
    const auto choice = only_choice(model_, left_, body);
    if (!choice || choice->cell == vague || model_.stances[at(choice->stance)].slabs == 0) {
        return;
    }
    LevelJob job;
    job.body = body;
    auto cell = at(choice->cell);
    while (job.cells.size() <= model_.cells.size()) {
        job.cells.push_back(cell);
        const Rim its = rim(cell);
        if (its == Rim::closed) {
            break;
        }
        const auto vessel = only_choice(model_, left_, model_.cells[cell].body);
        if (its == Rim::unknown || !vessel || vessel->cell == vague) {
            return;
        }
        cell = at(vessel->cell);
    }
    if (job.cells.back() != root_ || rim(root_) != Rim::closed) {
        return;
    }
    const Stance& stance = model_.stances[at(choice->stance)];
    for (int s = stance.first; s < stance.first + stance.slabs; ++s) {
        job.height += model_.slabs[at(s)].height;
        job.zones.push_back({at(s), 0, job.height});
    }
    for (Zone& zone : job.zones) { // each lies in the midst of the next
        zone.from = (job.height - zone.to) / 2;
        zone.to += zone.from;
    }
    job.lies_round = stance.slabs > 1 && !model_.slabs[at(stance.first)].footprint.disc;
    job.along = stance.along;
    job.across = stance.across;
    job.most_tilt = stance.most_tilt;
    jobs_.push_back(std::move(job));
}

/// The innermost that both are in; nothing if one holds the other.
std::optional<std::size_t> LevelFrame::common_cell(std::size_t i, std::size_t j) const
{
    if (holds(i, j) || holds(j, i)) {
        return std::nullopt;
    }
    const auto& cells = jobs_[i].cells;
    const auto cell = std::find_if(cells.begin(), cells.end(), [&](std::size_t c) { return is_in(jobs_[j], c); });
    return cell == cells.end() ? std::nullopt : std::optional(*cell);
}

double LevelFrame::distance_apart(std::size_t i, std::size_t j, double height) const
{
    const auto cell = common_cell(i, j);
    if (!cell) {
        return -infinite;
    }
    const LevelRules& rules = state_.cells()[*cell];
    double most = -infinite;
    for (const Zone& one : jobs_[i].zones) {
        for (const Zone& other : jobs_[j].zones) {
            if (!rules.together[one.slab].test(other.slab) && one.to - one.from > hair && other.to - other.from > hair) {
                most = std::max(most, one.to - other.from);
            }
        }
    }
    if (jobs_[i].lies_round || jobs_[j].lies_round) {
        most = std::max(most, distance_of_round(jobs_[i], jobs_[j], rules));
    }
    if (jobs_[i].leans() != jobs_[j].leans() && rules.plan.round) {
        most = std::max(most, distance_of_leaning(i, j, *cell, height));
    }
    return most;
}

/// Of a lying cylinder, that share of its width; of other things the outline of their innermost slab.
Lying LevelFrame::outline(const LevelJob& job, double share, const LevelRules& rules) const
{
    const std::size_t slab = job.zones.front().slab;
    Lying found{model_.slabs[slab].footprint, model_.slabs[slab].whole, rules.turned[slab]};
    if (job.lies_round) {
        found.footprint.half_width = share * found.whole.half_width;
    }
    return found;
}

/// Of two of which one at least is a lying cylinder.
double LevelFrame::distance_of_round(const LevelJob& one, const LevelJob& other, const LevelRules& rules) const
{
    const LevelJob& narrowed = one.lies_round ? one : other;
    const LevelJob& fixed = one.lies_round ? other : one;
    constexpr int levels_of_fixed = 12, halvings = 40;
    double most = -infinite;
    for (int step = 0; step < (fixed.lies_round ? levels_of_fixed : 1); ++step) {
        const double sine = fixed.lies_round ? (step + 0.5) / levels_of_fixed : 0; // of its radius, above its middle
        const Lying beside = outline(fixed, std::sqrt(1 - sine * sine), rules);
        const auto fits = [&](double share) { return fit_side_by_side(outline(narrowed, share, rules), beside, rules.plan); };
        if (fits(1)) {
            continue;
        }
        double low = 0, high = fits(0) ? 1 : 0; // at `high` it does not fit
        for (int k = 0; k < halvings && high > 0; ++k) {
            const double middle = (low + high) / 2;
            (fits(middle) ? low : high) = middle;
        }
        const double its_end = narrowed.height / 2 * (1 + std::sqrt(1 - high * high));
        const double end = fixed.lies_round ? fixed.height / 2 * (1 + sine) : fixed.zones.front().to;
        most = std::max(most, its_end + end - other.height); // zones are in the midst: the end of one, less the other's start
    }
    return most;
}

/// In radians. At t, it is 2 (along cos t + across sin t) high.
double LevelFrame::least_tilt(const LevelJob& rod, double height) const
{
    double floors = 0;
    for (const std::size_t holder : rod.holders) {
        floors += floor(rod, holder).value_or(0);
    }
    const double half = (height - floors) / 2 * (1 + hair), whole = std::hypot(rod.along, rod.across);
    if (half >= rod.along) {
        return 0; // it may stand
    }
    constexpr double rounding = 1e-6; // radians
    const double tilt = std::atan2(rod.across, rod.along) + std::acos(std::clamp(half / whole, -1.0, 1.0)) - rounding;
    return std::clamp(tilt, 0.0, rod.most_tilt);
}

/// Of one that leans and one that does not. What is seen from above of the axis, where levels cut all of the rod, is
/// 2 (along sin t - across sin t tan t) long. That is concave, so least at an end of the range of tilts.
double LevelFrame::distance_of_leaning(std::size_t i, std::size_t j, std::size_t cell, double height) const
{
    const bool is_first = jobs_[i].leans();
    const LevelJob& rod = jobs_[is_first ? i : j];
    const LevelJob& other = jobs_[is_first ? j : i];
    if (rod.cells.front() != cell) {
        return -infinite;
    }
    const auto seen = [&](double t) { return 2 * (rod.along * std::sin(t) - rod.across * std::sin(t) * std::tan(t)); };
    const double tilt = least_tilt(rod, height);
    const Zone& core = rod.zones.front();
    const Leaning leaning{model_.slabs[core.slab].footprint.inner(), std::min(seen(tilt), seen(rod.most_tilt))};
    double most = -infinite;
    for (const Zone& zone : other.zones) {
        const Slab& slab = model_.slabs[zone.slab];
        const double part = longest_beside_leaning(leaning, {slab.footprint, slab.whole, Turned::anyhow},
                                                   state_.cells()[cell].plan.half_length);
        const double levels = tilt > 0 ? part / std::tan(tilt) : infinite;
        if (levels < std::min(core.to - core.from, zone.to - zone.from)) {
            most = std::max(most, (is_first ? core.to - zone.from : zone.to - core.from) - levels);
        }
    }
    return most;
}

} // namespace tuckwright::nesting
