// SPDX-License-Identifier: GPL-3.0-or-later
/// What has been put on a page, in its order, to be drawn anew for each kind of file.
#pragma once
#include <memory>
#include <optional>
#include <variant>
#include <vector>

#include "canvas/text.hpp"
#include "tuckwright/canvas.hpp"

namespace tuckwright::canvas {

struct Stroke {
    Path path;
    std::optional<Pen> pen;
    std::optional<Fill> fill;
};

struct Writing {
    Layout layout;
    Spot corner;
    Color color;
};

struct ClipBegin {
    Path path;
};
struct ClipEnd {};

using Mark = std::variant<Stroke, Writing, ClipBegin, ClipEnd>;
using Page = std::vector<Mark>;

} // namespace tuckwright::canvas

struct tuckwright::Canvas::Content {
    PageSize size;
    std::vector<canvas::Page> pages{canvas::Page{}};
    int clips = 0; ///< open on the last page
};
