// SPDX-License-Identifier: GPL-3.0-or-later
// Bands as straps with a row of stitches, as far as nothing hides them, or where they are cut, and the bag as a ring as thick
// as its wall.
#include <algorithm>
#include <cmath>

#include "drawing/covers.hpp"
#include "drawing/palette.hpp"
#include "drawing/stage.hpp"
#include "report/words.hpp"

namespace tuckwright::drawing {

namespace {

constexpr double strap = 1.5; ///< mm of paper: the model knows no width
constexpr TextStyle cover_style{.size = 2.7, .italic = true, .color = palette::ink};

std::string name_of(const std::string& name, const std::string& id)
{
    const std::string spoken = name.substr(0, name.find(','));
    return report::printable(spoken.empty() ? id : spoken);
}

class Covers {
public:
    explicit Covers(Stage& stage) : stage_(stage) {}

    void paint()
    {
        for (const std::size_t k : stage_.shown.bands) {
            const Band& band = stage_.bundle.bands[k];
            look_past_vessels_of(band);
            paint_band(loop_of(stage_.bundle, band), is_named(k) ? name_of(band.name, band.id) : "");
        }
        if (stage_.shown.bag) {
            paint_bag();
        }
    }

private:
    using Run = std::vector<Spot>;

    /// A band is named when it is put on, one over a lid with that, and in the end.
    bool is_named(std::size_t k) const
    {
        const Band& band = stage_.bundle.bands[k];
        if (stage_.shown.item) {
            return stage_.shown.item == held_lid(stage_.bundle, band);
        }
        return stage_.options.covers == all_covers ||
               (!stage_.shown.bag && band.over.empty() && k == stage_.shown.bands.back());
    }

    /// All things may hide a band but the vessels in which it lies: one looks into these.
    void look_past_vessels_of(const Band& band)
    {
        std::vector<bool> may_hide = stage_.shown.there;
        if (const auto lid = held_lid(stage_.bundle, band)) {
            for (auto at = parent_of(stage_.bundle, *stage_.bundle.items[*lid].closes); at;
                 at = parent_of(stage_.bundle, *at)) {
                may_hide[*at] = false;
            }
        }
        solids_.clear();
        for (std::size_t i = 0; i < may_hide.size(); ++i) {
            if (may_hide[i]) {
                const auto& solids = stage_.bundle.items[i].solids;
                solids_.insert(solids_.end(), solids.begin(), solids.end());
            }
        }
    }

    /// Whether a thing is between the eye and a spot just outside a loop.
    bool is_hidden(Vec3 spot) const
    {
        constexpr double clear = 0.3, far = 5000; // mm
        const Solid speck{Box{0.02, 0.02, 0.02}, {spot + clear * stage_.camera.toward, {}}};
        const Hull ray = hull_of(speck, far * stage_.camera.toward);
        return std::any_of(solids_.begin(), solids_.end(),
                           [&](const Solid& solid) { return separation(ray, hull_of(solid)).distance < 0; });
    }

    /// The parts of a loop that can be seen, on paper.
    std::vector<Run> seen_runs(const std::vector<Vec3>& loop) const
    {
        std::vector<Run> runs;
        Vec3 middle{};
        for (const Vec3& corner : loop) {
            middle = middle + (1.0 / static_cast<double>(loop.size())) * corner;
        }
        bool goes_on = false;
        for (std::size_t k = 0; k < loop.size(); ++k) {
            const Vec3 from = loop[k], to = loop[(k + 1) % loop.size()];
            const int pieces = std::max(1, static_cast<int>(std::ceil(norm(to - from) / 3)));
            for (int i = 0; i < pieces; ++i) {
                const auto at = [&](double share) { return from + (share / pieces) * (to - from); };
                const Vec3 here = at(i + 0.5);
                constexpr double outside = 0.2; // mm
                if (is_hidden(here + outside * unit(here - middle))) {
                    goes_on = false;
                    continue;
                }
                if (!goes_on) {
                    runs.push_back({stage_.on_paper(at(i))});
                }
                runs.back().push_back(stage_.on_paper(at(i + 1)));
                goes_on = true;
            }
        }
        return runs;
    }

    void paint_band(const std::vector<Vec3>& loop, const std::string& name)
    {
        std::optional<Spot> right;
        const auto take = [&](const Path& area, Spot at) {
            stage_.seen.paint(area, std::nullopt);
            right = !right || at.x > right->x ? at : *right;
        };
        for (const Run& run : stage_.is_cut() ? std::vector<Run>() : seen_runs(loop)) {
            const Path line = Path::polyline(run);
            stage_.canvas.draw(line, Pen{palette::ink, strap});
            stage_.canvas.draw(line, Pen{palette::band, strap - 0.5});
            stage_.canvas.draw(line, Pen{palette::ink, 0.2, 0.8, 0.8});
            for (const Spot& spot : run) {
                take(Path::circle(spot, strap / 2 + 0.2), spot);
            }
        }
        for (const Spot& end : stage_.is_cut() ? cut_ends(loop) : std::vector<Spot>()) {
            const Path mark = Path::rectangle({end.x - 0.5, end.y - 0.9, 1, 1.8});
            stage_.canvas.draw(mark, Pen{palette::ink, 0.2}, Fill{palette::ink});
            take(mark, end);
        }
        if (right && !name.empty()) {
            stage_.names.push_back({*right, name});
        }
    }

