// SPDX-License-Identifier: GPL-3.0-or-later
/// The least box of a few boxes against ones worked out by hand and against trying out all relations.
#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <deque>

#include "packing/least_box.hpp"
#include "packing/random.hpp"
#include "packing/scenes.hpp"
#include "support/workload.hpp"

using namespace tuckwright;
using namespace tuckwright::packing;
using tuckwright::test::count;

namespace {

const std::vector<Form> any_way{Form::standing, Form::on_end, Form::on_side};

LeastBox least_of(const std::vector<Body>& bodies, LeastBoxOptions options = {})
{
    static std::deque<Scene> scenes; // which layouts point to
    scenes.push_back(scene_of(bodies));
    options.work = options.work == 0 ? 100'000'000 : options.work;
    return least_box(scenes.back(), options);
}

void check_layout(const LeastBox& least, const EnvelopeLimits& limits = {})
{
    REQUIRE(least.layout);
    CHECK(volume(least.layout->envelope()) == Approx(least.volume).epsilon(1e-12));
    CHECK(worst_violation(*least.layout, PolishOptions{}) <= 2e-8);
    CHECK(least.layout->envelope().half_length <= limits.half_length);
    CHECK(least.layout->envelope().half_width <= limits.half_width);
    CHECK(least.layout->envelope().height <= limits.height);
}

using Sides = std::array<double, 3>;

/// Every pair in one of six relations, the first before the other or the other before it along x, y or z, in every
/// combination: the volume of the box that the boxes then need, as near to the origin as they may be; at most `least`.
double least_of_relations(const std::vector<Sides>& boxes, double least)
{
    struct Relation {
        std::size_t first, second, axis;
    };
    const std::size_t n = boxes.size(), pairs = n * (n - 1) / 2;
    std::vector<std::size_t> digits(pairs, 0);
    for (bool more = true; more;) {
        std::vector<Relation> relations;
        for (std::size_t i = 0, pair = 0; i < n; ++i) {
            for (std::size_t j = 0; j < i; ++j, ++pair) {
                const bool turned = digits[pair] % 2 == 1;
                relations.push_back({turned ? j : i, turned ? i : j, digits[pair] / 2});
            }
        }
        std::vector<Sides> ends = boxes;
        for (std::size_t pass = 0; pass < n; ++pass) { // one more than the longest path has relations
            for (const auto& [first, second, axis] : relations) {
                ends[second][axis] = std::max(ends[second][axis], ends[first][axis] + boxes[second][axis]);
            }
        }
        const bool is_sound = std::all_of(relations.begin(), relations.end(), [&](const Relation& r) {
            return ends[r.second][r.axis] >= ends[r.first][r.axis] + boxes[r.second][r.axis];
        });
        Sides need{};
        for (const Sides& end : ends) {
            for (std::size_t axis = 0; axis < 3; ++axis) {
                need[axis] = std::max(need[axis], end[axis]);
            }
        }
        least = is_sound ? std::min(least, need[0] * need[1] * need[2]) : least;
        std::size_t pair = 0;
        while (pair < pairs && ++digits[pair] == 6) {
            digits[pair++] = 0;
        }
        more = pair < pairs;
    }
    return least;
}

/// The same over all turns from the k-th box on, either all or quarters about z alone.
double least_of_turns(std::vector<Sides> boxes, bool all, std::size_t k = 0, double least = 1e300)
{
    if (k == boxes.size()) {
        return least_of_relations(boxes, least);
    }
    Sides& box = boxes[k];
    std::sort(box.begin(), all ? box.end() : box.begin() + 2);
    do {
        least = least_of_turns(boxes, all, k + 1, least);
    } while (std::next_permutation(box.begin(), all ? box.end() : box.begin() + 2));
    return least;
}

} // namespace

