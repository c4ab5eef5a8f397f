// SPDX-License-Identifier: GPL-3.0-or-later
/// One view while it is drawn: what is looked at, from where, and where on the page it lies.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "drawing/camera.hpp"
#include "drawing/section.hpp"
#include "drawing/seen_cells.hpp"
#include "drawing/shown.hpp"
#include "tuckwright/drawing.hpp"

namespace tuckwright::drawing {

struct Stage {
    Canvas& canvas;
    const Bundle& bundle;
    std::size_t step;
    View view;
    ViewOptions options;
    Frame frame;
    Shown shown;
    Cut cut; ///< that of the cutaway, whatever the view
    Camera camera;
    Frame content{}; ///< what the things take, mm of them
    Frame window{};  ///< the same on paper
    Spot offset{};   ///< of their origin on paper
    SeenCells seen;
    Spot way_begins{};          ///< where the arrow of the way in does, on paper
    std::vector<Frame> taken{}; ///< by text and signs
    std::vector<Frame> lines{}; ///< of dimensions, which lines to labels may cross
    struct Name {
        Spot of;
        std::string text;
    };
    std::vector<Name> names{}; ///< of covers, still to be written

    Stage(Canvas& to, const Frame& where, const Bundle& of, std::size_t at, View as, const ViewOptions& how);

    bool is_cut() const { return view == View::cutaway; }
    std::optional<double> level() const { return is_cut() ? std::optional(cut.level) : std::nullopt; }
    Spot on_paper(Vec3 p) const;
    Path on_paper(const Path& path) const { return path.placed(1 / options.scale, offset); }
    bool is_free(const Frame& place) const; ///< within the frame, and of what is taken
};

/// What a step's picture takes of the things, mm of them, as a camera sees them.
Frame content_of(const Bundle& bundle, const Shown& shown, const Camera& camera);

Camera camera_of(View view, const Cut& cut);

/// What is left free round the things for arrow, dimensions and labels, mm of paper.
struct Margins {
    double left, top, right, bottom;
};
inline constexpr double cut_mark = 6; ///< mm that a mark of the cut's end takes beside the things
Margins margins_of(const Bundle& bundle, const Shown& shown, View view, const ViewOptions& options);

// What is drawn, in this order.
void paint_room(Stage& stage); ///< the table or the bundle's outline
void paint_things(Stage& stage);
void paint_covers(Stage& stage); ///< bands and the bag
void paint_way(Stage& stage); ///< the arrow of the item of the step
void paint_dimensions(Stage& stage);
void paint_tip(Stage& stage); ///< a sign where that is tipped before it goes in
void paint_cut_marks(Stage& stage);
void paint_labels(Stage& stage);
void paint_cover_names(Stage& stage);

} // namespace tuckwright::drawing
