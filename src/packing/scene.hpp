// SPDX-License-Identifier: GPL-3.0-or-later
/// What is to be packed: bodies made of coaxial cylinders and boxes, the cells inside some of them, and the outermost
/// cell that encloses all. Nothing here knows of kits.
#pragma once
#include <cstddef>
#include <optional>
#include <vector>

#include "packing/company.hpp"
#include "packing/piece.hpp"
#include "tuckwright/shape.hpp"

namespace tuckwright::packing {

/// A number that is not negative, as containers take it.
inline std::size_t at(int index) { return static_cast<std::size_t>(index); }

inline constexpr int outermost = -1; ///< the index of the cell that encloses everything

/// How a body is turned before it is turned about its cell's axis.
enum class Form {
    standing,      ///< own z up
    on_end,        ///< own z along the cell's x: a cylinder lies, a box stands on its end
    on_side,       ///< own z along the cell's -y: a box lies on its long side
    upside_down,   ///< own z down
    on_other_end,  ///< own z along -x
    on_other_side, ///< own z along y
    leaning        ///< a long side up, then tilted towards the cell's x, see Place
};
/// A vector of a body's own frame, once the body is turned into a form.
Vec3 tipped(Form form, Vec3 own);

/// A cylinder or box of a body, its centre `offset` mm above the body's centre on the body's own axis, and beside it
/// by x and y.
struct BodyPiece {
    Shape shape;
    double offset = 0;
    double x = 0, y = 0;
    Form turned = Form::standing; ///< how a cylinder's own axes lie to the body's; a box is told as it lies
};

/// How far a body reaches below and above its centre, along the cell's z.
struct Reach {
    double below = 0, above = 0;
};

/// The hollow of a body, coaxial with it.
struct Hollow {
    Shape shape;      ///< inner dimensions, side clearance already taken off
    double floor = 0; ///< height of its floor above the body's centre (mostly negative)
    bool open_top = true, open_bottom = false;
    double clearance = 0; ///< what was taken off at each side wall
    /// A narrower opening on the axis, less the clearance: its plan. The hollow then has no open end.
    std::optional<Shape> neck = std::nullopt;
};

struct Body {
    std::vector<BodyPiece> pieces;
    std::optional<Hollow> hollow;
    std::vector<Form> forms;    ///< those in which it may be packed, without doubles
    bool upright = false;       ///< its own z must be up in the world
    bool held = false;          ///< it may lie in a vessel only, at least half in
    /// It fills its cell from wall to wall, coaxial with it, and does not stand out of it.
    bool pressed = false;
    bool plan_is_round = false; ///< standing, a turn about its axis changes nothing
    double volume = 0;          ///< mm^3 of its pieces
    /// What tabulate() worked out beforehand: its pieces in each form but leaning, unturned at the origin, form by form.
    std::vector<Piece> posed{};
    std::vector<Reach> heights{}; ///< and vertical_reach() of each form
    std::vector<double> radii{};  ///< and plan_reach()
};

/// Works out the body's pieces in all forms, so that piece_at() need only move and turn them, and how far it reaches. To
/// be called when the body is complete; another call is needed if it is changed after that.
void tabulate(Body& body);

/// Which bodies may lie in which cell and form: `fits[row][vessel's row + 1]` is a bit set of forms (bit of Form), with
/// column 0 for the outermost cell. See Scene::row().
using FitTable = std::vector<std::vector<unsigned>>;

struct Scene {
    std::vector<Body> bodies; ///< each as it is stowed first
    std::vector<Body> others; ///< further ways in which some of them can be stowed
    /// [body]: which of `others` are that body's; empty where no body has any.
    std::vector<std::vector<int>> stowages;
    FitTable fits;
    Company company;
    double size = 1; ///< mm, a typical dimension, for step lengths

    /// How many ways to stow a body there are.
    int ways(int body) const { return stowages.empty() ? 1 : 1 + static_cast<int>(stowages[at(body)].size()); }
    /// Row of the fit table: bodies as they are stowed first, then `others`.
    int row(int body, int way) const
    {
        return way == 0 ? body : static_cast<int>(bodies.size()) + stowages[at(body)][at(way - 1)];
    }
    const Body& stowed(int body, int way) const
    {
        return way == 0 ? bodies[at(body)] : others[at(stowages[at(body)][at(way - 1)])];
    }
};

inline unsigned bit(Form form) { return 1u << static_cast<unsigned>(form); }

/// The outermost cell: a cylinder (radius, height) or a box (half length, half width, height).
struct Envelope {
    bool round = true;
    double radius = 0, half_length = 0, half_width = 0, height = 0;
};
double volume(const Envelope& envelope);
Room room_of(const Envelope& envelope);
/// The room of a hollow; a vessel that does not stand is as good as closed at its ends.
Room room_of(const Hollow& hollow, bool stands);
/// The prism of a hollow's narrow opening. Requires: it has one.
Room room_of_neck(const Hollow& hollow);

/// Where a body lies: its cell, its form, the turn (c, s) about the cell's axis, and its centre in the cell's frame.
struct Place {
    int cell = outermost;
    Form form = Form::standing;
    double x = 0, y = 0, z = 0;
    double c = 1, s = 0;
    int way = 0; ///< how it is stowed, see Scene::stowed()
    double tilt_c = 1, tilt_s = 0; ///< of what leans: cosine and sine of its angle from the upright
};

/// One piece of a body at a place, in the frame of the place's cell.
Piece piece_at(const Body& body, std::size_t piece, const Place& place, int owner);

Reach vertical_reach(const Body& body, const Place& place);
Reach vertical_reach(const Body& body, Form form);

/// Largest distance of the body's outline from its centre, in plan.
double plan_reach(const Body& body, const Place& place);
double plan_reach(const Body& body, Form form);

} // namespace tuckwright::packing
