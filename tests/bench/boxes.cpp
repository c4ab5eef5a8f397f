// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "bench/suites.hpp"
#include "support/kit_writer.hpp"

namespace tuckwright::bench {

namespace {

/// Equal boxes; the unit is up to the problem.
struct Boxes {
    int count;
    int length, width, height;
};

struct Container {
    int length, width, height;
};

/// The problems' unit in mm, and how much wider than the container a bundle may be where blocks fill it exactly.
constexpr double unit = 10, spare = 0.02;

test::KitText kit_of(const std::vector<Boxes>& set, const std::string& bundle)
{
    test::KitText kit(bundle);
    for (std::size_t k = 0; k < set.size(); ++k) {
        kit.item(fmt::format("block-{}", k + 1),
                 test::box(unit * set[k].length, unit * set[k].width, unit * set[k].height), set[k].count);
    }
    return kit;
}

PeerTask peer_task(const std::vector<Boxes>& set, const Container& most)
{
    std::string rows;
    int n = 0;
    for (const Boxes& boxes : set) {
        for (int k = 0; k < boxes.count; ++k, ++n) {
            rows += fmt::format("|{},{},{}", boxes.length, boxes.width, boxes.height);
        }
    }
    const std::string data =
        fmt::format("n={};side=[{}|];most=[{},{},{}];", n, rows, most.length, most.width, most.height);
    return {"volume", {{"boxes.mzn", data + "repair=true;"}, {"boxes.mzn", data + "repair=false;"}}};
}

Case made_of(const std::vector<Boxes>& set, const std::string& name, const std::string& bundle)
{
    Case made;
    made.suite = "boxes";
    made.name = name;
    made.kit = kit_of(set, bundle).text();
    for (const Boxes& boxes : set) {
        made.items += boxes.count;
    }
    made.unit = "units^3"; // a unit of 10 mm makes this millilitres
    return made;
}

/// The first boxes of the classic problem.
Case least_volume(std::size_t count, double best)
{
    // C. S. Chen, S. M. Lee, Q. S. Shen, "An analytical model for the container loading problem", European J.
    // Operational Research 80 (1995); J.-F. Tsai, H.-L. Li, "A global optimization method for packing problems",
    // Engineering Optimization 38 (2006). Sides and volumes from memory; the volumes proved by exhaustive search.
    static const std::vector<Boxes> classic{{1, 25, 8, 6},  {1, 20, 10, 5}, {1, 16, 7, 3},
                                            {1, 15, 12, 6}, {1, 22, 8, 3},  {1, 20, 10, 4}};
    const std::vector<Boxes> set(classic.begin(), classic.begin() + static_cast<std::ptrdiff_t>(count));
    Case made = made_of(set, fmt::format("classic-{:.0f}", best), test::box_bundle());
    made.group = "least volume";
    made.best = best;
    made.source = "Chen, Lee, Shen 1995; Tsai and Li 2006 (from memory, proved anew)";
    made.aim = Aim{1e-6, 1.0};
    made.peer = peer_task(set, {60, 60, 60}); // more than twice the longest side
    return made;
}

Case exact_fill(const std::vector<Boxes>& set, const std::string& name, const Container& most, const char* source)
{
    const auto wide = [](int side) { return unit * side + spare; };
    Case made = made_of(set, name, test::box_bundle(wide(most.length), wide(most.width), wide(most.height)));
    made.group = "exact fill";
    made.best = most.length * most.width * most.height;
    made.source = source;
    made.aim = Aim{0.01, 60.0};
    made.peer = peer_task(set, most);
    made.peer->only = made.best;
    return made;
}

/// The squares as flat boxes one unit high, which do not stand on edge in a bundle as flat as they are.
std::vector<Boxes> squares_of_112()
{
    std::vector<Boxes> set;
    for (const int side : {2, 4, 6, 7, 8, 9, 11, 15, 16, 17, 18, 19, 24, 25, 27, 29, 33, 35, 37, 42, 50}) {
        set.push_back({1, side, side, 1});
    }
    return set;
}

} // namespace

Suite classic_boxes()
{
    Suite suite{"boxes", "boxes in a box: its volume (in exact fills, whether all is found)", {}};
    suite.cases = {least_volume(4, 4368),
                   least_volume(5, 5040),
                   least_volume(6, 5880),
                   exact_fill({{6, 2, 2, 1}, {3, 1, 1, 1}}, "blocks-3x3x3", {3, 3, 3},
                              "Slothouber-Graatsma: Berlekamp, Conway, Guy 1982, Winning Ways"),
                   exact_fill({{13, 4, 2, 1}, {1, 2, 2, 2}, {1, 2, 2, 1}, {3, 3, 1, 1}}, "blocks-5x5x5", {5, 5, 5},
                              "Conway: Berlekamp, Conway, Guy 1982, Winning Ways"),
                   exact_fill(squares_of_112(), "square-112", {112, 112, 1}, "Duijvestijn 1978; OEIS A014530")};
    return suite;
}

} // namespace tuckwright::bench
