// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. For each thing in a chain some kits with it smaller or without it. Each is pushed together as it lies in the
// bundle, which can only help, and searched anew as far as the work allows. What a search finds might be luck rather than
// the change: so the thing is given its size again in that arrangement, or put back. Where the bundle is smaller still, it
// is the new one, and all is asked again, with what was searched before at hand.
#include "tuckwright/savings.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <map>
#include <thread>

#include "nesting/run_tasks.hpp"
#include "play/group.hpp"
#include "solve/compacted.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/geometry.hpp"

namespace tuckwright {

namespace {

/// Share below which one volume counts as no smaller than another: rounding to the grid and the last compaction.
constexpr double as_good = 1e-5;

/// A thing of the kit that some chain goes through.
struct Thing {
    std::size_t item = 0;        ///< of the kit
    std::size_t placed = 0;      ///< of the bundle: the copy in the chain
    std::vector<WhatIf> smaller; ///< what is asked of its size: a millimetre and a tenth, if that is another length
};

/// The own dimension of an item that lies along a chain.
Dimension side_along(const PlacedItem& item, const Vec3& along)
{
    const Solid& body = item.solids.front();
    const Matrix3 turn = rotation_matrix(body.pose.turn);
    const auto share = [&](std::size_t k) { return std::abs(dot(play::axis_of(turn, k), along)); };
    if (std::holds_alternative<Cylinder>(body.shape)) {
        return share(2) > std::sqrt(0.5) ? Dimension::height : Dimension::diameter;
    }
    return share(2) >= std::max(share(0), share(1)) ? Dimension::height
           : share(0) >= share(1)                   ? Dimension::length
                                                    : Dimension::width;
}

double size_of(const Shape& shape, Dimension side)
{
    if (const auto* c = std::get_if<Cylinder>(&shape)) {
        return side == Dimension::height ? c->height : c->diameter;
    }
    const auto& b = std::get<Box>(shape);
    return side == Dimension::height ? b.height : side == Dimension::length ? b.length : b.width;
}

std::size_t index_in(const Kit& kit, const std::string& id)
{
    const auto found = std::find_if(kit.items.begin(), kit.items.end(), [&](const Item& one) { return one.id == id; });
    require(found != kit.items.end(), "a bundle holds things of its kit");
    return static_cast<std::size_t>(found - kit.items.begin());
}

/// What is asked about the size of a thing, where it is more than a base or a wall that the chain goes through.
void ask_smaller(const Kit& kit, const Bundle& bundle, const Chain& chain, const Stretch& stretch, Thing& thing)
{
    if (stretch.part != StretchPart::whole && stretch.part != StretchPart::lid) {
        return;
    }
    const PlacedItem& placed = bundle.items[*stretch.item];
    const Item& item = kit.items[thing.item];
    WhatIf ask;
    ask.item = thing.item;
    ask.side = side_along(placed, chain.along);
    ask.form = placed.stowed;
    ask.shut = placed.closes.has_value();
    const bool is_asked = std::any_of(thing.smaller.begin(), thing.smaller.end(),
                                      [&](const WhatIf& other) { return other.side == ask.side; });
    if (is_asked) {
        return;
    }
    const bool is_plate = ask.shut && ask.side == Dimension::height;
    const double size = is_plate ? item.closes->adds : size_of(placed.solids.front().shape, *ask.side);
    ask.mm = 1;
    thing.smaller.push_back(ask);
    ask.change = Change::a_tenth;
    ask.mm = std::floor(size + 1e-9) / 10; // of whole millimetres, so that it is not overstated
    if (ask.mm > 0 && ask.mm != 1) {
        thing.smaller.push_back(ask);
    }
}

std::vector<Thing> things_in(const Kit& kit, const Bundle& bundle, const std::vector<Chain>& chains)
{
    std::vector<Thing> things;
    for (const Chain& chain : chains) {
        for (const Stretch& stretch : chain.stretches) {
            if (!stretch.item) {
                continue;
            }
            const std::size_t item = index_in(kit, bundle.items[*stretch.item].id);
            auto thing = std::find_if(things.begin(), things.end(), [&](const Thing& one) { return one.item == item; });
            if (thing == things.end()) {
                things.push_back({item, *stretch.item, {}});
                thing = things.end() - 1;
            }
            ask_smaller(kit, bundle, chain, stretch, *thing);
        }
    }
    return things;
}

int copies_of(const Kit& kit)
{
    int copies = 0;
    for (const Item& item : kit.items) {
        copies += item.count;
    }
    return copies;
}

/// How many searches a kit gets: their work grows with the square of its things.
int searches_for(int things)
{
    constexpr int most = 14, usual = 15;
    return things <= usual ? most : most * usual * usual / (things * things);
}

Effort less(Effort effort) { return effort == Effort::thorough ? Effort::normal : Effort::quick; }

class Asker {
public:
    Asker(const Kit& kit, const SolveOptions& options) : kit_(kit), options_(options) {}