    /// Where a loop goes through the plane of the cut, on paper.
    std::vector<Spot> cut_ends(const std::vector<Vec3>& loop) const
    {
        std::vector<Spot> ends;
        for (std::size_t k = 0; k < loop.size(); ++k) {
            const Vec3 from = loop[k], to = loop[(k + 1) % loop.size()];
            const double a = stage_.camera.depth(from) - stage_.cut.level,
                         b = stage_.camera.depth(to) - stage_.cut.level;
            if ((a < 0) != (b < 0)) {
                ends.push_back(stage_.on_paper(from + (a / (a - b)) * (to - from)));
            }
        }
        return ends;
    }

    void paint_bag()
    {
        const auto outline = [&](const Solid& solid) {
            return stage_.on_paper(Path::polygon(outline_behind(solid, stage_.camera, std::nullopt)));
        };
        Path ring = outline(bag_solid(stage_.bundle));
        Spot corner = ring.segments().front().to; // the one that is farthest up and to the right
        for (const Path::Segment& segment : ring.segments()) {
            const bool farther = segment.kind != Path::Kind::close && segment.to.x - segment.to.y > corner.x - corner.y;
            corner = farther ? segment.to : corner;
        }
        ring.add(outline(envelope_solid(stage_.bundle)));
        stage_.canvas.draw(ring, Pen{palette::ink, 0.25}, Fill{palette::band, 0.8});
        stage_.seen.keep_off(ring);
        const Bag& bag = *stage_.bundle.bag;
        stage_.names.push_back({corner, name_of(bag.name, bag.id)});
    }

    Stage& stage_;
    std::vector<Solid> solids_;
};

/// Whether there is room for a name beside the things, lines of dimensions included.
bool has_room(const Stage& stage, const Frame& place)
{
    const Frame& w = stage.window;
    const bool in_bag =
        stage.shown.bag && place.x < w.right() && w.x < place.right() && place.y < w.bottom() && w.y < place.bottom();
    return stage.is_free(place) && !in_bag && !stage.seen.shows_anything(place) &&
           std::none_of(stage.lines.begin(), stage.lines.end(), [&](const Frame& line) {
               return place.x < line.right() && line.x < place.right() && place.y < line.bottom() &&
                      line.y < place.bottom();
           });
}

/// Whether a line from a cover to its name meets no other text.
bool is_line_free(const Stage& stage, Spot from, Spot to)
{
    constexpr int pieces = 40;
    for (int k = 1; k < pieces; ++k) {
        const double t = static_cast<double>(k) / pieces;
        const Spot at{from.x + t * (to.x - from.x), from.y + t * (to.y - from.y)};
        const bool hit = std::any_of(stage.taken.begin(), stage.taken.end(), [&](const Frame& other) {
            return at.x > other.x && at.x < other.right() && at.y > other.y && at.y < other.bottom();
        });
        if (hit) {
            return false;
        }
    }
    return true;
}

/// In italics, right of, above or below what it names, with a line to it; left out where there is no room.
void write_name(Stage& stage, const Stage::Name& name)
{
    const auto extent = Canvas::extent(name.text, cover_style);
    const Spot spot = name.of;
    const double last = stage.frame.right() - extent.width - 0.3;
    for (int k = 0; k < 400; ++k) { // level with the spot, then a little higher and lower by turns
        const double y = spot.y - extent.height / 2 + (k % 2 == 0 ? 1 : -1) * 0.5 * ((k + 1) / 2);
        const Frame place{last, y, extent.width, extent.height};
        const bool right = place.x > spot.x + 1.5;
        const bool above = place.bottom() < spot.y - 0.5;
        const bool below = place.y > spot.y + 0.5;
        if (!right && !above && !below) {
            continue;
        }
        const double level = right ? y + extent.height / 2 : above ? place.bottom() : place.y;
        const Spot end{right ? place.x - 0.4 : place.x + extent.width / 2, level};
        if (has_room(stage, place) && is_line_free(stage, spot, end)) {
            stage.canvas.draw(Path::line(spot, end), Pen{palette::ink, 0.18});
            stage.canvas.write(name.text, {place.x, place.y}, cover_style);
            stage.taken.push_back(place);
            return;
        }
    }
}

} // namespace

void paint_covers(Stage& stage) { Covers(stage).paint(); }

void paint_cover_names(Stage& stage)
{
    std::for_each(stage.names.rbegin(), stage.names.rend(), [&](const Stage::Name& name) { write_name(stage, name); });
}

} // namespace tuckwright::drawing
