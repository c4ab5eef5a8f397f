// SPDX-License-Identifier: GPL-3.0-or-later
// Whether the colours do without colour: for eyes that lack red or green cones, and in black and white.
#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <string>
#include <vector>

#include "drawing/palette.hpp"

using namespace tuckwright;
using namespace tuckwright::drawing;

namespace {

/// sRGB to linear light. Source: IEC 61966-2-1:1999, 5.2.
double linear(double part) { return part <= 0.04045 ? part / 12.92 : std::pow((part + 0.055) / 1.055, 2.4); }

using Light = std::array<double, 3>; ///< linear red, green, blue

Light light_of(const Color& c) { return {linear(c.red), linear(c.green), linear(c.blue)}; }

/// Relative luminance. Source: the same, from the primaries of ITU-R BT.709.
double luminance(const Light& c) { return 0.2126 * c[0] + 0.7152 * c[1] + 0.0722 * c[2]; }

/// Lightness, 0 to 100. Source: CIE 15:2004, Colorimetry, L* of CIELAB.
double lightness(double y) { return y > 216.0 / 24389 ? 116 * std::cbrt(y) - 16 : y * 24389.0 / 27; }

/// Contrast, 1 to 21. Source: W3C, Web Content Accessibility Guidelines 2.1 (2018), "contrast ratio"; text wants 4.5.
double contrast(double a, double b) { return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05); }

/// How eyes without red cones (or without green ones) see a colour. Source: Viénot, Brettel, Mollon 1999, "Digital video
/// colourmaps for checking the legibility of displays by dichromats", Color Research and Application 24(4); the numbers
/// from memory.
Light seen_by_dichromats(const Light& c, bool lacks_red)
{
    const double l = 17.8824 * c[0] + 43.5161 * c[1] + 4.11935 * c[2];
    const double m = 3.45565 * c[0] + 27.1554 * c[1] + 3.86714 * c[2];
    const double s = 0.0299566 * c[0] + 0.184309 * c[1] + 1.46709 * c[2];
    const double l2 = lacks_red ? 2.02344 * m - 2.52581 * s : l, m2 = lacks_red ? m : 0.494207 * l + 1.24827 * s;
    return {0.0809444479 * l2 - 0.130504409 * m2 + 0.116721066 * s,
            -0.0102485335 * l2 + 0.0540193266 * m2 - 0.113614708 * s,
            -0.000365296938 * l2 - 0.00412161469 * m2 + 0.693511405 * s};
}

/// The three ways to see: as it is, without red cones, without green ones.
std::vector<double> luminances(const Color& c)
{
    const Light light = light_of(c);
    return {luminance(light), luminance(seen_by_dichromats(light, true)), luminance(seen_by_dichromats(light, false))};
}

/// The least value of a comparison over the three ways to see.
double least(const Color& a, const Color& b, const std::function<double(double, double)>& compare)
{
    const auto one = luminances(a), other = luminances(b);
    double worst = 1e9;
    for (std::size_t k = 0; k < one.size(); ++k) {
        worst = std::min(worst, compare(one[k], other[k]));
    }
    return worst;
}

double apart(double a, double b) { return std::abs(lightness(a) - lightness(b)); }

/// CIELAB for D65. Source: CIE 15:2004; the matrix of IEC 61966-2-1 from memory.
std::array<double, 3> lab(const Light& c)
{
    const auto part = [](double t) { return t > 216.0 / 24389 ? std::cbrt(t) : (24389.0 / 27 * t + 16) / 116; };
    const double x = part((0.4124 * c[0] + 0.3576 * c[1] + 0.1805 * c[2]) / 0.9505), y = part(luminance(c)),
                 z = part((0.0193 * c[0] + 0.1192 * c[1] + 0.9505 * c[2]) / 1.089);
    return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

/// How far two colours are apart for whoever sees them worst. Source: CIE 1976, Delta E*ab.
double least_difference(const Color& a, const Color& b)
{
    double worst = 1e9;
    for (int eyes = 0; eyes < 3; ++eyes) {
        const auto seen = [eyes](const Color& c) {
            Light light = light_of(c);
            light = eyes == 0 ? light : seen_by_dichromats(light, eyes == 1);
            for (double& part : light) {
                part = std::max(0.0, part);
            }
            return lab(light);
        };
        const auto one = seen(a), other = seen(b);
        worst = std::min(worst, std::hypot(one[0] - other[0], one[1] - other[1], one[2] - other[2]));
    }
    return worst;
}

} // namespace

