// SPDX-License-Identifier: GPL-3.0-or-later
/// A kit: the items that must go along, and the rules for the bundle they make.
#pragma once
#include <algorithm>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "tuckwright/shape.hpp"
#include "tuckwright/spread.hpp"

namespace tuckwright {

/// How a cavity is open: at the top, at both ends (a sleeve), or not at all (its own lid is shut).
enum class Opening { top, both, closed };

/// One of an item's own axes.
enum class Axis { x, y, z };

/// The room inside an item. Its axis is the item's own z and goes through the item's centre line.
struct Cavity {
    Shape shape;              ///< inner dimensions, mm, rounded down to the grid; a sleeve is as high inside as outside. One
                              ///< that tapers has its foot at the cavity's floor. cavity_of() makes it of wall and base
    Opening opens = Opening::top;
    double floor = 0;         ///< mm from the item's bottom up to the cavity's floor; the top of an open cavity is the item's
                              ///< top, so that floor and height (and neck) are the item's height together
    /// An opening narrower than the cavity, on its axis: what goes in passes it, and nothing stands out of it. Its height
    /// is that of the neck from the cavity's top up to the rim, 0 for a thin inward rim; the neck's top is then the
    /// item's top. A sleeve has none.
    std::optional<Shape> neck = std::nullopt;
    Spread off{}; ///< of its dimensions
};

/// A further solid of an item, fixed to its outside: a handle, a neck, a leg.
struct Part {
    Shape shape;              ///< mm, rounded up to the grid
    Vec3 at;                  ///< its centre, mm from the middle of the item's bottom face, in the item's own axes
    Axis axis = Axis::z;      ///< the item's axis along which a cylinder's own axis lies; z for a box
    Spread off{};             ///< of its dimensions
    friend bool operator==(const Part&, const Part&) = default;
};

/// Another way in which an item can be carried: folded, rolled, taken apart.
struct Stowage {
    std::string name;         ///< "handles folded in"
    std::string how{};        ///< what to do for it, as an order: "fold the handles in"; may be empty
    Shape outside;
    std::vector<Part> parts{};
    std::optional<Cavity> inside{};
    bool held = false;        ///< only within a vessel: it would spring open
    Spread outside_off{};     ///< of the outside's dimensions
};

/// A flat thing that can be rolled or folded: a windscreen, foil, leather. mm.
struct Sheet {
    double length = 0, width = 0, thickness = 0;
    std::optional<double> roll{}; ///< the least inner diameter to which it may be rolled; nothing: it stays flat
    bool folds = false;         ///< it may be folded in halves, thirds and quarters
    bool springy = false;       ///< rolled, it springs open unless something holds it
};

/// Something soft that takes any box shape of its volume: cloth, clothes, a pourable bag.
struct Cloth {
    double volume_ml = 0;
    double thickness = 0;     ///< mm; no side of the box is less
};

/// A small soft bag round a part of the bundle: a round or rectangular vessel, drawn shut, of any plan that its girth goes
/// round and of any height up to its length; or, with nothing in it, laid flat and folded. mm.
struct Pouch {
    double girth = 0;         ///< inside, all the way round, rounded down to the grid
    double length = 0;        ///< from its bottom to where it is drawn shut, inside, rounded down to the grid
    double thickness = 0;     ///< of its wall, bottom and closed top, rounded up to the grid
    friend bool operator==(const Pouch&, const Pouch&) = default;
};

/// What a separate lid does when it is shut on its vessel.
struct Closure {
    std::size_t item = 0;     ///< index of the vessel in Kit::items
    double adds = 0;          ///< mm that stand above the vessel's rim
    double intrudes = 0;      ///< mm taken from the height of the vessel's cavity
    double adds_off = 0, intrudes_off = 0; ///< mm by which these two may be off
};

/// How a springy ring is carried: pressed together into the cavity of a vessel, which then holds it by its spring.
struct PressFit {
    std::size_t item = 0;     ///< index of the vessel in Kit::items
    double gives = 0;         ///< mm by which its diameter can be pressed together
    std::optional<double> relaxed = std::nullopt; ///< mm: its diameter left to itself; nothing: the outside still says it
};

/// Loose goods carried in an item; they weigh, and keep it upright.
struct Contents {
    std::string what;
    double weight_g = 0;
    bool fills = true;        ///< nothing else goes into the item's cavity
};

/// What an item is, for the usual rules of what may go together.
enum class Kind {
    fuel,        ///< spirit, petrol, gas
    flame,       ///< what makes a flame or a spark: matches, lighter, fire steel
    food,        ///< food that is not sealed in a tin
    drink,       ///< drink, and water to be drunk
    lips,        ///< touches lips or food: cup, spoon, bowl
    sooty,       ///< its outside is sooty or dirty
    clean,       ///< must stay clean: clothes, paper, dressings
    soft,        ///< gives way, and is cut or soiled easily
    sharp,       ///< an edge or a point
    pressurised, ///< a cartridge or can under pressure
    liquid,      ///< holds a liquid: stays upright and shut
    fragile,     ///< breaks easily
    hot          ///< hot after use: cools down before it is packed
};

/// How soon an item is wanted when the bundle is unpacked.
enum class Wanted { any, first, early, last };

struct Item {
    std::string id;           ///< unique in the kit
    std::string name{};       ///< for people; the id where the file gives none
    int count = 1;            ///< copies, all alike
    double weight_g = 0;      ///< of one copy, without contents
    Shape outside{};          ///< mm, rounded up to the grid
    std::vector<Part> parts{}; ///< fixed to the outside
    std::optional<Cavity> inside{};
    std::optional<Closure> closes{};
    std::optional<Contents> contents{};
    bool upright = false;     ///< must stand the right way up
    std::vector<Kind> kinds{}; ///< without doubles, in the order of the enumeration
    std::vector<Stowage> forms{}; ///< other ways to carry it than as the fields above say; see with_stowages()
    std::optional<Sheet> sheet{}; ///< then the outside is the flat sheet, its length along x
    std::optional<Cloth> cloth{}; ///< then the outside is one of its box shapes
    std::optional<Pouch> pouch{}; ///< then the outside is the empty pouch laid flat, its cavity in each filled form
    Spread outside_off{};     ///< of the outside's dimensions
    bool nothing_on_top = false;     ///< nothing may lie on it
    std::optional<double> bears_g{}; ///< the most that may lie on it, with all that this holds and carries
    Wanted reach = Wanted::any;
    int priority = 1;                ///< where not everything can go along: what it counts against other things, copy by copy
    bool must_have = false;          ///< and whether it has to go along in any case
    std::optional<PressFit> press{}; ///< then the outside is a plain cylinder, left to itself; see pressed_in()