    SizeAnswer answer()
    {
        constexpr int most_rounds = 3;
        constexpr double first_share = 0.35; // of the seconds, for the bundle itself
        SolveOptions first = options_;
        first.seconds *= first_share;
        answer_.bundle = solve(kit_, first);
        if (!has_bundle(answer_.bundle.status)) {
            return std::move(answer_);
        }
        for (int round = 0; round < most_rounds; ++round) {
            answer_.chains = chains(answer_.bundle);
            if (!ask_all()) {
                break;
            }
        }
        const auto saved = [&](const WhatIf& one) { return saved_ml(answer_.bundle, one); };
        std::stable_sort(answer_.what_ifs.begin(), answer_.what_ifs.end(), [&](const WhatIf& a, const WhatIf& b) {
            return a.bundle && b.bundle ? saved(a) > saved(b) : a.bundle && !b.bundle;
        });
        return std::move(answer_);
    }

private:
    using Key = std::tuple<std::size_t, Change, std::optional<Dimension>, std::string, bool>;

    /// What is known of one thing in one round.
    struct Known {
        std::vector<WhatIf> what_ifs;
        std::map<Key, std::optional<Bundle>> searched;
        std::optional<Bundle> better; ///< of the kit itself
    };

    static Key key_of(const WhatIf& ask) { return {ask.item, ask.change, ask.side, ask.form, ask.shut}; }

    bool is_over() const
    {
        const std::chrono::duration<double> since = std::chrono::steady_clock::now() - begin_;
        return (options_.stop != nullptr && options_.stop->load()) ||
               (options_.seconds > 0 && since.count() > options_.seconds);
    }

    /// Asks about every thing of the chains; whether a better bundle was found, which is the answer's then.
    bool ask_all()
    {
        const std::vector<Thing> things = things_in(kit_, answer_.bundle, answer_.chains);
        allow_searches(things);
        std::vector<Known> known(things.size());
        const unsigned threads =
            options_.threads != 0 ? options_.threads : std::max(1u, std::thread::hardware_concurrency());
        nesting::run_tasks(things.size(), threads, [&](std::size_t k) { known[k] = ask_about(things[k]); });
        answer_.what_ifs.clear();
        std::optional<Bundle> better;
        for (Known& one : known) {
            answer_.what_ifs.insert(answer_.what_ifs.end(), one.what_ifs.begin(), one.what_ifs.end());
            searched_.merge(one.searched);
            if (one.better && (!better || packed_volume_ml(*one.better) < packed_volume_ml(*better))) {
                better = std::move(one.better);
            }
        }
        answer_.stopped = is_over();
        if (!better) {
            return false;
        }
        better->seed = answer_.bundle.seed;
        better->effort = answer_.bundle.effort;
        better->status = answer_.bundle.status == Status::proved_best ? Status::found : answer_.bundle.status;
        better->lower_bound_ml = std::min(answer_.bundle.lower_bound_ml, packed_volume_ml(*better));
        answer_.bundle = std::move(*better);
        answer_.bettered = true;
        return true;
    }

    /// First a tenth less of each thing, and each left at home; then, if all of it is within the work, a millimetre less.
    void allow_searches(const std::vector<Thing>& things)
    {
        allowed_.clear();
        int left = searches_for(copies_of(kit_)) - static_cast<int>(searched_.size());
        const auto allow = [&](const WhatIf& ask) {
            if (searched_.count(key_of(ask)) == 0 && left > 0) {
                allowed_[key_of(ask)] = true;
                --left;
            }
        };
        for (const Change change : {Change::left_out, Change::a_tenth, Change::a_millimetre}) {
            for (const Thing& thing : things) {
                if (change == Change::left_out) {
                    allow(leaving_out(thing));
                }
                for (const WhatIf& ask : thing.smaller) {
                    if (ask.change == change) {
                        allow(ask);
                    }
                }
            }
        }
    }

    static WhatIf leaving_out(const Thing& thing)
    {
        WhatIf ask;
        ask.item = thing.item;
        ask.change = Change::left_out;
        return ask;
    }

    Known ask_about(const Thing& thing) const
    {
        Known known;
        std::vector<Kit> kits;
        for (WhatIf ask : thing.smaller) {
            if (const auto kit = changed(kit_, ask)) {
                try_all(*kit, answer_.bundle, ask, known);
                kits.push_back(*kit);
            } else {
                kits.emplace_back();
            }
            known.what_ifs.push_back(std::move(ask));
        }
        for (std::size_t k = 0; k < kits.size(); ++k) { // what one is, the other may be too
            for (std::size_t other = 0; other < kits.size(); ++other) {
                const WhatIf &to = known.what_ifs[k], &from = known.what_ifs[other];
                if (k != other && to.side == from.side && !kits[k].items.empty() && is_smaller(from)) {
                    consider(compacted(kits[k], *from.bundle), known.what_ifs[k]);
                }
            }
        }
        WhatIf out = leaving_out(thing);
        if (const auto kit = changed(kit_, out)) {
            try_all(*kit, less_of(answer_.bundle, thing), out, known);
            for (const WhatIf& ask : known.what_ifs) {
                if (is_smaller(ask)) {
                    consider(compacted(*kit, less_of(*ask.bundle, thing)), out);
                }
            }
        }
        known.what_ifs.push_back(std::move(out));
        return known;
    }

