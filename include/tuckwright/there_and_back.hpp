// SPDX-License-Identifier: GPL-3.0-or-later
/// A kit packed for the way out and for the way back, and what goes elsewhere then.
#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "tuckwright/bundle.hpp"
#include "tuckwright/solve.hpp"
#include "tuckwright/way_back.hpp"

namespace tuckwright {

/// How a thing is carried in a bundle.
struct Whereabouts {
    std::string in;     ///< id of what it lies in, or is shut on; empty: directly in the bundle
    std::string form;   ///< posture(), or "shut"; empty for what takes whatever shape fits, a cloth or a filled pouch
    std::string stowed; ///< the form in which it is carried; empty for its own, and for such
    friend auto operator<=>(const Whereabouts&, const Whereabouts&) = default;
};

/// What differs in a thing itself.
enum class Difference { gone, added, emptied, less_left, other_kind, otherwise };

/// "gone", "added", "emptied", "less-left", "other-kind", "otherwise".
const char* to_string(Difference difference);

struct StateChange {
    std::string id;
    int copies = 1; ///< of which it is true
    Difference difference = Difference::otherwise;
    std::string words; ///< "60 g of spirit left of 200 g"
};

/// Why a thing goes elsewhere than before.
enum class Cause {
    rule,           ///< a rule forbids its old place, as all else lies now: refused by the exact check
    vessel_gone,    ///< what it lay in does not come back
    vessel_full,    ///< its old vessel holds nothing now: it is full, or carried in a form without an inside
    inside_out,     ///< what it lay in lies in it now
    too_large,      ///< it is proved not to go into its old vessel, which is shut now, even alone
    no_room,        ///< it is proved not to go in there with what lies in there now
    room_now,       ///< where it goes now there was no room before: that was full, or was not there
    need_not_stand, ///< it had to stand the right way up, and need not now
    must_stand,     ///< it has to stand the right way up now
    search          ///< no rule asks for it: so the bundle is smaller, or was found at all
};

/// "rule", "vessel-gone", "vessel-full", "inside-out", "too-large", "no-room", "room-now", "need-not-stand",
/// "must-stand", "search".
const char* to_string(Cause cause);

/// Copies of a thing that go elsewhere, all from the same place to the same place.
struct Elsewhere {
    std::string id;
    int copies = 1;
    Whereabouts before, now;
    Cause cause = Cause::search;
    std::optional<CarryRule> rule; ///< which forbids the old place
    std::string words;             ///< why
};

/// A thing that stays where it was, but goes in at another time than before among the things beside it.
struct Reordered {
    std::string id;
    std::string in;    ///< id of what it lies in; empty: directly in the bundle
    std::string after; ///< id of the thing there after which it goes in now; empty: it is the first
};

/// How the bundle of the way back came about.
enum class Keeping {
    places,  ///< things lie as on the way out, pushed together; what cannot, or is added, is put where it adds least
    vessels, ///< a search that leaves things in what they lay in on the way out, as far as the rules allow
    nothing  ///< a search for the smallest, as of any kit
};

/// "places", "vessels", "nothing".
const char* to_string(Keeping keeping);

/// Share by which the bundle of the way back may be larger than the smallest found, so that things stay where they
/// were.
inline constexpr double worth_staying = 0.05;

/// The answer of `back`.
struct ThereAndBack {
    Bundle out, back;
    bool bettered = false; ///< the way out comes of the search for the way back, and is smaller than solve()'s
    Keeping keeping = Keeping::nothing;
    /// Volume of the bundle that each way of keeping came to, ml; nothing where that found none or was not tried.
    std::optional<double> places_ml, vessels_ml, searched_ml;
    bool vessels_refuted = false; ///< proved that not all can stay in what they lay in
    std::vector<StateChange> changes;
    std::vector<CarryRule> new_rules; ///< that did not hold on the way out
    std::vector<CarryRule> old_rules; ///< that hold no longer, though both their things come back
    std::vector<Elsewhere> elsewhere; ///< none where one of the bundles is not there
    std::vector<Reordered> reordered;
};

/// Packs a kit both ways. The bundle of the way out is that of solve(), or a smaller one. For the way back a kept
/// arrangement is taken where it is at most `worth_staying` larger than the smallest that was found, places before
/// vessels. Requires: kits as solve() has them, provisions included. Ensures: check() has no objection to either
/// bundle, and each is one of its kit; the lower bound of the second holds for its kit; without `seconds` or `stop`
/// the same kits, seed and effort give the same answer on any number of threads. Complexity: three searches.
ThereAndBack there_and_back(const BothWays& kits, const SolveOptions& options = {});

/// What differs in the things themselves, in the order of the kit on the way out, then what is added.
std::vector<StateChange> state_changes(const BothWays& kits);

/// The rules of carrying that hold on the way back only.
std::vector<CarryRule> new_rules(const BothWays& kits);

/// The rules of carrying that hold on the way out only, though both their things come back.
std::vector<CarryRule> old_rules(const BothWays& kits);

/// What goes elsewhere, in the order of the kit: in something else, in another form or posture. Copies count as alike.
/// Requires: bundles of these kits to which check() has no objection. Ensures: where the cause is a rule, check()
/// refuses the bundle with the thing in any copy of what it lay in.
std::vector<Elsewhere> elsewhere(const BothWays& kits, const Bundle& out, const Bundle& back);

/// The fewest things that go in at another time among those that stay with them, in the order of the steps.
std::vector<Reordered> reordered(const Bundle& out, const Bundle& back);

/// The answer for a person at the table: both bundles in brief, what differs, what goes elsewhere and why, and then the
/// bundle of the way back in full.
std::string there_and_back_text(const ThereAndBack& answer);

/// The answer as one JSON object ("tuckwright-there-and-back", version 1), ending in a newline. Each of the two
/// bundles in it is one that `verify` takes by itself.
std::string there_and_back_json(const ThereAndBack& answer);

} // namespace tuckwright
