// SPDX-License-Identifier: GPL-3.0-or-later
/// Answers in US customary units: conversions, and rounding that never turns a misfit into a fit or the other way round.
#include <catch2/catch.hpp>

#include <cstdlib>
#include <random>

#include "report/words.hpp"
#include "tuckwright/units.hpp"

using namespace tuckwright;
using namespace tuckwright::report;

namespace
{

/// Metric again at the end, whatever happens.
struct InUsUnits {
    InUsUnits() { answer_in(AnswerUnits::us_customary); }
    ~InUsUnits() { answer_in(AnswerUnits::metric); }
    InUsUnits(const InUsUnits&) = delete;
    InUsUnits& operator=(const InUsUnits&) = delete;
};

double number_in(const std::string& text) { return std::strtod(text.c_str(), nullptr); }

Bundle bundle_of(const std::string& name)
{
    Bundle bundle;
    PlacedItem item;
    item.id = "tin";
    item.name = name;
    bundle.items.push_back(item);
    return bundle;
}

} // namespace

// Source: NIST Special Publication 811 (2008), appendix B.8: 1 in = 25.4 mm, 1 fl oz (US) = 29.57353 ml, 1 oz = 28.34952 g,
// 1 lb = 453.5924 g.
TEST_CASE("lengths, volumes and weights in US customary units")
{
    const InUsUnits us;
    CHECK(length_in_words(114.3) == "4.5 in");
    CHECK(length_in_words(114.300001) == "4.51 in");
    CHECK(room_in_words(114.3) == "4.5 in");
    CHECK(room_in_words(114.299999) == "4.49 in");
    CHECK(room_in_words(0.2) == "0 in");
    CHECK(length_in_words(304.8) == "12 in");
    CHECK(length_in_words(2.54) == "0.1 in");
    CHECK(volume_in_words(29.5735295625, Rounding::up) == "1 fl oz");
    CHECK(volume_in_words(1000, Rounding::up) == "33.9 fl oz"); // 33.814
    CHECK(volume_in_words(1000, Rounding::down) == "33.8 fl oz");
    CHECK(weight_in_words(28.349523125) == "1 oz");
    CHECK(weight_in_words(453.59237) == "1 lb 0 oz");
    CHECK(weight_in_words(453.5) == "1 lb 0 oz");
    CHECK(weight_in_words(1642) == "3 lb 9.9 oz"); // 57.92 oz
    CHECK(size_in_words(Box{105, 30, 12}) == "4.14 x 1.19 x 0.48 in");
    CHECK(size_in_words(Cylinder{110, 90}) == "4.34 in across, 3.55 in high");
    CHECK(size_in_words(Cylinder{110, 90}, Rounding::down) == "4.33 in across, 3.54 in high"); // 4.3307, 3.5433
    CHECK(size_in_words(Box{105, 30, 12}, Rounding::down) == "4.13 x 1.18 x 0.47 in");
    CHECK(told_step() == 0.254);
    CHECK(table_units().volume == std::string("fl oz"));
    CHECK(table_units().ml == Approx(29.57353));
    CHECK(table_units().grams == Approx(28.34952));
    CHECK(table_units().mm == 25.4);
}

TEST_CASE("printed inches are never below a size, never above a room, and less than a hundredth off")
{
    const InUsUnits us;
    std::mt19937 random(7);
    for (int i = 0; i < 20'000; ++i) {
        const auto nm = static_cast<std::int64_t>(random() % 2'000'000'000U);
        const double mm = from_nanometres(nm);
        const auto up = std::llround(number_in(length_in_words(mm)) * 100) * 254'000;
        const auto down = std::llround(number_in(room_in_words(mm)) * 100) * 254'000;
        REQUIRE(up >= nm);
        REQUIRE(up - nm < 254'000);
        REQUIRE(down <= nm);
        REQUIRE(nm - down < 254'000);
        // What fits by its true sizes fits into a room printed as no larger only if it does so truly.
        const auto other = static_cast<std::int64_t>(random() % 2'000'000'000U);
        const auto printed = std::llround(number_in(length_in_words(from_nanometres(other))) * 100) * 254'000;
        REQUIRE((printed > down || other <= nm));
    }
}

TEST_CASE("lengths in steps are told in inches, names are left alone")
{
    const std::string step = "Put Tin 60 mm standing on the table at 4 o'clock, 27 mm off the middle; 1.6 mm of air to the wall.";
    CHECK(in_answer_units(step, bundle_of("Tin 60 mm")) == step);
    const InUsUnits us;
    CHECK(in_answer_units(step, bundle_of("Tin 60 mm")) ==
          "Put Tin 60 mm standing on the table at 4 o'clock, 1.1 in off the middle; 0.06 in of air to the wall.");
    CHECK(in_answer_units(step, bundle_of("Cup")) ==
          "Put Tin 2.4 in standing on the table at 4 o'clock, 1.1 in off the middle; 0.06 in of air to the wall.");
    CHECK(in_answer_units("as a pad 122 x 61 x 40 mm, 3.5 mm thick", bundle_of("Cup")) == "as a pad 4.8 x 2.4 x 1.6 in, 0.13 in thick");
    CHECK(in_answer_units("no length, 3 mmm", bundle_of("Cup")) == "no length, 3 mmm");
}

TEST_CASE("metric words are what they always were")
{
    CHECK(answer_units() == AnswerUnits::metric);
    CHECK(length_in_words(130.600001) == "130.7 mm");
    CHECK(told_step() == 0.1);
    CHECK(table_units().ml == 1);
    CHECK(table_units().weight == std::string("g"));
    CHECK(size_in_words(Cylinder{110.04, 90.06}, Rounding::down) == "110 mm across, 90 mm high");
    CHECK(room_in_words(130.699999) == "130.6 mm");
    CHECK(wrapped("", "Cup 2 in Pot") == "Cup 2 in Pot\n");
}