    bool is_smaller(const WhatIf& ask) const
    {
        return ask.bundle && packed_volume_ml(*ask.bundle) < packed_volume_ml(answer_.bundle) * (1 - as_good);
    }

    /// The bundle without the thing, and without a lid of it that is carried loose.
    Bundle less_of(const Bundle& bundle, const Thing& thing) const
    {
        const PlacedItem& gone = answer_.bundle.items[thing.placed];
        std::optional<std::size_t> loose_lid;
        for (std::size_t k = 0; k < bundle.items.size(); ++k) {
            const Item& item = kit_.items[index_in(kit_, bundle.items[k].id)];
            if (item.closes && item.closes->item == thing.item && bundle.items[k].copy == gone.copy &&
                !bundle.items[k].closes) {
                loose_lid = k;
            }
        }
        if (!loose_lid) {
            return without(bundle, thing.placed);
        }
        const std::size_t high = std::max(*loose_lid, thing.placed), low = std::min(*loose_lid, thing.placed);
        return without(without(bundle, high), low);
    }

    static void consider(std::optional<Bundle> bundle, WhatIf& ask)
    {
        if (bundle && (!ask.bundle || packed_volume_ml(*bundle) < packed_volume_ml(*ask.bundle))) {
            ask.bundle = std::move(bundle);
        }
    }

    /// The changed kit as the pattern has it, and what a search finds.
    void try_all(const Kit& kit, const Bundle& pattern, WhatIf& ask, Known& known) const
    {
        if (is_over()) {
            ask.why_not = given_up;
            return;
        }
        consider(compacted(kit, pattern), ask);
        ask.kept = ask.bundle.has_value();
        const Key key = key_of(ask);
        std::optional<Bundle> found;
        if (const auto before = searched_.find(key); before != searched_.end()) {
            found = before->second;
            ask.searched = true;
        } else if (allowed_.count(key) > 0) {
            found = searched(kit);
            known.searched[key] = found;
            ask.searched = true;
            look_back(found, ask.change, known);
        }
        consider(found, ask);
        if (!ask.bundle) {
            ask.why_not = ask.searched ? "no bundle was found then" : "not in the same arrangement; not searched anew";
        }
    }

    std::optional<Bundle> searched(const Kit& kit) const
    {
        SolveOptions options = options_;
        options.effort = less(options_.effort);
        options.threads = 1;
        options.progress = nullptr;
        if (options_.seconds > 0) {
            const std::chrono::duration<double> since = std::chrono::steady_clock::now() - begin_;
            options.seconds = std::max(0.01, options_.seconds - since.count());
        }
        Bundle found = solve(kit, options);
        return has_bundle(found.status) ? std::optional(std::move(found)) : std::nullopt;
    }

    /// Whether the arrangement that a search found is smaller than the bundle with the thing as it is.
    void look_back(const std::optional<Bundle>& found, Change change, Known& known) const
    {
        const double volume = packed_volume_ml(answer_.bundle) * (1 - as_good);
        if (!found || packed_volume_ml(*found) >= volume) {
            return;
        }
        auto back = change == Change::left_out ? completed(kit_, *found, options_.seed) : compacted(kit_, *found);
        if (back && packed_volume_ml(*back) < (known.better ? packed_volume_ml(*known.better) : volume)) {
            known.better = std::move(back);
        }
    }

    const Kit& kit_;
    const SolveOptions& options_;
    std::chrono::steady_clock::time_point begin_ = std::chrono::steady_clock::now();
    SizeAnswer answer_;
    std::map<Key, bool> allowed_;
    std::map<Key, std::optional<Bundle>> searched_;
};

} // namespace

const char* to_string(Change change)
{
    switch (change) {
    case Change::a_millimetre: return "a-millimetre-smaller";
    case Change::a_tenth: return "a-tenth-smaller";
    case Change::left_out: return "left-at-home";
    }
    require(false, "a change is one of the three");
    return "";
}

double packed_volume_ml(const Bundle& bundle) { return volume_ml(outer_envelope(bundle)); }

double saved_ml(const Bundle& bundle, const WhatIf& what_if)
{
    require(what_if.bundle.has_value(), "what is saved is told of a bundle that was found");
    const double before = packed_volume_ml(bundle), after = packed_volume_ml(*what_if.bundle);
    return after < before * (1 - as_good) ? before - after : 0;
}

SizeAnswer what_sets_the_size(const Kit& kit, const SolveOptions& options) { return Asker(kit, options).answer(); }

} // namespace tuckwright
