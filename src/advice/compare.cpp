// SPDX-License-Identifier: GPL-3.0-or-later
#include "tuckwright/compare.hpp"

#include <algorithm>
#include <mutex>
#include <thread>
#include <tuple>

#include "advice/compare_order.hpp"
#include "nesting/lower_bound.hpp"
#include "nesting/run_tasks.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/stowage.hpp"
#include "tuckwright/worst_case.hpp"

namespace tuckwright {

namespace {

/// Weight and bound, as far as they are known without a search.
Compared entered(Contender&& contender)
{
    Compared kit;
    kit.contender = std::move(contender);
    const Kit& given = kit.contender.chosen.kit;
    kit.lower_bound_ml = nesting::lower_bound_ml(pressed_in(given.worst_case ? worst_case(given) : given));
    for (const Item& item : given.items) {
        kit.empty_g += item.count * item.weight_g;
        kit.contents_g += item.contents ? item.count * item.contents->weight_g : 0;
    }
    kit.empty_g += given.bag ? given.bag->weight_g : 0;
    for (const Band& band : given.bands) {
        kit.empty_g += band.weight_g;
    }
    return kit;
}

bool is_packed(const Compared& kit) { return kit.trial == Trial::packed && has_bundle(kit.bundle.status); }

double packed_ml(const Compared& kit) { return volume_ml(outer_envelope(kit.bundle)); }

/// One after the other, or several at a time.
class Round {
public:
    Round(std::vector<Compared>& kits, const CompareOptions& options)
        : kits_(kits), options_(options), search_(options.search)
    {
    }

    bool stopped() const { return options_.search.stop != nullptr && options_.search.stop->load(); }

    /// Packs all, each on threads of its own.
    void all()
    {
        const unsigned machine = std::max(1U, std::thread::hardware_concurrency());
        const unsigned threads = options_.search.threads == 0 ? machine : options_.search.threads;
        const auto number = static_cast<unsigned>(kits_.size());
        most_ = kits_.size();
        search_.threads = std::max(1U, threads / number);
        nesting::run_tasks(kits_.size(), std::min(threads, number), [&](std::size_t k) { pack(kits_[k]); });
    }

    /// Packs those that hope for most, one after the other, for each may rule out others.
    void best()
    {
        most_ = options_.most;
        for (const std::size_t next : by_hope(figures())) {
            if (is_ruled_out(kits_[next])) {
                kits_[next].trial = Trial::ruled_out;
            } else {
                pack(kits_[next]);
            }
        }
    }

private:
    std::vector<Figures> figures() const
    {
        std::vector<Figures> all;
        for (const Compared& kit : kits_) {
            all.push_back({kit.lower_bound_ml, kit.empty_g});
        }
        return all;
    }

    /// Whether one more is to be packed now.
    bool begins()
    {
        const std::lock_guard lock(guard_);
        if (done_ == most_ || stopped()) {
            return false;
        }
        if (options_.progress) {
            options_.progress(done_, most_);
        }
        ++done_;
        return true;
    }

    void pack(Compared& kit)
    {
        if (!begins()) {
            return;
        }
        kit.bundle = solve(kit.contender.chosen.kit, search_);
        kit.trial = Trial::packed;
        kit.lower_bound_ml = kit.bundle.lower_bound_ml;
        if (is_packed(kit)) {
            const std::lock_guard lock(guard_);
            found_.push_back({packed_ml(kit), kit.empty_g});
        }
    }

    bool is_ruled_out(const Compared& kit) const
    {
        const Figures best{kit.lower_bound_ml, kit.empty_g};
        return std::any_of(found_.begin(), found_.end(), [&](const Figures& found) { return beats(found, best); });
    }

    std::vector<Compared>& kits_;
    const CompareOptions& options_;
    SolveOptions search_;
    std::size_t most_ = 0, done_ = 0;
    std::vector<Figures> found_;
    std::mutex guard_;
};

void mark(std::vector<Compared>& kits)
{
    for (Compared& kit : kits) {
        kit.unbeaten =
            is_packed(kit) && std::none_of(kits.begin(), kits.end(), [&](const Compared& other) {
                return is_packed(other) && beats({packed_ml(other), other.empty_g}, {packed_ml(kit), kit.empty_g});
            });
    }
}

/// With a bundle, without one, and not packed.
int standing(const Compared& kit) { return is_packed(kit) ? 0 : kit.trial == Trial::packed ? 1 : 2; }

} // namespace

Comparison compare(std::vector<Contender> contenders, const CompareOptions& options)
{
    require(!contenders.empty(), "there is at least one kit to compare");
    Comparison comparison{options.search.seed, to_string(options.search.effort), options.most, false, {}};
    for (Contender& contender : contenders) {
        comparison.kits.push_back(entered(std::move(contender)));
    }
    Round round(comparison.kits, options);
    comparison.kits.size() <= options.most ? round.all() : round.best();
    comparison.stopped = round.stopped();
    mark(comparison.kits);
    const auto rank = [](const Compared& kit) {
        return std::tuple(standing(kit), is_packed(kit) ? packed_ml(kit) : kit.lower_bound_ml, kit.empty_g);
    };
    std::stable_sort(comparison.kits.begin(), comparison.kits.end(),
                     [&](const Compared& a, const Compared& b) { return rank(a) < rank(b); });
    return comparison;
}

} // namespace tuckwright
