// SPDX-License-Identifier: GPL-3.0-or-later
// Pictures read back from their SVG: where things are drawn, and that nothing is where it should not be.
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include "drawing/handled.hpp"
#include "drawing/random_pictures.hpp"
#include "drawing/section.hpp"
#include "drawing/stage.hpp"
#include "support/handmade_bundles_parts.hpp"
#include "support/random_solids.hpp"
#include "support/svg.hpp"
#include "support/workload.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/drawing.hpp"

using namespace tuckwright;
using drawing_test::faults_of;
using drawing_test::random_bundle;
using svg::Bounds;

namespace {

constexpr Frame frame{12, 15, 170, 230};
constexpr PageSize page{200, 260};

svg::Picture picture(const Bundle& bundle, std::size_t step, View view, double scale)
{
    Canvas canvas(page);
    draw_view(canvas, frame, bundle, step, view, {.scale = scale});
    return svg::read(canvas.svg());
}

/// The frame that a solid's image should have on paper, up to a shift.
Bounds expected(const Solid& solid, const drawing::Camera& camera, double scale)
{
    const Hull hull = hull_of(solid);
    return {-support(hull, -1.0 * camera.right) / scale, -support(hull, camera.up) / scale,
            support(hull, camera.right) / scale, support(hull, -1.0 * camera.up) / scale};
}

/// Whether its image is one face, and so one path: what stands or lies, seen straight from a side.
bool is_one_face(const Solid& solid, const drawing::Camera& camera)
{
    const Matrix3 m = rotation_matrix(solid.pose.turn);
    for (std::size_t k = 0; k < 3; ++k) {
        const double c = std::abs(dot(Vec3{m[0][k], m[1][k], m[2][k]}, camera.toward));
        if (c > 1e-9 && c < 1 - 1e-9) {
            return false;
        }
    }
    return true;
}

/// Where things should be drawn as one path each: what is not cut and seen from a side, or in a cutaway all behind the cut.
std::vector<Bounds> frames_wanted(const Bundle& bundle, std::size_t step, View view, double scale)
{
    const auto shown = drawing::shown_at(bundle, step);
    const auto cut = drawing::cut_for(bundle, shown);
    const auto camera = drawing::camera_of(view, cut);
    std::vector<Bounds> wanted;
    for (std::size_t i = 0; i < bundle.items.size(); ++i) {
        const Solid& body = bundle.items[i].solids.front();
        const bool is_one =
            view == View::cutaway ? support(hull_of(body), camera.toward) < cut.level : is_one_face(body, camera);
        if (shown.there[i] && is_one) {
            wanted.push_back(expected(body, camera, scale));
        }
    }
    return wanted;
}

bool same(const Bounds& a, const Bounds& b, Spot shift)
{
    constexpr double off = 0.1; // mm of paper
    return std::abs(a.left + shift.x - b.left) < off && std::abs(a.right + shift.x - b.right) < off &&
           std::abs(a.top + shift.y - b.top) < off && std::abs(a.bottom + shift.y - b.bottom) < off;
}

/// How many of these frames are drawn, all with the same shift: that which suits most of them.
std::size_t most_drawn(const std::vector<Bounds>& wanted, const std::vector<Bounds>& drawn)
{
    std::size_t most = 0;
    for (std::size_t reference = 0; reference < std::min<std::size_t>(wanted.size(), 3); ++reference) {
        for (const Bounds& candidate : drawn) {
            const Spot shift{candidate.left - wanted[reference].left, candidate.top - wanted[reference].top};
            if (!same(wanted[reference], candidate, shift)) {
                continue;
            }
            most = std::max(
                most, static_cast<std::size_t>(std::count_if(wanted.begin(), wanted.end(), [&](const Bounds& w) {
                    return std::any_of(drawn.begin(), drawn.end(), [&](const Bounds& d) { return same(w, d, shift); });
                })));
        }
    }
    return most;
}

std::vector<Bounds> areas_in(const svg::Picture& picture)
{
    std::vector<Bounds> all;
    for (const auto& drawn : picture.paths) {
        if (!drawn.letter && !drawn.clip && !drawn.lines.empty()) {
            all.push_back(drawn.bounds());
        }
    }
    return all;
}

std::string told(const std::vector<std::string>& faults)
{
    std::string text;
    for (const auto& fault : faults) {
        text += fault + "\n";
    }
    return text;
}

} // namespace

