// SPDX-License-Identifier: GPL-3.0-or-later
/// What a smaller thing saves, where it can be worked out on paper.
#include "tuckwright/savings.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <nlohmann/json.hpp>
#include <numbers>

#include "support/kit_text.hpp"
#include "tuckwright/proof.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

namespace {

SolveOptions quickly(unsigned threads = 0)
{
    SolveOptions options;
    options.effort = Effort::quick;
    options.threads = threads;
    return options;
}

const WhatIf& asked(const SizeAnswer& answer, std::size_t item, Change change,
                    std::optional<Dimension> side = std::nullopt)
{
    const auto found = std::find_if(answer.what_ifs.begin(), answer.what_ifs.end(), [&](const WhatIf& one) {
        return one.item == item && one.change == change && one.side == side;
    });
    REQUIRE(found != answer.what_ifs.end());
    return *found;
}

/// Two round tins of the same width on one another; a coin lies in the upper one, in a small hollow.
Kit two_tins()
{
    KitText text(round_bundle(), 0.5);
    text.item("low", cylinder(80, 50) + ", upright: yes");
    text.item("high", cylinder(80, 30) + ", upright: yes, inside: {cylinder: {diameter: 30, height: 28}}");
    text.item("coin", cylinder(20, 4));
    return kit_of(text.text());
}

double tower_ml(double height) { return std::numbers::pi * 40 * 40 * height / 1000; }

} // namespace

TEST_CASE("two tins on one another: each saves its own millimetres, the coin none")
{
    const Kit kit = two_tins();
    const SizeAnswer answer = what_sets_the_size(kit, quickly());
    REQUIRE(has_bundle(answer.bundle.status));
    REQUIRE(packed_volume_ml(answer.bundle) == Approx(tower_ml(80)).epsilon(1e-5));
    CHECK(saved_ml(answer.bundle, asked(answer, 0, Change::a_millimetre, Dimension::height)) ==
          Approx(tower_ml(1)).epsilon(1e-3));
    CHECK(saved_ml(answer.bundle, asked(answer, 0, Change::a_tenth, Dimension::height)) ==
          Approx(tower_ml(5)).epsilon(1e-3));
    CHECK(saved_ml(answer.bundle, asked(answer, 1, Change::a_tenth, Dimension::height)) ==
          Approx(tower_ml(3)).epsilon(1e-3));
    CHECK(saved_ml(answer.bundle, asked(answer, 0, Change::left_out)) == Approx(tower_ml(50)).epsilon(1e-3));
    for (const WhatIf& ask : answer.what_ifs) {
        CHECK(ask.item != 2);
        REQUIRE(ask.bundle);
        CHECK(check(*ask.bundle).empty());
        CHECK(saved_ml(answer.bundle, ask) >= 0);
    }
}

TEST_CASE("what saves most comes first, and a thing as wide saves nothing in width alone")
{
    const SizeAnswer answer = what_sets_the_size(two_tins(), quickly());
    double last = 1e9;
    for (const WhatIf& ask : answer.what_ifs) {
        const double saved = ask.bundle ? saved_ml(answer.bundle, ask) : 0;
        CHECK(saved <= last);
        last = saved;
        if (ask.side == Dimension::diameter) {
            CHECK(saved == 0);
        }
    }
}

TEST_CASE("the same answer on any number of threads, as text and as JSON")
{
    const Kit kit = two_tins();
    const SizeAnswer one = what_sets_the_size(kit, quickly(1)), two = what_sets_the_size(kit, quickly(3));
    CHECK(size_text(kit, one) == size_text(kit, two));
    CHECK(size_json(&kit, one) == size_json(&kit, two));
}

TEST_CASE("the text and the JSON tell the same figures")
{
    const Kit kit = two_tins();
    const SizeAnswer answer = what_sets_the_size(kit, quickly());
    const std::string text = size_text(kit, answer);
    INFO(text);
    CHECK(text.find("Height 80 mm, from below: ") != std::string::npos);
    CHECK((text.find("low 50 mm + high 30 mm.") != std::string::npos ||
           text.find("high 30 mm + low 50 mm.") != std::string::npos));
    CHECK(text.find("low: 5 mm less height (10 %)") != std::string::npos);
    CHECK(text.find("6.2 %") != std::string::npos); // 5 of 80 is 6.25 %, rounded down
    const auto json = nlohmann::json::parse(size_json(&kit, answer));
    CHECK(json["format"] == "tuckwright-size");
    CHECK(json["bundle"]["height_mm"] == 80);
    REQUIRE(json["chains"].size() == 2);
    for (const auto& chain : json["chains"]) {
        double sum = 0;
        for (const auto& stretch : chain["stretches"]) {
            sum += stretch["mm"].get<double>();
        }
        CHECK(sum == Approx(chain["mm"].get<double>()).margin(1e-6));
    }
    REQUIRE(json["what_ifs"].size() == answer.what_ifs.size());
    CHECK(json["what_ifs"][0]["saved_ml"].get<double>() == saved_ml(answer.bundle, answer.what_ifs[0]));
}

TEST_CASE("where nothing fits there are no chains, and the reason is told")
{
    KitText text(round_bundle(50, 50), 0.5);
    text.item("tin", cylinder(80, 50));
    const Kit kit = kit_of(text.text());
    const SizeAnswer answer = what_sets_the_size(kit, quickly());
    CHECK(answer.bundle.status == Status::does_not_fit);
    CHECK(answer.chains.empty());
    CHECK(answer.what_ifs.empty());
    CHECK(size_text(kit, answer).find("does not fit") != std::string::npos);
    CHECK(nlohmann::json::parse(size_json(&kit, answer))["bundle"].is_null());
}

TEST_CASE("a search that is stopped tells what it has")
{
    std::atomic<bool> stop{true};
    SolveOptions options = quickly();
    options.stop = &stop;
    const Kit kit = two_tins();
    const SizeAnswer answer = what_sets_the_size(kit, options);
    for (const WhatIf& ask : answer.what_ifs) {
        CHECK_FALSE(ask.bundle);
        CHECK(ask.why_not == "the search was stopped");
    }
    CHECK((!has_bundle(answer.bundle.status) || answer.stopped));
}
