// SPDX-License-Identifier: GPL-3.0-or-later
/// The library from outside: a kit built in code, packed, proved, read, saved and read back.
#include <cstdio>
#include <string>
#include <variant>

#include "tuckwright/kit_in_code.hpp"
#include "tuckwright/proof.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/solve.hpp"

namespace
{

tuckwright::Item thing(const std::string& id, const std::string& name, double weight_g, tuckwright::Shape outside)
{
    tuckwright::Item item;
    item.id = id;
    item.name = name;
    item.weight_g = weight_g;
    item.outside = outside;
    return item;
}

/// A pot of 110 x 90 mm, walls of 1 mm, sooty outside; a tin that goes into it, and a flat spoon for which it is too narrow.
tuckwright::Kit berries()
{
    using namespace tuckwright;
    Kit kit;
    kit.name = "Berries by the brook";
    kit.clearance = 0.5;
    kit.bundle.shape = BundleShape::cylinder;
    kit.items.push_back(thing("pot", "Pot", 140, Cylinder{110, 90}));
    kit.items.back().inside = cavity_of(kit.items.back().outside, 1, 1); // wall and base
    kit.items.back().kinds = {Kind::sooty};
    kit.items.push_back(thing("tin", "Berry tin", 40, Cylinder{70, 60}));
    kit.items.back().kinds = {Kind::food};
    kit.items.push_back(thing("spoon", "Spoon", 12, Box{109, 30, 12}));
    kit.items.back().kinds = {Kind::lips};
    return with_usual_rules(kit); // and all else that a file's reader does by itself
}

int failed(const char* what)
{
    std::fprintf(stderr, "berry_tin: %s\n", what);
    return 1;
}

} // namespace

int main()
{
    using namespace tuckwright;
    const Kit kit = berries();
    for (const Problem& problem : problems_of(kit)) { // none: else solve() would throw
        return failed(to_string(problem).c_str());
    }
    SolveOptions options;
    options.effort = Effort::quick;
    const Bundle bundle = solve(kit, options);
    if (!has_bundle(bundle.status)) {
        return failed("no bundle");
    }
    if (!check(bundle).empty() || !check_against(bundle, kit).empty()) {
        return failed("the bundle is not proved");
    }
    Bundle spoilt = bundle;
    spoilt.items.front().solids.front().pose.center.z += 1;
    if (check(spoilt).empty()) {
        return failed("a spoilt bundle is not refused");
    }
    for (const PlacedItem& item : bundle.items) {
        const std::string where = item.in ? bundle.items[item.in->item].name : "the bundle";
        std::printf("%s: %s in %s\n", item.name.c_str(), item.form.c_str(), where.c_str());
    }
    const auto& round = std::get<Cylinder>(outer_envelope(bundle));
    std::printf("%.0f x %.0f mm, %zu steps\n", round.diameter, round.height, bundle.steps.size());
    const auto again = from_json(to_json(bundle), "berries.json");
    return again && to_json(*again) == to_json(bundle) ? 0 : failed("what is saved is not read back");
}
