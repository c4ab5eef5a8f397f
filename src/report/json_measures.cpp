// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/json_measures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "tuckwright/fits.hpp"
#include "tuckwright/play.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright::report {

namespace {

using nlohmann::ordered_json;

constexpr std::size_t most_fits = 1'000'000;
constexpr std::size_t most_in_a_row = 2000;
constexpr std::array<const char*, 5> ways{"all round", "across", "along", "pressed", "opening"};
constexpr std::array<const char*, 3> axes{"x", "y", "z"};
constexpr double same = 1e-6; ///< mm: figures are rounded down to the grid, which may go either way

std::vector<const char*> size_names(const Shape& shape)
{
    return std::holds_alternative<Cylinder>(shape) ? std::vector<const char*>{"diameter", "height"}
                                                   : std::vector<const char*>{"length", "width", "height"};
}

FitWay read_way(const Node& parent)
{
    const auto node = parent.field("way");
    const std::string word = node ? node->text() : ways.front();
    const auto found = std::find(ways.begin(), ways.end(), word);
    if (found == ways.end()) {
        node->fault("must be all round, across, along, pressed or opening");
        return FitWay::all_round;
    }
    return static_cast<FitWay>(found - ways.begin());
}

std::size_t read_item_index(const Node& node, const Bundle& bundle)
{
    const std::size_t index = node.index();
    if (index >= bundle.items.size()) {
        node.fault("is no item's number");
        return 0;
    }
    return index;
}

Fit read_fit(const Node& node, const Bundle& bundle)
{
    Fit fit;
    if (const auto vessel = node.field("vessel")) {
        fit.in.item = read_item_index(*vessel, bundle);
    }
    if (const auto cavity = node.field("cavity")) {
        fit.in.cavity = cavity->index();
    }
    for (const auto& item : node.list("items", 1, most_in_a_row)) {
        fit.items.push_back(read_item_index(item, bundle));
    }
    fit.way = read_way(node);
    fit.room = node.length("room_mm");
    fit.worst = node.length("worst_mm");
    return fit;
}

Play read_play(const Node& node)
{
    Play play;
    for (std::size_t axis = 0; axis < 3 && node.object(); ++axis) {
        const auto both = node.list(axes[axis], 2, 2);
        for (std::size_t side = 0; side < both.size(); ++side) {
            play.free[axis][side] = both[side].length();
        }
    }
    return play;
}

bool close(double a, double b) { return std::abs(a - b) <= same * 1.5; }

Problem told(const std::string& name, const std::string& what) { return {name, 0, 0, what, ""}; }

void compare_fits(const Bundle& bundle, const std::string& name, std::vector<Problem>& wrong)
{
    const std::vector<Fit> expected = fits(bundle);
    if (expected.size() != bundle.fits.size()) {
        wrong.push_back(told(name, fmt::format("fits: {} are there, but {} follow from the rest", bundle.fits.size(),
                                               expected.size())));
        return;
    }
    for (std::size_t i = 0; i < expected.size(); ++i) {
        const Fit &said = bundle.fits[i], &is = expected[i];
        if (said.in != is.in || said.items != is.items || said.way != is.way) {
            wrong.push_back(told(name, fmt::format("fits[{}]: is not about the items that follow from the rest", i)));
        }
        const auto compare = [&](const char* key, double figure, double right) {
            if (!close(figure, right)) {
                wrong.push_back(told(
                    name, fmt::format("fits[{}].{}: is {}, but {} follows from the rest", i, key, figure, right)));
            }
        };
        compare("room_mm", said.room, is.room);
        compare("worst_mm", said.worst, is.worst);
    }
}

void compare_plays(const Bundle& bundle, const std::string& name, std::vector<Problem>& wrong)
{
    const std::vector<Play> expected = plays(bundle);
    if (expected.size() != bundle.plays.size()) {
        wrong.push_back(told(name, fmt::format("plays: {} are there, but {} follow from the rest", bundle.plays.size(),
                                               expected.size())));
        return;
    }
    for (std::size_t i = 0; i < expected.size(); ++i) {
        for (std::size_t axis = 0; axis < 3; ++axis) {
            for (std::size_t side = 0; side < 2; ++side) {
                const double figure = bundle.plays[i].free[axis][side], right = expected[i].free[axis][side];
                if (!close(figure, right)) {
                    wrong.push_back(told(name, fmt::format("plays[{}].{}[{}]: is {}, but {} follows from the rest", i,
                                                           axes[axis], side, figure, right)));
                }
            }
        }
    }
}

} // namespace

ordered_json tolerance_part(const Shape& shape, const Spread& off)
{
    ordered_json part;
    const auto names = size_names(shape);
    for (std::size_t i = 0; i < names.size(); ++i) {
        part[names[i]] = snap(off.mm[i]);
    }
    return part;
}

ordered_json fits_part(const Bundle& bundle)
{
    ordered_json parts = ordered_json::array();
    for (const Fit& fit : bundle.fits) {
        parts.push_back({{"vessel", fit.in.item},
                         {"cavity", fit.in.cavity},
                         {"items", fit.items},
                         {"way", ways[static_cast<std::size_t>(fit.way)]},
                         {"room_mm", snap(fit.room)},
                         {"worst_mm", snap(fit.worst)}});
    }
    return parts;
}

ordered_json plays_part(const Bundle& bundle)
{
    ordered_json parts = ordered_json::array();
    for (const Play& play : bundle.plays) {
        ordered_json part;
        for (std::size_t axis = 0; axis < 3; ++axis) {
            part[axes[axis]] = {snap(play.free[axis][0]), snap(play.free[axis][1])};
        }
        parts.push_back(std::move(part));
    }
    return parts;
}

Spread read_tolerance(const Node& parent, const Shape& shape)
{
    Spread off;
    const auto node = parent.field("tolerance");
    if (!node || !node->object()) {
        return off;
    }
    const auto names = size_names(shape);
    for (std::size_t i = 0; i < names.size(); ++i) {
        off.mm[i] = node->length(names[i]);
        if (off.mm[i] < 0) {
            node->field(names[i])->fault("must not be below zero");
        }
    }
    return off;
}

void read_measures(const Node& root, Bundle& bundle)
{
    for (const auto& node : root.list("fits", 0, most_fits)) {
        bundle.fits.push_back(node.object() ? read_fit(node, bundle) : Fit{});
    }
    for (const auto& node : root.list("plays", 0, bundle.items.size())) {
        bundle.plays.push_back(read_play(node));
    }
}

} // namespace tuckwright::report

namespace tuckwright {

std::vector<Problem> wrong_figures(const Bundle& bundle, const std::string& name)
{
    std::vector<Problem> wrong;
    report::compare_fits(bundle, name, wrong);
    report::compare_plays(bundle, name, wrong);
    return wrong;
}

} // namespace tuckwright
