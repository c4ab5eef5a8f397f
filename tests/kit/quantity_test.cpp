// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/quantity.hpp"

#include <catch2/catch.hpp>

using namespace tuckwright;
using namespace tuckwright::reading;

namespace
{

std::int64_t down(std::string_view text, Unit plain = Unit::mm)
{
    return parse_length(text, plain).value().nanometres_down();
}

std::int64_t up(std::string_view text, Unit plain = Unit::mm)
{
    return parse_length(text, plain).value().nanometres_up();
}

double grams(std::string_view text, Unit plain = Unit::g) { return parse_weight(text, plain).value(); }

std::string fault(std::string_view text)
{
    const auto length = parse_length(text, Unit::mm);
    return length.ok() ? "" : to_string(length.problems().front());
}

} // namespace

TEST_CASE("a length's unit says how many nanometres it is")
{
    CHECK(down("64 mm") == 64'000'000);
    CHECK(down("6.4cm") == 64'000'000);
    CHECK(down("0.064 m") == 64'000'000);
    // Inch: 25.4 mm exactly. International yard and pound agreement of 1959; NIST Special Publication 811 (2008), B.8.
    CHECK(down("1 in") == 25'400'000);
    CHECK(up("1in") == 25'400'000);
    CHECK(down("2.5in") == 63'500'000);
    CHECK(down("10 m") == 10'000'000'000);
}

TEST_CASE("a plain number is in the file's unit, and a unit behind the number wins")
{
    CHECK(down("12", Unit::cm) == 120'000'000);
    CHECK(down("12 mm", Unit::cm) == 12'000'000);
    CHECK(down("2", Unit::in) == 50'800'000);
    CHECK(grams("2", Unit::kg) == 2000);
    CHECK(grams("2 g", Unit::kg) == 2);
}

TEST_CASE("a weight is the double nearest to its exact grams")
{
    // Pound: 453.59237 g, ounce: a sixteenth of it, 28.349523125 g, both exact. International yard and pound agreement
    // of 1959; NIST Special Publication 811 (2008), B.8.
    CHECK(grams("1 oz") == 28.349523125);
    CHECK(grams("16 oz") == 453.59237);
    CHECK(grams("1lb") == 453.59237);
    CHECK(grams("0.1 lb") == 45.359237);
    CHECK(grams("0.1 kg") == 100);
    CHECK(grams("0.1") == 0.1);
    CHECK(grams("212.7 g") == 212.7);
    CHECK(grams("999999999 lb") == 453592369546.40763);
    CHECK(grams("0") == 0);
    CHECK(grams("-3 g") == -3);
}

TEST_CASE("lengths are exact where doubles are not")
{
    // As doubles, 0.1 + 0.2 is not 0.3.
    CHECK((*parse_length("0.1", Unit::mm) + *parse_length("0.2", Unit::mm) == *parse_length("0.3", Unit::mm)));
    CHECK(down("0.000001 mm") == 1);
    CHECK(up("0.000001 mm") == 1);
    CHECK(down("128.123456") == 128'123'456);
    CHECK(up("128.123456") == 128'123'456);
    CHECK(down("9999.999999") == 9'999'999'999);
    // A nanometre is 1 / 25 400 000 in = 0.000000039370078740157... in.
    CHECK(down("0.000000039370078740 in") == 0);
    CHECK(up("0.000000039370078740 in") == 1);
    CHECK(down("0.000000039370078741 in") == 1);
    CHECK(up("0.000000039370078741 in") == 2);
}

TEST_CASE("rounding goes to the side asked for, by whatever little is left over")
{
    CHECK(down("1.0000001") == 1'000'000);
    CHECK(up("1.0000001") == 1'000'001);
    CHECK(down("1.000000999999999999") == 1'000'000);
    CHECK(up("1.000000000000000001") == 1'000'001);
    CHECK(down("0.999999999999999999") == 999'999);
    CHECK(up("0.999999999999999999") == 1'000'000);
    CHECK(down("-1.0000001") == -1'000'001);
    CHECK(up("-1.0000001") == -1'000'000);
    CHECK(parse_length("0.1 in", Unit::mm)->mm_up() == 2.54);
}

TEST_CASE("spaces, signs, zeros and a point at either end do no harm")
{
    CHECK(down("  64   mm ") == 64'000'000);
    CHECK(down("64\u00A0mm") == 64'000'000);
    CHECK(down("+64") == 64'000'000);
    CHECK(down("064.500") == 64'500'000);
    CHECK(down(".5") == 500'000);
    CHECK(down("5.") == 5'000'000);
    CHECK(down("0.50000000000000000000000000") == 500'000);
    CHECK(down("000000000000000000005") == 5'000'000);
}

// The marks of rulers in inches are halves down to sixty-fourths; the inch is 25.4 mm (NIST Special Publication 811, 2008,
// appendix B.8).
TEST_CASE("fractions of rulers are taken exactly")
{
    CHECK(down("1/2 in") == 12'700'000);
    CHECK(down("4 3/8 in") == 111'125'000);
    CHECK(up("1/64 in") == 396'875);
    CHECK(down("0 1/16in") == 1'587'500);
    CHECK(down("9/8 in") == 28'575'000);
    CHECK(down("3 1/2") == 3'500'000);
    CHECK(down("3 1/2", Unit::in) == 88'900'000);
    CHECK(parse_weight("1 1/2 oz", Unit::g).value() == 1.5 * 28.349523125);
    const auto parts = take_tolerance_off("2 1/4 in ± 1/32");
    CHECK(parts.size == "2 1/4 in");
    CHECK(parse_length(*parts.off, Unit::mm)->nanometres_up() == 793'750);
}

TEST_CASE("what is no decimal number is refused, and the remedy fits")
{
    CHECK(fault("1/3 in") == "'1/3 in' is a fraction; write it as a decimal number, such as 0.5 for a half");
    CHECK(fault("1 2/3 in") == "'1 2/3 in' is a fraction; write it as a decimal number, such as 0.5 for a half");
    for (const char* text : {"1/0 in", "1/128 in", "-1/2 in", "1 /2 in", "1/2/4 in", "1/2 4 in", "1.5/2 in", "/2 in", "1 1 1/2 in",
                             "123456/2 in", "1/2.5 in"}) {
        INFO(text);
        CHECK_FALSE(parse_length(text, Unit::mm).ok());
    }
    CHECK(fault("12,5") ==
          "'12,5' has a comma in its number; write a point before the decimals, nothing between thousands");
    CHECK(fault("1e3") == "'1e3' has an exponent; write it out as a decimal number");
    CHECK(fault(".nan") == "'.nan' is not a finite number; write a decimal number");
    CHECK(fault("-.Inf") == "'-.Inf' is not a finite number; write a decimal number");
    for (const auto* text : {"", " ", "-", ".", "mm", "--5", "+-5", "five", "$5", ". 5", "-mm"}) {
        CAPTURE(text);
        CHECK(fault(text).find("is not a number") != std::string::npos);
    }
    CHECK(fault("1 000").find("has a space in its number") != std::string::npos);
    CHECK(fault("0.1234567890123456789").find("more than 18 decimals") != std::string::npos);
    CHECK(fault("1234567890").find("too large a number") != std::string::npos);
    CHECK(fault("999999999 m").empty());
}

TEST_CASE("units that are unknown or of another measure are refused, and the remedy names one that will do")
{
    CHECK(fault("5 inch") == "unknown unit 'inch'; write 'in'");
    CHECK(fault("5\"") == "unknown unit '\"'; write 'in'");
    CHECK(fault("5 mmm") == "unknown unit 'mmm'; use mm, cm, m or in; did you mean 'mm'?");
    CHECK(fault("5 g") == "'g' is a unit of weight, but a length is wanted; use mm, cm, m or in");
    CHECK(fault("5 fl oz") == "'fl oz' is a unit of volume, but a length is wanted; use mm, cm, m or in");
    const auto volume = parse_weight("150 ml", Unit::g);
    REQUIRE_FALSE(volume.ok());
    CHECK(to_string(volume.problems().front()) ==
          "'ml' is a unit of volume, but a weight is wanted; give the weight, in g, kg, oz or lb");
    CHECK_FALSE(parse_weight("5 in", Unit::g).ok());
    CHECK_FALSE(parse_unit("kg", Measure::length).ok());
    CHECK(*parse_unit("fl oz", Measure::volume) == Unit::fl_oz);
}

TEST_CASE("a length is shown exactly")
{
    CHECK(to_string(*parse_length("64", Unit::mm)) == "64 mm");
    CHECK(to_string(*parse_length("0.5", Unit::mm)) == "0.5 mm");
    CHECK(to_string(*parse_length("-2.50", Unit::mm)) == "-2.5 mm");
    CHECK(to_string(*parse_length("0", Unit::mm)) == "0 mm");
    CHECK(to_string(*parse_length("0.000000000000000001", Unit::mm)) == "0.000000000000000001 mm");
    CHECK(to_string(*parse_length("1", Unit::in)) == "25.4 mm");
}