TEST_CASE("the least box of two to four boxes is the least over all turns and relations")
{
    Random random(5);
    for (int trial = 0; trial < count(40, 8); ++trial) {
        const bool all = trial % 4 != 3; // four boxes in all turns are too many
        std::vector<Sides> sides(all ? 2 + static_cast<std::size_t>(trial % 2) : 4);
        std::vector<Body> bodies;
        for (Sides& box : sides) {
            for (double& side : box) {
                side = 5 + static_cast<double>(random.below(trial % 8 < 4 ? 30 : 5));
            }
            box = &box != &sides.front() && random.chance(0.4) ? *(&box - 1) : box; // some are equal
            bodies.push_back(body(Box{box[0], box[1], box[2]}, all ? any_way : std::vector<Form>{Form::standing}));
        }
        const LeastBox least = least_of(bodies);
        CAPTURE(trial);
        REQUIRE(least.proved);
        check_layout(least);
        CHECK(least.volume == Approx(least_of_turns(sides, all)).epsilon(1e-9));
    }
}

TEST_CASE("five boxes of the classic problem: nothing is below 5040")
{
    std::vector<Body> bodies;
    for (const auto& [a, b, c] : {Sides{25, 8, 6}, {20, 10, 5}, {16, 7, 3}, {15, 12, 6}, {22, 8, 3}}) {
        bodies.push_back(body(Box{a, b, c}, any_way));
    }
    const LeastBox least = least_of(bodies);
    CHECK(least.proved);
    CHECK(least.volume == Approx(5040).epsilon(1e-12));
    check_layout(least);
    LeastBoxOptions options;
    options.below = 5040;
    const LeastBox below = least_of(bodies, options);
    CHECK(below.proved);
    CHECK_FALSE(below.layout);
    options.below = 5040.1;
    CHECK(least_of(bodies, options).layout);
    options.work = 100;
    CHECK_FALSE(least_of(bodies, options).proved);
    options.work = 0;
    options.below = 1e300;
    options.stop = [] { return true; };
    CHECK_FALSE(least_of(bodies, options).proved);
}

TEST_CASE("boxes round a hole, which no cut parts")
{
    // Four bars in a pinwheel round a cube: no plane goes through between them.
    std::vector<Body> bodies(4, body(Box{20, 10, 10}, any_way));
    bodies.push_back(body(Box{10, 10, 10}));
    LeastBoxOptions options;
    options.limits.half_length = options.limits.half_width = 15;
    options.limits.height = 10;
    const LeastBox least = least_of(bodies, options);
    CHECK(least.proved);
    CHECK(least.volume == Approx(9000));
    check_layout(least, options.limits);
}

TEST_CASE("forms and limits are kept to")
{
    const std::vector<Body> lying(3, body(Box{60, 20, 10}));
    LeastBoxOptions options;
    options.limits.height = 10;
    const LeastBox flat = least_of(lying, options);
    CHECK(flat.proved);
    check_layout(flat, options.limits);
    options.limits.half_length = options.limits.half_width = 29;
    options.limits.height = 1000;
    const LeastBox none = least_of(lying, options); // each is 60 long and lies
    CHECK(none.proved);
    CHECK_FALSE(none.layout);
    const LeastBox on_end = least_of(std::vector<Body>(3, body(Box{60, 20, 10}, any_way)), options);
    CHECK(on_end.proved);
    CHECK(on_end.volume == Approx(36000));
    check_layout(on_end, options.limits);
    // In a limit that leaves two axes alike, quarter turns in the plan are no likeness of what stands.
    options.limits.half_length = 30, options.limits.half_width = 10, options.limits.height = 30;
    check_layout(least_of(lying, options), options.limits);
}

TEST_CASE("other bodies than a few plain boxes have no exact least box")
{
    CHECK_FALSE(least_of({body(Box{20, 20, 10}), body(Cylinder{20, 10})}).proved);
    CHECK_FALSE(least_of({body(Box{20, 20, 10}), cup(20, 30)}).layout);
    CHECK_FALSE(least_of(std::vector<Body>(most_boxes + 1, body(Box{20, 20, 10}))).layout);
    CHECK(least_of(std::vector<Body>(most_boxes, body(Box{20, 20, 10}))).proved);
    // What may lean could be smaller than along the axes: a layout, but no proof.
    const LeastBox leaning =
        least_of({body(Box{20, 20, 10}), body(Box{5, 5, 100}, {Form::standing, Form::leaning})});
    CHECK(leaning.layout);
    CHECK_FALSE(leaning.proved);
}
