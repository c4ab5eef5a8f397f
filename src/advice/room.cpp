// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. For each place and each posing: things that have nearly grown up, the largest first. Where one could rest and be
// put in, it grows to the last and is put to the proof, until no other can be larger.
#include "tuckwright/room.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <thread>

#include "advice/room_candidates.hpp"
#include "advice/room_growth.hpp"
#include "advice/room_proof.hpp"
#include "nesting/run_tasks.hpp"

namespace tuckwright {

namespace {

using namespace advice;

/// Whether one that stands is much wider or much higher than another.
bool is_otherwise(const Draft& draft, const Cylinder& other)
{
    constexpr double much = 1.5;
    return 2 * draft.half[0] >= much * other.diameter || 2 * draft.half[1] >= much * other.height;
}

/// mm by which a thing stands out of the open cavity that it goes into.
double standing_out(const Bundle& bundle, const std::optional<Lodging>& in, const Solid& solid)
{
    if (!in) {
        return 0;
    }
    const PlacedCavity& cavity = bundle.items[in->item].cavities[in->cavity];
    const Vec3 up = Axes(cavity.pose.turn).axis(2);
    const double rim = dot(up, cavity.pose.center) + height_of(cavity.shape) / 2;
    return cavity.opens == Opening::closed || cavity.neck ? 0
                                                          : std::max(0.0, support(hull_of(solid), up) - rim);
}

double volume_of(const std::optional<OneMore>& one) { return one ? volume_ml(one->solid.shape) : 0; }

/// Puts drafts to the proof.
class Prover {
public:
    Prover(const Bundle& bundle, const std::optional<Lodging>& in, const Axes& frame)
        : bundle_(bundle), in_(in), frame_(frame)
    {
    }

    /// Whether it is worth while to let it grow up, by where it lies.
    bool is_promising(Draft draft, const Space& space)
    {
        draft = let_down(draft, space);
        draft.angle = rounded_angle(draft.angle);
        if (!made_to_fit(draft, space)) {
            return false;
        }
        constexpr double air = 1e-3; // what touches might seem to bar the way
        const Prospect seen = prospect(bundle_, in_, solid_of(draft, frame_, {air, air, air}));
        barred_ = barred_ || seen == Prospect::barred;
        return seen == Prospect::good;
    }

    /// Puts it to the proof if it is larger than the best so far.
    void offer(const Draft& draft, std::optional<OneMore>& best)
    {
        if (draft.volume() > 1000 * volume_of(best)) {
            auto one = proved(draft);
            best = volume_of(one) > volume_of(best) ? std::move(one) : std::move(best);
        }
    }

    /// Whether one before that could not be put in by hand.
    bool some_barred() const { return barred_; }

private:
    using Less = std::array<double, 3>;

    OneMore told(const Bundle& with) const
    {
        const std::size_t item = with.items.size() - 1;
        const Solid& solid = with.items.back().solids.front();
        const auto step = std::find_if(with.steps.begin(), with.steps.end(),
                                       [&](const Step& one) { return one.item == item; });
        return {solid, standing_out(bundle_, in_, solid), step->text};
    }

    /// Curved contacts want air, so that it may have to be a hair smaller; but only across these.
    std::optional<OneMore> proved(const Draft& draft)
    {
        for (const double hair : {0.0, 4e-6, 5e-5, 1e-3, 5e-3}) {
            if (draft.smallest() - 2 * hair < thinnest_told) {
                return std::nullopt;
            }
            const Attempt tried = attempt(bundle_, in_, solid_of(draft, frame_, {hair, hair, hair}));
            if (tried.bundle) {
                return hair > 0 ? least_made_smaller(draft, *tried.bundle, hair) : told(*tried.bundle);
            }
            if (!tried.too_tight) {
                return std::nullopt;
            }
        }
        return std::nullopt;
    }

    /// What is proved with all sizes less by a hair, with those that need not be less as they were.
    OneMore least_made_smaller(const Draft& draft, const Bundle& smaller, double hair) const
    {
        Less less{hair, hair, hair};
        OneMore best = told(smaller);
        for (std::size_t k = draft.sizes(); k-- > 0;) {
            Less other = less;
            other[k] = 0;
            if (const auto with = attempt(bundle_, in_, solid_of(draft, frame_, other)).bundle) {
                less = other;
                best = told(*with);
            }
        }
        return best;
    }