TEST_CASE("pictures of random kits of 5 to 40 things: in their frame, labels apart, all where the numbers say")
{
    std::size_t checked = 0;
    const int kits = test::count(100, 6);
    for (int seed = 1; seed <= kits; ++seed) {
        const Bundle bundle = random_bundle(static_cast<std::uint64_t>(seed), 5 + (seed * 35) / kits);
        test::Dice dice(static_cast<std::uint64_t>(seed));
        for (const View view : {View::cutaway, View::above, View::slanted}) {
            // Of every other picture the finished bundle, else some step.
            const std::size_t last = bundle.steps.size();
            const bool finished = (seed + static_cast<int>(view)) % 2 == 0;
            const std::size_t step = finished ? last : static_cast<std::size_t>(dice.below(static_cast<int>(last)));
            const double scale = fitting_scale(bundle, view, {frame.width, frame.height}, step);
            const auto drawn = picture(bundle, step, view, scale);
            const auto faults = faults_of(drawn, frame);
            INFO("seed " << seed << ", step " << step << " of " << last << ", view " << static_cast<int>(view) << "\n"
                         << told(faults));
            CHECK(faults.empty());
            const auto wanted = frames_wanted(drawing::as_handled(bundle, step), step, view, scale);
            if (!wanted.empty()) {
                CHECK(most_drawn(wanted, areas_in(drawn)) == wanted.size());
                checked += wanted.size();
            }
        }
    }
    CHECK(checked > static_cast<std::size_t>(kits) * 10);
}

TEST_CASE("what looks through pictures finds what is wrong with them")
{
    const Bundle bundle = random_bundle(3, 9);
    const double scale = fitting_scale(bundle, View::above, {frame.width, frame.height}, bundle.steps.size());
    Canvas canvas(page);
    draw_view(canvas, frame, bundle, bundle.steps.size(), View::above, {.scale = scale});
    REQUIRE(faults_of(svg::read(canvas.svg()), frame).empty());
    SECTION("a line out of the frame")
    {
        canvas.draw(Path::line({100, 100}, {100, 250}), Pen{});
        CHECK(told(faults_of(svg::read(canvas.svg()), frame)).find("outside") != std::string::npos);
    }
    SECTION("one label on another")
    {
        canvas.write("Salt tin", {60, 60});
        canvas.write("Cup", {66, 61});
        CHECK(told(faults_of(svg::read(canvas.svg()), frame)).find("on one another") != std::string::npos);
    }
    SECTION("something a little off its place")
    {
        const std::vector<Bounds> wanted{{0, 0, 10, 10}, {20, 0, 30, 8}, {40, 5, 50, 9}};
        std::vector<Bounds> drawn{{7, 3, 17, 13}, {27, 3, 37, 11}, {47, 8, 57, 12}};
        CHECK(most_drawn(wanted, drawn) == 3);
        drawn[1].left += 0.15;
        CHECK(most_drawn(wanted, drawn) == 2);
    }
}

