// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <fmt/format.h>
#include <iterator>
#include <numbers>

#include "bench/suites.hpp"
#include "support/kit_writer.hpp"

namespace tuckwright::bench {

namespace {

/// Radii of the smallest circle known round n discs of radius 1, n = 2, 3, ... 50; proved for n <= 13 and n = 19.
/// E. Specht, "The best known packings of equal circles in a circle", tables of radii; the same in E. G. Birgin and
/// J. M. Gentil, "New and improved results for packing identical unitary radius circles within triangles, rectangles
/// and strips", Computers & Operations Research 37 (2010), Table 1.
constexpr double round_equal[] = {2.0,
                                  2.1547005383792515,
                                  2.414213562373095,
                                  2.7013016167040798,
                                  3.0,
                                  3.0,
                                  3.3047648709624865,
                                  3.613125929752753,
                                  3.8130256313981243,
                                  3.9238044001630872,
                                  4.0296019301161834,
                                  4.2360679774997896,
                                  4.3284285548608366,
                                  4.5213569647061642,
                                  4.6154255948731939,
                                  4.7920337483105791,
                                  4.8637033051562731,
                                  4.8637033051562731,
                                  5.1223207369915283,
                                  5.2523174750102422,
                                  5.4397189590722134,
                                  5.5452042225748582,
                                  5.6516610917654367,
                                  5.7528243308571153,
                                  5.8281765369429493,
                                  5.9063978473941545,
                                  6.0149380973715121,
                                  6.1385979039781456,
                                  6.197741070879226,
                                  6.2915026221291811,
                                  6.4294629709501135,
                                  6.4867031235604333,
                                  6.6109570900010028,
                                  6.6971710917902442,
                                  6.7467537934241754,
                                  6.7587704831436335,
                                  6.9618869652281487,
                                  7.0578841626240042,
                                  7.1238464359431248,
                                  7.260012328677046,
                                  7.3467964069427686,
                                  7.4199448563412109,
                                  7.4980366829952483,
                                  7.5729123263675215,
                                  7.6501799146936677,
                                  7.7241700525980185,
                                  7.7912714305586675,
                                  7.8868709588028646,
                                  7.9475152747835107};

/// Radii of the smallest circle known round discs of radius 1 to n, n = 5, 6, ... 20. T. Ye, W. Huang, Z. Lu,
/// "Iterated tabu search algorithm for packing unequal circles in a circle", arXiv 1306.0694 (2013), Table 4.
constexpr double round_radii[] = {9.00139774,  11.05704039, 13.46211067, 16.22174667, 19.2331939, 22.00019301,
                                  24.96063428, 28.37138943, 31.54586701, 35.09564714, 38.8379955, 42.45811643,
                                  46.29134211, 50.11976262, 54.24029359, 58.40056747};

constexpr int first_equal = 2, first_radii = 5;

/// Half a metre for the widest disc: next to it the grid and the air at curved contacts are nothing.
constexpr double widest = 500;

/// The radius of the circle, in units of `unit` mm, from the volume of a round bundle so high.
std::function<double(double)> radius_of(double unit, double height)
{
    return [=](double ml) { return std::sqrt(1000 * ml / (std::numbers::pi * height)) / unit; };
}

/// Discs of radius k units, `counts[k - 1]` of each, in a round bundle as low as they are. They are lower than wide, so
/// that all must stand, and only the plan counts.
Case discs_in_circle(const std::vector<int>& counts)
{
    const double unit = std::floor(1000 * widest / static_cast<double>(counts.size())) / 1000;
    const double height = std::floor(1.5 * unit);
    test::KitText kit("{shape: cylinder, limits: {height: " + test::mm(height) + "}}");
    Case made;
    for (std::size_t k = 0; k < counts.size(); ++k) {
        const double diameter = 2 * unit * static_cast<double>(k + 1);
        kit.item(fmt::format("disc-{}", k + 1), test::cylinder(diameter, height), counts[k]);
        made.items += counts[k];
    }
    made.kit = kit.text();
    made.figure = radius_of(unit, height);
    made.unit = "radius";
    return made;
}

/// Places on a fine grid and on a coarse one, which is searched faster.
PeerTask peer_task(int n)
{
    const auto data = [n](int parts) {
        const std::vector<int> radii(static_cast<std::size_t>(n), 1);
        return fmt::format("n={};radius=[{}];parts={};most={};", n, fmt::join(radii, ","), parts, n * parts);
    };
    return {"circle", {{"circles.mzn", data(1000), 1e-3}, {"circles.mzn", data(100), 1e-2}}};
}

} // namespace

Suite equal_circles()
{
    Suite suite{"circles", "equal discs in the smallest circle: its radius over theirs", {}};
    for (int n = first_equal; n < first_equal + static_cast<int>(std::size(round_equal)); ++n) {
        Case made = discs_in_circle({n});
        made.suite = suite.name;
        made.name = fmt::format("circles-{:02}", n);
        made.group = n <= 20 ? "n <= 20" : n <= 30 ? "n <= 30" : "n <= 50";
        made.best = round_equal[n - first_equal];
        made.source = "E. Specht's tables; Birgin and Gentil 2010, Table 1";
        made.aim = Aim{n <= 20 ? 1e-5 : 5e-4};
        if (n <= 20) {
            made.peer = peer_task(n);
        }
        suite.cases.push_back(std::move(made));
    }
    return suite;
}

Suite circles_of_radii()
{
    Suite suite{"radii", "discs of radius 1 to n in the smallest circle: its radius", {}};
    for (int n = first_radii; n < first_radii + static_cast<int>(std::size(round_radii)); ++n) {
        Case made = discs_in_circle(std::vector<int>(static_cast<std::size_t>(n), 1));
        made.suite = suite.name;
        made.name = fmt::format("radii-{:02}", n);
        made.group = n <= 15 ? "n <= 15" : "n <= 20";
        made.best = round_radii[n - first_radii];
        made.source = "Ye, Huang, Lu 2013, arXiv 1306.0694, Table 4";
        made.aim = Aim{n <= 15 ? 5e-4 : 3e-3};
        suite.cases.push_back(std::move(made));
    }
    return suite;
}

} // namespace tuckwright::bench
