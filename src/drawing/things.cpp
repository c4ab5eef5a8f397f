// SPDX-License-Identifier: GPL-3.0-or-later
// The things themselves, from the farthest to the nearest.
#include <algorithm>
#include <cmath>

#include "drawing/faces.hpp"
#include "drawing/order.hpp"
#include "drawing/palette.hpp"
#include "drawing/stage.hpp"

namespace tuckwright::drawing {

namespace {

constexpr double thin = 0.18, medium = 0.3, heavy = 0.7; ///< mm of paper

Color mixed(const Color& a, const Color& b, double share)
{
    return {a.red + share * (b.red - a.red), a.green + share * (b.green - a.green), a.blue + share * (b.blue - a.blue)};
}

Color in_light(const Color& color, double light)
{
    return {color.red * light, color.green * light, color.blue * light};
}

class Things {
public:
    explicit Things(Stage& stage) : stage_(stage) {}

    void paint()
    {
        for (const Layer& layer : painting_order(stage_.bundle, stage_.camera, stage_.shown.there)) {
            const std::size_t owner = owner_of(stage_.bundle, layer.item, layer.solid);
            stage_.is_cut() ? paint_behind(layer, owner) : paint_layer(layer, owner);
            if (is_item_of_step(owner) && layer.part != Layer::Part::far) {
                outline(item(layer.item).solids[layer.solid], 0);
            }
        }
        if (stage_.is_cut()) {
            for (std::size_t i = 0; i < stage_.bundle.items.size(); ++i) {
                if (stage_.shown.there[i]) {
                    paint_cut(i);
                }
            }
        }
        if (stage_.shown.item) { // where others hide it, or where it has been cut away
            for (const Solid& solid : own_solids(stage_.bundle, *stage_.shown.item)) {
                outline(solid, 1.6);
            }
        }
    }

private:
    bool is_item_of_step(std::size_t item) const { return stage_.shown.item == item; }
    const PlacedItem& item(std::size_t i) const { return stage_.bundle.items[i]; }

    Color tint(std::size_t i) const
    {
        return is_item_of_step(i) ? palette::placed_now : palette::placed[i % palette::placed.size()];
    }
    std::optional<Hatch> hatch(std::size_t i) const
    {
        return is_item_of_step(i) ? std::optional(Hatch{palette::ink, 1.3, 45, 0.15, 1}) : std::nullopt;
    }
    Color inner_tint(std::size_t i) const
    {
        return is_item_of_step(i) ? mixed(palette::paper, palette::placed_now, 0.35) : palette::inside;
    }

    void area(const Path& path, const Fill& fill, double pen, std::optional<std::size_t> seen, bool for_text = true)
    {
        const Path placed = stage_.on_paper(path);
        stage_.canvas.draw(placed, Pen{palette::ink, pen}, fill);
        if (seen) {
            stage_.seen.paint(placed, seen, for_text);
        } else {
            stage_.seen.keep_off(placed);
        }
    }

    void paint_layer(const Layer& layer, std::size_t owner)
    {
        const Solid& solid = item(layer.item).solids[layer.solid];
        const auto& hollows = stage_.shown.hollows[layer.item];
        switch (layer.part) {
        case Layer::Part::whole: {
            const bool glass = item(owner).closes && !is_item_of_step(owner) && stage_.view == View::slanted;
            for (const Face& face : front_faces(solid, stage_.camera)) {
                area(face.area, {in_light(tint(owner), face.light), glass ? 0.45 : 1, hatch(owner)}, thin, owner);
            }
            break;
        }
        case Layer::Part::far:
            for (const Hollow& hollow : hollows) {
                for (const Face& face : inner_faces(hollow, stage_.camera)) {
                    area(face.area, {in_light(inner_tint(layer.item), face.light)}, thin, layer.item);
                }
                if (const Path edge = rim(solid, hollow, stage_.camera); !edge.empty() && !hollow.neck) {
                    area(edge, {mixed(tint(layer.item), palette::wall, 0.3)}, thin, layer.item);
                }
            }
            break;
        case Layer::Part::near: paint_near(layer, solid, hollows); break;
        }
    }

