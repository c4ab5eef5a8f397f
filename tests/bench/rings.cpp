// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "bench/suites.hpp"
#include "support/kit_writer.hpp"

namespace tuckwright::bench {

namespace {

/// Equal rings: how many, their inner radius (0 for a disc) and their outer one.
struct Rings {
    int count;
    double inner, outer;
};

/// The problems' unit in mm. No cylinder may lie: each is higher than the box would let it be wide.
constexpr double unit = 10, height = 100, spare = 0.02;

Case in_square(const std::string& name, const std::vector<Rings>& set, double side)
{
    test::KitText kit(test::box_bundle(unit * side + spare, unit * side + spare, height));
    Case made;
    for (std::size_t k = 0; k < set.size(); ++k) {
        std::string fields = test::cylinder(2 * unit * set[k].outer, height);
        if (set[k].inner > 0) {
            fields += ", inside: {cylinder: {diameter: " + test::mm(2 * unit * set[k].inner) + "}, opens: both}";
        }
        kit.item(fmt::format("ring-{}", k + 1), fields, set[k].count);
        made.items += set[k].count;
    }
    made.suite = "rings";
    made.name = name;
    made.group = "rings";
    made.kit = kit.text();
    made.best = side * side;
    made.unit = "units^2";
    made.source = "Pedroso, Cunha, Tavares 2016, Recursive circle packing problems: each set fits the square";
    made.figure = [](double ml) { return 1000 * ml / (height * unit * unit); };
    made.aim = Aim{0.01, 2.0};
    return made;
}

} // namespace

Suite rings()
{
    // J. P. Pedroso, S. Cunha, J. N. Tavares, "Recursive circle packing problems", International Transactions in
    // Operational Research 23 (2016); their data as kept with the SCIP solver: each set fits in one rectangle.
    Suite suite{"rings", "rings in rings in a square (whether all is found): the area used", {}};
    suite.cases = {in_square("ring1", {{1, 2.45, 3.00}, {4, 0.45, 1.0}, {5, 0, 0.45}}, 6),
                   in_square("ring2", {{6, 0.15, 0.2}, {3, 0.4, 0.7}, {3, 0.8, 1.0}, {2, 0.1, 1.0}}, 4.83),
                   in_square("circle6", {{6, 0, 1.00}}, 5.33)};
    return suite;
}

} // namespace tuckwright::bench