    /// Whether it has a cavity in which nothing else lies: its contents fill it, or it is a shut bottle of liquid.
    bool is_full() const
    {
        const bool is_liquid = std::find(kinds.begin(), kinds.end(), Kind::liquid) != kinds.end();
        return inside && (contents ? contents->fills : is_liquid && inside->opens == Opening::closed);
    }
};

/// How two items must lie to each other, whatever the number of their copies. A shut lid counts as lying in its vessel.
enum class Keep {
    apart,   ///< no vessel holds both, however deep, and neither holds the other
    within,  ///< the first lies in (a copy of) the second, however deep
    out,     ///< the first does not lie in the second, however deep
    together, ///< (every copy of) the first has some copy of the second in its own direct container, vessel or bundle
    shut     ///< (every copy of) the first is shut as a lid on a copy of the second
};

/// A rule of carrying: given for the two items, or following from what they are.
struct CarryRule {
    Keep keep = Keep::apart;
    std::string first, second;  ///< ids of items
    std::string why{};          ///< in words: "fuel keeps apart from food"
    friend bool operator==(const CarryRule&, const CarryRule&) = default;
};

/// A soft bag that is pulled over the whole bundle, mm.
struct Bag {
    std::string id, name;
    double weight_g = 0;
    double girth = 0;         ///< inside, all the way round, rounded down to the grid
    double length = 0;        ///< the highest bundle over which it closes, rounded down to the grid
    double thickness = 0;     ///< of its wall, rounded up to the grid; it counts as lying close all round
    friend bool operator==(const Bag&, const Bag&) = default;
};

/// A band or strap that goes level round the whole bundle, beneath the bag where there is one, or over a shut lid and
/// under its vessel; it takes no room.
struct Band {
    std::string id, name;
    double weight_g = 0;
    double girth = 0;         ///< mm, inside, at its longest, rounded down to the grid
    std::string over = {};    ///< id of the lid that it holds shut; empty for a band round everything
    friend bool operator==(const Band&, const Band&) = default;
};

enum class BundleShape { cylinder, box };

/// What the bundle may be: its shape and upper limits in mm. A cylinder has diameter and height, a box length, width
/// and height (its length lies along x).
struct BundleRule {
    BundleShape shape = BundleShape::cylinder;
    std::optional<double> diameter{}, length{}, width{}, height{};
};

struct Trip;

struct Kit {
    std::string name;
    double clearance = 0;     ///< mm of air between an item and the side wall of its cavity, all round; files have 0.5 unless told
    BundleRule bundle{};
    std::vector<Item> items{};
    std::vector<CarryRule> rules{};  ///< what the file gives, and what the kinds of its items ask for; in code, with_usual_rules()
    std::vector<std::string> waived{}; ///< usual rules that the file does not want, each with its reason, in words
    std::optional<Bag> bag{};        ///< goes round everything; the limits are those of the bundle in it
    std::vector<Band> bands{};       ///< go round everything too, or hold a lid shut
    bool worst_case = false;         ///< pack so that all fits even if every measurement is off in the bad direction
    std::shared_ptr<const Trip> trip{}; ///< what it is for, where the file tells; see trip.hpp
};

} // namespace tuckwright