    /// The side of a vessel that is turned to the eye, and its shoulder: both can be seen through.
    void paint_near(const Layer& layer, const Solid& solid, const std::vector<Hollow>& hollows)
    {
        const auto open = [&](bool top) {
            return std::any_of(hollows.begin(), hollows.end(),
                               [&](const Hollow& h) { return top ? h.open_top : h.open_bottom; });
        };
        const Color glass = is_item_of_step(layer.item) ? palette::placed_now : palette::glass;
        for (const Face& face : front_faces(solid, stage_.camera, !open(true), !open(false))) {
            area(face.area, {glass, 0.16, hatch(layer.item)}, thin, std::nullopt);
        }
        for (const Hollow& hollow : hollows) {
            if (const Path edge = rim(solid, hollow, stage_.camera); !edge.empty() && hollow.neck) {
                area(edge, {glass, 0.3, hatch(layer.item)}, thin, std::nullopt);
            }
        }
    }

    /// What is left of a layer behind the cut.
    void paint_behind(const Layer& layer, std::size_t owner)
    {
        const Solid& solid = item(layer.item).solids[layer.solid];
        const auto behind = [&](const Solid& one) {
            return Path::polygon(outline_behind(one, stage_.camera, stage_.cut.level));
        };
        const Path whole = behind(solid);
        if (whole.empty()) {
            return;
        }
        if (layer.part == Layer::Part::whole) {
            area(whole, {mixed(tint(owner), palette::paper, 0.4), 1, hatch(owner)}, thin, owner);
        } else if (layer.part == Layer::Part::far) {
            area(whole, {mixed(palette::glass, palette::paper, 0.5)}, thin, layer.item);
            for (const Hollow& hollow : stage_.shown.hollows[layer.item]) {
                if (const Path room = behind(hollow.room); !room.empty()) {
                    area(room, {inner_tint(layer.item)}, thin, layer.item);
                }
            }
        } else if (!drawing::is_cut(solid, stage_.cut)) {
            area(whole, {palette::glass, 0.2, hatch(layer.item)}, thin, std::nullopt);
        }
    }

    /// An item's material in the plane of the cut, and what fills it.
    void paint_cut(std::size_t i)
    {
        const auto& hollows = stage_.shown.hollows[i];
        const bool vessel = is_vessel(stage_.bundle, i);
        if (!vessel) {
            for (const Hollow& hollow : hollows) {
                if (const auto room = section_of(hollow.room, stage_.cut); !room.empty()) {
                    area(Path::polygon(room), {item(i).full ? palette::contents : palette::inside, 1, hatch(i)}, thin,
                         i);
                }
            }
        }
        const Path material = material_of(stage_.bundle, stage_.shown, i, stage_.cut);
        if (!material.empty()) {
            const bool dark = vessel && is_thin(stage_.on_paper(material));
            area(material, {is_item_of_step(i) || !dark ? tint(i) : palette::wall, 1, hatch(i)}, medium, i, !dark);
        }
    }

    /// Whether an area is a thin wall, by its mean thickness: twice the area over the length of its edge.
    static bool is_thin(const Path& material)
    {
        constexpr double thick = 1.2; // mm of paper
        double twice = 0, edge = 0;
        for (const auto& line : flattened(material)) {
            for (std::size_t k = 0; k < line.size(); ++k) {
                const Spot &a = line[k], &b = line[(k + 1) % line.size()];
                twice += a.x * b.y - a.y * b.x;
                edge += std::hypot(b.x - a.x, b.y - a.y);
            }
        }
        return std::abs(twice) < thick * edge;
    }

    void outline(const Solid& solid, double dash)
    {
        auto corners = outline_behind(solid, stage_.camera, stage_.level());
        if (corners.empty()) {
            corners = outline_behind(solid, stage_.camera, std::nullopt);
        }
        const Path line = stage_.on_paper(Path::polygon(corners));
        stage_.canvas.draw(line, Pen{palette::ink, heavy, dash, dash});
        stage_.seen.keep_off(line);
    }

    Stage& stage_;
};

} // namespace

void paint_things(Stage& stage) { Things(stage).paint(); }

} // namespace tuckwright::drawing
