// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/trip_figures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <span>

#include "kit/words.hpp"

namespace tuckwright::reading {

namespace {

/// A word behind a number, and what it makes of it: (number + offset) * factor.
struct FigureUnit {
    std::string_view word;
    double factor = 1, offset = 0;
};

// Source: the degree Fahrenheit and the foot as in NIST Special Publication 811 (2008), appendix B.8.
constexpr std::array<FigureUnit, 6> temperatures{
    {{"C"}, {"°C"}, {"F", 5.0 / 9, -32}, {"°F", 5.0 / 9, -32}, {""}, {"degC"}}};
constexpr std::array<FigureUnit, 4> altitudes{{{"m"}, {"km", 1000}, {"ft", 0.3048}, {""}}};
constexpr std::array<FigureUnit, 4> shares{{{"%", 0.01}, {"% vol", 0.01}, {"%vol", 0.01}, {"% by volume", 0.01}}};
constexpr std::array<FigureUnit, 4> densities{{{"kg/l"}, {"g/ml"}, {"g/cm3"}, {"g/l", 0.001}}};
constexpr std::array<FigureUnit, 1> none{{{""}}};

/// What may be given: units, the bounds in the unit of the program, and in words.
struct Wanted {
    std::span<const FigureUnit> units;
    double low = 0, high = 0;
    std::string example; ///< "write it such as '8 C'"
    std::string range;   ///< "from 0 to 69 °C"
};

std::optional<double> read_figure(Reading& reading, const Node& node, const std::string& subject, const Wanted& wanted)
{
    const auto text = read_text(reading, node, subject);
    if (!text) {
        return std::nullopt;
    }
    const Result<Figure> figure = parse_figure(*text);
    if (!figure) {
        const Problem& problem = figure.problems().front();
        reading.problems.add(node.place, subject + ": " + problem.what, problem.remedy);
        return std::nullopt;
    }
    const auto unit = std::find_if(wanted.units.begin(), wanted.units.end(),
                                   [&](const FigureUnit& one) { return one.word == figure->unit; });
    if (unit == wanted.units.end()) {
        reading.problems.add(node.place,
                             figure->unit.empty() ? subject + " is " + in_quotes(*text) + ", without a unit"
                                                  : subject + ": unknown unit " + in_quotes(figure->unit),
                             "write it such as " + wanted.example);
        return std::nullopt;
    }
    const double value = (figure->number + unit->offset) * unit->factor;
    constexpr double hair = 1e-9; // 0.01 times a number is not quite the share that the bound is
    if (value < wanted.low - hair || value > wanted.high + hair) {
        reading.problems.add(node.place, subject + " is " + in_quotes(*text) + ", but must be " + wanted.range,
                             "check the number and its unit");
        return std::nullopt;
    }
    return std::clamp(value, wanted.low, wanted.high);
}

} // namespace

std::optional<double> read_temperature(Reading& reading, const Node& node, const std::string& subject, double low,
                                       double high)
{
    return read_figure(
        reading, node, subject,
        {temperatures, low, high, "'8 C' or '46 F'",
         fmt::format("from {:g} to {:g} °C ({:g} to {:g} °F)", low, high, 1.8 * low + 32, 1.8 * high + 32)});
}

std::optional<double> read_altitude(Reading& reading, const Node& node, const std::string& subject)
{
    constexpr double lowest = -450, highest = 8500; // dry land, and the pressures that the formula of boiling is for
    return read_figure(reading, node, subject,
                       {altitudes, lowest, highest, "'620 m' or '2000 ft'", "from -450 to 8500 m above the sea"});
}

std::optional<double> read_share(Reading& reading, const Node& node, const std::string& subject, double low,
                                 double high)
{
    return read_figure(reading, node, subject,
                       {shares, low, high, "'50 %'", fmt::format("from {:g} to {:g} %", 100 * low, 100 * high)});
}

std::optional<double> read_density(Reading& reading, const Node& node, const std::string& subject, double low,
                                   double high)
{
    return read_figure(reading, node, subject,
                       {densities, low, high, "'0.4 kg/l': the kilograms that fill a litre, loosely",
                        fmt::format("from {:g} to {:g} kg/l", low, high)});
}

std::optional<double> read_number(Reading& reading, const Node& node, const std::string& subject, double high)
{
    constexpr double least = 0.01;
    return read_figure(reading, node, subject,
                       {none, least, high, "'2', without a unit", fmt::format("from {:g} to {:g}", least, high)});
}

} // namespace tuckwright::reading
