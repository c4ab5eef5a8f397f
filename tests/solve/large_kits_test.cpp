// SPDX-License-Identifier: GPL-3.0-or-later
/// Kits of many things: found, proved, repeatable, and soon over once the search is stopped.
#include <atomic>
#include <catch2/catch.hpp>
#include <cmath>

#include "support/kit_text.hpp"
#include "support/kit_writer.hpp"
#include "support/random_solids.hpp"
#include "support/workload.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

namespace {

KitText many_things(int number, std::uint64_t seed, const std::string& bundle)
{
    Dice dice(seed);
    const auto whole = [&](double low, double high) { return std::round(dice.between(low, high)); };
    KitText kit(bundle, 0.5);
    for (int k = 0; k < number; ++k) {
        const std::string id = "thing-" + std::to_string(k + 1);
        switch (k % 5) {
        case 0:
            kit.item(id, cylinder(whole(60, 130), whole(50, 110)) + ", inside: {wall: 1, base: 1, opens: top}");
            break;
        case 1: kit.item(id, cylinder(whole(20, 75), whole(15, 90))); break;
        case 2: kit.item(id, cylinder(whole(60, 120), whole(40, 90)) + ", inside: {wall: 1, opens: both}"); break;
        case 3: kit.item(id, cylinder(whole(5, 14), whole(70, 190))); break;
        default: {
            const double length = whole(25, 110), width = whole(15, 70);
            kit.item(id, box(length, width, whole(6, 45)));
        }
        }
    }
    return kit;
}

} // namespace

TEST_CASE("a search through many things that is stopped at once still ends in a proved bundle")
{
    const int number = count(200, 60);
    for (const std::string& bundle : {round_bundle(), box_bundle()}) {
        const Kit kit = kit_of(many_things(number, 1, bundle).text());
        std::atomic<bool> stop{true};
        SolveOptions options;
        options.effort = Effort::thorough;
        options.stop = &stop;
        const Bundle packed = solve(kit, options);
        CHECK(packed.status == Status::stopped);
        CHECK(packed.items.size() == static_cast<std::size_t>(number));
        CHECK(check_against(packed, kit).empty());
        CHECK(check(packed).empty());
        double sum = 0;
        for (const Item& item : kit.items) {
            sum += volume_ml(item.outside);
        }
        CHECK(volume_ml(packed.envelope) < 2 * sum); // it has at least been piled up
    }
}

TEST_CASE("a search through many things packs them well and is repeatable")
{
    const Kit kit = kit_of(many_things(count(60, 50), 2, box_bundle()).text());
    SolveOptions options;
    options.effort = Effort::quick;
    options.threads = 1;
    const Bundle one = solve(kit, options);
    REQUIRE(has_bundle(one.status));
    CHECK(check(one).empty());
    double sum = 0;
    for (const Item& item : kit.items) {
        sum += volume_ml(item.outside);
    }
    CHECK(volume_ml(one.envelope) < sum);
    options.threads = 2;
    const Bundle two = solve(kit, options);
    CHECK(one.envelope == two.envelope);
    REQUIRE(one.items.size() == two.items.size());
    for (std::size_t k = 0; k < one.items.size(); ++k) {
        CHECK(one.items[k].solids == two.items[k].solids);
    }
}

TEST_CASE("many equal boxes lie in rows without waste, which is proved the smallest")
{
    const int half = count(120, 30);
    KitText text(box_bundle());
    text.item("tin", box(40, 30, 20), half).item("other-tin", box(40, 30, 20), half);
    SolveOptions options;
    options.effort = Effort::quick;
    const Bundle packed = solve(kit_of(text.text()), options);
    CHECK(packed.status == Status::proved_best);
    CHECK(check(packed).empty());
    CHECK(volume_ml(packed.envelope) == Approx(2 * half * 24).epsilon(1e-9)); // 40 x 30 x 20 mm are 24 ml
}