    const Bundle& bundle_;
    const std::optional<Lodging>& in_;
    Axes frame_;
    bool barred_ = false;
};

/// The largest that can be proved of drafts that have nearly grown up, the largest first; better than `best`.
void find_largest(const std::vector<Draft>& drafts, const Space& space, Prover& prover, int most,
                  std::optional<OneMore>& best)
{
    constexpr double still_grows = 1.05; // by its volume
    std::vector<Draft> hopeless;
    for (Draft draft : drafts) {
        if (most == 0 || still_grows * draft.volume() < 1000 * volume_of(best)) {
            return;
        }
        if (std::any_of(hopeless.begin(), hopeless.end(), [&](const Draft& d) { return alike(draft, d, 0.1); })) {
            continue;
        }
        if (!prover.is_promising(draft, space)) {
            hopeless.push_back(draft);
        } else if (--most; complete(draft, space)) {
            prover.offer(draft, best);
        }
    }
}

/// A place as it is and, where larger things could not be put in by hand, for a thing that is under nothing there; with the
/// drafts that have nearly grown up in each.
class Place {
public:
    Place(const Bundle& bundle, const std::optional<Lodging>& in, Posing posing, const Amounts& counts)
        : posing_(posing), counts_(counts), spaces_{space_of(bundle, in)}, prover_(bundle, in, spaces_.front().frame)
    {
        drafts_.push_back(candidates(spaces_.front(), posing, counts));
    }

    /// The largest among those that are wanted: of those thick enough to be told of, or else of the thinner ones.
    std::optional<OneMore> largest_of(const std::function<bool(const Draft&)>& wanted)
    {
        std::optional<OneMore> best;
        for (const bool thick : {true, false}) {
            for (std::size_t k = 0; k < spaces_.size() && !(best && !thick); ++k) {
                std::vector<Draft> some;
                std::copy_if(drafts_[k].begin(), drafts_[k].end(), std::back_inserter(some), [&](const Draft& d) {
                    return (d.smallest() >= worth_telling_mm) == thick && wanted(d);
                });
                find_largest(some, spaces_[k], prover_, counts_.finished, best);
                look_from_above();
            }
        }
        return best;
    }

private:
    void look_from_above()
    {
        if (prover_.some_barred() && spaces_.size() == 1) {
            spaces_.push_back(under_nothing(spaces_.front()));
            drafts_.push_back(candidates(spaces_.back(), posing_, counts_));
        }
    }

    Posing posing_;
    const Amounts& counts_;
    std::vector<Space> spaces_;
    std::vector<std::vector<Draft>> drafts_; ///< for each space
    Prover prover_;
};

/// Fills in what one posing tells of a room.
void look_into(const Bundle& bundle, RoomLeft& room, Posing posing, const Amounts& counts)
{
    Place place(bundle, room.in, posing, counts);
    auto& best = room.largest[static_cast<std::size_t>(posing)];
    best = place.largest_of([](const Draft&) { return true; });
    if (posing == Posing::standing && best) {
        const auto& first = std::get<Cylinder>(best->solid.shape);
        room.other = place.largest_of([&](const Draft& d) { return is_otherwise(d, first); });
    }
}

} // namespace

const char* to_string(Posing posing)
{
    switch (posing) {
    case Posing::standing: return "standing";
    case Posing::lying: return "lying";
    case Posing::box: return "box";
    }
    return "";
}

RoomAnswer room_left(const Bundle& bundle, const RoomOptions& options)
{
    RoomAnswer answer;
    answer.rooms.push_back({});
    for (const Lodging& cavity : cavities_of(bundle)) {
        answer.rooms.push_back({cavity, {}, {}});
    }
    const Amounts counts = counts_of(options.effort);
    const unsigned threads = options.threads != 0 ? options.threads : std::max(1u, std::thread::hardware_concurrency());
    const auto is_stopped = [&] { return options.stop != nullptr && options.stop->load(); };
    std::atomic<bool> complete = true;
    nesting::run_tasks(answer.rooms.size() * posings.size(), threads, [&](std::size_t task) {
        if (is_stopped()) {
            complete = false;
            return;
        }
        look_into(bundle, answer.rooms[task / posings.size()], posings[task % posings.size()], counts);
    });
    answer.complete = complete;
    return answer;
}

} // namespace tuckwright