TEST_CASE("the cutaway shows a pot's wall as thick as it is, and open at the top")
{
    // 100 across, 80 high, walls and bottom 4: at 1 : 2 the material's outline is 50 by 40 mm with 46 by 38 mm taken out.
    Bundle bundle = drawing_test::pot_with_tin();
    const auto shown = drawing::shown_at(bundle, bundle.steps.size());
    const auto cut = drawing::cut_for(bundle, shown);
    CHECK(cut.angle == 0);
    const Path material = drawing::material_of(bundle, shown, 0, cut);
    const Frame bounds = material.bounds();
    CHECK(bounds.width == Approx(100));
    CHECK(bounds.height == Approx(80));
    double twice = 0;
    const auto outlines = drawing::flattened(material);
    REQUIRE(outlines.size() == 1);
    for (std::size_t k = 0; k < outlines[0].size(); ++k) {
        const Spot &a = outlines[0][k], &b = outlines[0][(k + 1) % outlines[0].size()];
        twice += a.x * b.y - a.y * b.x;
    }
    CHECK(std::abs(twice) / 2 == Approx(100 * 80 - 92 * 76));
}

TEST_CASE("walls are cut out whichever way the plane is turned")
{
    // A bowl of 150 by 50 with walls of 2 mm, and a plane at some distance from its axis: its section is that of a ring.
    using namespace handmade;
    const Bundle bundle = handmade::bundle("Bowl", Cylinder{150, 50},
                                           {hollow(item("bowl", cylinder(150, 50, {3.84, -36.2, 25})),
                                                   cylinder(146, 48, {3.84, -36.2, 26}), Opening::top)});
    const auto shown = drawing::shown_at(bundle, 0);
    test::Dice dice(7);
    for (int k = 0; k < 400; ++k) {
        const double angle = k < 180 ? k : dice.between(-90, 90), off = k < 180 ? 0 : dice.between(-60, 60);
        const auto camera = drawing::from_the_side(angle, 0);
        const drawing::Cut cut{camera, camera.depth({3.84, -36.2, 25}) + off, angle};
        const double outer = 2 * std::sqrt(75 * 75 - off * off), inner = 2 * std::sqrt(73 * 73 - off * off);
        double twice = 0;
        for (const auto& line : drawing::flattened(drawing::material_of(bundle, shown, 0, cut))) {
            for (std::size_t i = 0; i < line.size(); ++i) {
                const Spot &a = line[i], &b = line[(i + 1) % line.size()];
                twice += a.x * b.y - a.y * b.x;
            }
        }
        INFO(angle << " degrees, " << off << " mm off");
        CHECK(std::abs(twice) / 2 == Approx(outer * 50 - inner * 48).margin(12)); // 96 sides
    }
}

TEST_CASE("a picture shows the vessel on the table, what is in it by then, and nothing else")
{
    const Bundle bundle =
        drawing_test::pot_with_tin(); // the tin goes into the pot, the pot onto the table, the box beside it
    const auto first = drawing::shown_at(bundle, 0);
    CHECK(first.root == std::size_t{0});
    CHECK(first.item == std::size_t{1});
    CHECK(first.there == std::vector<bool>{true, true, false});
    const auto second = drawing::shown_at(bundle, 1);
    CHECK_FALSE(second.root);
    CHECK(second.there == std::vector<bool>{true, true, false});
    CHECK(second.moving == std::vector<bool>{true, true, false});
    const auto done = drawing::shown_at(bundle, 3);
    CHECK_FALSE(done.item);
    CHECK(done.there == std::vector<bool>(3, true));
    CHECK_THROWS_AS(drawing::shown_at(bundle, 4), ContractBroken);
}

TEST_CASE("a view that does not fit into its frame, or of no bundle, is refused")
{
    Bundle bundle = drawing_test::pot_with_tin();
    Canvas canvas(page);
    CHECK_THROWS_AS(draw_view(canvas, {10, 10, 40, 40}, bundle, 3, View::above, {.scale = 1}), ContractBroken);
    CHECK(fitting_scale(bundle, View::above, {60, 60}) > fitting_scale(bundle, View::above, {120, 120}));
    bundle.status = Status::not_found;
    CHECK_THROWS_AS(draw_view(canvas, frame, bundle, 0, View::above), ContractBroken);
}