TEST_CASE(
    "on a screen, light or dark: words, lines and marks are readable, and neighbours in the list differ for everybody")
{
    CHECK(lab(light_of({1, 1, 1}))[0] == Approx(100));
    // A red and a green that differ for most people, and hardly for those without green cones.
    const Color red = palette::rgb(0xc06030), green = palette::rgb(0x7d8030);
    CHECK(least_difference(red, green) < 12);
    for (const palette::Screen& screen : {palette::light, palette::dark}) {
        const auto clear = [&](const Color& c) {
            return contrast(luminance(light_of(c)), luminance(light_of(screen.paper)));
        };
        CHECK(clear(screen.ink) >= 7);
        CHECK(clear(screen.mark) >= 4.5);
        CHECK(clear(screen.room) >= 3);
        CHECK(clear(screen.faint) >= 3);
        CHECK(clear(screen.band) >= 3);
        for (std::size_t k = 0; k < screen.hues.size(); ++k) {
            INFO("hue " << k << " and the next");
            CHECK(least_difference(screen.hues[k], screen.hues[(k + 1) % screen.hues.size()]) >= 12);
        }
    }
}

TEST_CASE("the simulation leaves grey as it is, and takes red from green")
{
    for (const double grey : {0.0, 0.2, 0.5, 1.0}) {
        for (const bool lacks_red : {false, true}) {
            const Light seen = seen_by_dichromats({grey, grey, grey}, lacks_red);
            for (const double part : seen) {
                CHECK(part == Approx(grey).margin(0.01));
            }
        }
    }
    const Light red = seen_by_dichromats({0.5, 0, 0}, false), green = seen_by_dichromats({0, 0.2, 0}, false);
    CHECK(std::abs(red[0] - red[1]) < 0.01); // no longer redder than green
    CHECK(std::abs(green[0] - green[1]) < 0.01);
    CHECK(contrast(1, 0) == Approx(21));
    CHECK(lightness(0.184187) == Approx(50).margin(0.01)); // CIE: half lightness is 18.4 % of white
}

TEST_CASE("letters and lines can be read on every fill, whatever the eyes")
{
    std::vector<Color> fills{palette::paper, palette::inside, palette::contents, palette::placed_now, palette::band};
    fills.insert(fills.end(), palette::placed.begin(), palette::placed.end());
    for (const Color& fill : fills) {
        CHECK(least(palette::ink, fill, contrast) > 7);
    }
    CHECK(least(palette::faint, palette::paper, contrast) > 4.5);
    CHECK(least(palette::ink, {0.45, 0.46, 0.48}, contrast) < 4.5); // the test can tell
}

TEST_CASE("what lies side by side differs in lightness, and walls from all fills")
{
    for (std::size_t k = 0; k < palette::placed.size(); ++k) {
        CHECK(least(palette::placed[k], palette::placed[(k + 1) % palette::placed.size()], apart) > 4);
        CHECK(least(palette::placed[k], palette::wall, contrast) > 3); // W3C: graphical objects want 3
        CHECK(least(palette::placed[k], palette::inside, apart) > 4);
    }
    CHECK(least(palette::placed_now, palette::paper, apart) > 15);
    CHECK(least(palette::placed_now, palette::wall, contrast) > 3);
}
