// SPDX-License-Identifier: GPL-3.0-or-later
#include "tuckwright/compare.hpp"

#include <algorithm>
#include <numeric>
#include <tuple>

#include "advice/compare_order.hpp"
#include "nesting/lower_bound.hpp"
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

/// Those that are packed, in an order that does not depend on the order of the rest.
class Round {
public:
    Round(std::vector<Compared>& kits, const CompareOptions& options) : kits_(kits), options_(options) {}

    bool stopped() const { return options_.search.stop != nullptr && options_.search.stop->load(); }

    void run()
    {
        const bool all = kits_.size() <= options_.most;
        const std::size_t most = std::min(kits_.size(), options_.most);
        std::size_t done = 0;
        for (const std::size_t next : all ? as_given() : by_hope(figures())) {
            if (!all && is_ruled_out(kits_[next])) {
                kits_[next].trial = Trial::ruled_out;
            } else if (done < most && !stopped()) {
                pack(kits_[next], done++, most);
            }
        }
    }

private:
    std::vector<std::size_t> as_given() const
    {
        std::vector<std::size_t> order(kits_.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        return order;
    }

    std::vector<Figures> figures() const
    {
        std::vector<Figures> all;
        for (const Compared& kit : kits_) {
            all.push_back({kit.lower_bound_ml, kit.empty_g});
        }
        return all;
    }

    void pack(Compared& kit, std::size_t done, std::size_t of)
    {
        if (options_.progress) {
            options_.progress(done, of);
        }
        kit.bundle = solve(kit.contender.chosen.kit, options_.search);
        kit.trial = Trial::packed;
        kit.lower_bound_ml = kit.bundle.lower_bound_ml;
        if (is_packed(kit)) {
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
    std::vector<Figures> found_;
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
    round.run();
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
