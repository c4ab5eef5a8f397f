// SPDX-License-Identifier: GPL-3.0-or-later
/// A packed bundle as data: where everything lies, in what order it goes in, and what proves it.
/// World frame, mm: the bundle's axis is z, its floor z = 0; a cylinder's axis is the origin, a box's corner the origin.
#pragma once
#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "tuckwright/kit.hpp"
#include "tuckwright/shape.hpp"
#include "tuckwright/spread.hpp"

namespace tuckwright {

/// A cavity where it lies. A closed one has its lid shut (its own, or another item that closes it).
struct PlacedCavity {
    Shape shape;
    Pose pose;
    Opening opens = Opening::top;
    /// An opening narrower than the cavity, right above it and on its axis, turned as it is: what lies in the cavity has
    /// passed it. Its height leads up to the rim and may be 0.
    std::optional<Shape> neck = std::nullopt;
    Spread off{}; ///< by which its dimensions may be off
};

/// The narrow opening as a solid where it lies (mm, on the grid). Requires: a cavity that has one.
Solid neck_of(const PlacedCavity& cavity);

/// The direct container of an item: a cavity of another item of the bundle.
struct Lodging {
    std::size_t item = 0;    ///< index into Bundle::items
    std::size_t cavity = 0;  ///< index into that item's cavities
    friend bool operator==(const Lodging&, const Lodging&) = default;
};

struct PlacedItem {
    std::string id;
    int copy = 1;                        ///< from 1
    std::string name;
    std::string form;                    ///< how it lies in its container, see posture(); "shut" for a shut lid
    std::string stowed;                  ///< the form in which it is carried: "rolled, 2 layers"; empty for its own
    std::string how;                     ///< what to do for that: "fold the handles in"; empty for nothing
    std::vector<Kind> kinds;             ///< what it is, for the cautions
    double weight_g = 0;                 ///< own weight
    std::string contents;                ///< what it holds loose; empty for nothing
    double contents_g = 0;
    bool full = false;                   ///< its contents fill its cavities: no item lies in them
    bool upright = false;                ///< must stand the right way up
    bool nothing_on_top = false;         ///< nothing may lie on it
    std::optional<double> bears_g;       ///< the most that may lie on it
    Wanted reach = Wanted::any;
    std::optional<std::size_t> out_after; ///< with a reach: things that are taken out before it
    std::optional<Lodging> in;           ///< nothing: directly in the bundle
    std::optional<std::size_t> closes;   ///< shut as a lid on this item; then `in` is that item's own
    std::vector<Solid> solids;           ///< the first is the body
    std::vector<PlacedCavity> cavities;
    bool soft = false;                   ///< gives way, so that it can pad others
    std::vector<Spread> solids_off;      ///< by which each solid's dimensions may be off; none beyond the last
    /// Pressed into the cavity that it lies in, whose diameter its own then is: mm across, were it left to itself.
    std::optional<double> pressed;
};

/// One step of putting the bundle together: the item, with all that it already holds and its shut lid, moves along
/// `direction` into its place. A vessel that is still on the table is filled there, so directions are meant in the
/// frame of the finished bundle. Below an opening narrower than the cavity the way may be two straight moves: along
/// `direction` to where it lies `via` (mm) beside its place, then straight from there to its place.
struct Step {
    std::size_t item = 0;
    std::array<std::int64_t, 3> direction{0, 0, -1};
    std::string text;
    std::optional<Vec3> via = std::nullopt;
};

/// A direction along which two solids are apart: nothing of the first lies beyond what is nearest of the second.
/// The normal points from the first to the second.
struct SeparatingPlane {
    std::size_t first = 0, first_solid = 0, second = 0, second_solid = 0;
    std::array<std::int64_t, 3> normal{0, 0, 1};
};

/// What an item rests on: lowered by tolerance::rest_drop it would hold `point` in common with that item, on what both
/// are made of (never in a cavity or its mouth); or, with no item named, it would leave its container (the floor of the
/// bundle, the wall of its cavity).
struct Rest {
    std::size_t item = 0;
    std::optional<std::size_t> on;
    Vec3 point;
};

/// Planes that the exact check may use for pairs which the axes of the world and of the solids do not separate, and
/// what each item rests on. A pair may have several planes: one that keeps them apart, one that lets one be drawn past.
struct Certificate {
    std::vector<SeparatingPlane> planes;
    std::vector<Rest> rests;
};

/// Between which walls a fit is meant.
enum class FitWay {
    all_round, ///< one item, with the same air on all sides
    across,    ///< several side by side, from one side wall to the other
    along,     ///< from the floor to the lid
    pressed,   ///< held by its spring: figures tell by how much it would be wider than the cavity, mm across
    opening    ///< one item, with the same air on all sides, on its way through the cavity's narrow opening
};

/// The room that items have in a cavity.
struct Fit {
    Lodging in;
    std::vector<std::size_t> items; ///< indices into Bundle::items, in the order in which they lie
    FitWay way = FitWay::all_round;
    double room = 0;                ///< mm by the sizes as measured
    double worst = 0;               ///< mm if each is off in the bad direction; negative: too tight by so much
    friend bool operator==(const Fit&, const Fit&) = default;
};

/// How far an item can move along the x, y and z of what it lies in, mm: back and ahead for each.
struct Play {
    std::array<std::array<double, 2>, 3> free{};
    friend bool operator==(const Play&, const Play&) = default;
};

enum class Status {
    proved_best,   ///< proved to fit, and no bundle of this kit can be smaller
    found,         ///< proved to fit; a smaller one may exist
    stopped,       ///< proved to fit; the search was interrupted
    does_not_fit,  ///< proved that nothing fits within the limits
    not_found      ///< nothing found within this effort
};

struct Bundle {
    std::string kit;
    std::uint64_t seed = 1;
    std::string effort;
    Status status = Status::not_found;
    double clearance = 0;
    BundleRule rule;
    std::vector<CarryRule> rules; ///< proved to hold; ids are those of items
    std::vector<std::string> waived; ///< usual rules that the kit does without, each with its reason, in words
    Shape envelope;              ///< cylinder or box, as the rule says; mm on the grid; without its bag
    std::optional<Bag> bag;      ///< pulled over everything; lies outside the envelope, below z = 0 too
    std::vector<Band> bands;     ///< round everything, beneath the bag, or over a shut lid
    /// With everything standing, lying or on its side, no bundle of this kit has a smaller envelope, in its bag if it has
    /// one. Where there is no bundle, in no turn of anything.
    double lower_bound_ml = 0;
    std::string explanation;     ///< the proof in words, for does_not_fit; what to try, for not_found
    std::vector<PlacedItem> items;
    std::vector<Step> steps;
    Certificate certificate;
    bool worst_case = false;     ///< all sizes are the worst that the tolerances allow
    std::vector<Fit> fits;       ///< as fits() gives them
    std::vector<Play> plays;     ///< as plays() gives them, one an item
};

/// "proved-best", "found", "stopped", "does-not-fit", "not-found".
const char* to_string(Status status);

/// Whether the status says that a bundle is there (the first three).
bool has_bundle(Status status);

/// The envelope with the bag round it, thicker by the bag's wall on every side; the envelope itself where there is no
/// bag. This is what the printed sizes, volumes and limits are about.
Shape outer_envelope(const Bundle& bundle);

/// Share by which the bundle, in its bag, is larger than the lower bound: volume / bound - 1. Requires: a bundle, a positive bound.
double gap(const Bundle& bundle);

/// Grams of everything, contents, bag and bands included.
double total_weight_g(const Bundle& bundle);

/// "pot", or "cup 2" where the bundle holds several copies.
std::string label(const Bundle& bundle, std::size_t item);

/// How people call an item: its name up to a comma, with the copy's number where there are several, and its id where
/// different items share a name: "Steel pot", "Cup 2", "Tin 1 (tea-tin)".
std::string spoken_name(const Bundle& bundle, std::size_t item);

/// How people call all copies of an item at once: "Steel pot", "Cup", "Tin (tea-tin)"; the id where there is none.
std::string common_name(const Bundle& bundle, const std::string& id);

/// For a list: the whole name with the copy's number, and the id where it is another word: "Steel pot, 1.1 l (pot)".
std::string full_name(const Bundle& bundle, std::size_t item);

/// "Put Strap over Lid and under Pot.": for a band that holds a lid. Where that lid is not shut, its id stands for both.
std::string lid_band_step(const Bundle& bundle, const Band& band);

/// How an item lies, seen from the upright of its container (the world's, in the bundle), whatever the order in which
/// the kit gives the edges. A box: "flat", "on its edge" or "on its end" as its shortest, middle or longest edge points
/// up. A cylinder: "standing" or "lying", discs (lower than 0.45 of their width, open vessels a quarter) "flat" or "on its edge".
/// What has a top, by an opening, a lid or by being kept upright, is "upside down" when it points down; a box with a
/// top is "standing" when it points up, unless it is flat too. Anything aslant is "leaning".
/// Requires: an item with a solid, in a cavity that is there.
std::string posture(const Bundle& bundle, std::size_t item);

} // namespace tuckwright
