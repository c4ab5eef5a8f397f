// SPDX-License-Identifier: GPL-3.0-or-later
#include "tuckwright/compare_picture.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "advice/compare_conclusion.hpp"
#include "advice/plot.hpp"
#include "report/words.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright {

namespace {

using advice::Plot;

constexpr double page_width = 180, margin = 10, dot = 1.3; ///< mm
constexpr Frame plot_field{24, 26, 146, 84};
constexpr Color picture_ink{0.1, 0.1, 0.12}, bound_ink{0.45, 0.46, 0.48};
const TextStyle words_style{.size = 3.2, .color = picture_ink};

bool has_dot(const Compared& kit) { return kit.trial == Trial::packed && has_bundle(kit.bundle.status); }

bool is_metric() { return report::answer_units() == report::AnswerUnits::metric; }

/// In litres or fluid ounces, as the scale tells.
double on_scale(double ml) { return ml / (is_metric() ? 1000 : report::table_units().ml); }
double volume_of(const Compared& kit) { return on_scale(volume_ml(outer_envelope(kit.bundle))); }
double weight_of(const Compared& kit) { return kit.empty_g / report::table_units().grams; }

/// "3  pot: tall, stove: gas", and why there is no dot.
std::string line_of(const Comparison& comparison, std::size_t k)
{
    const Compared& kit = comparison.kits[k];
    std::string text = fmt::format("{}  {}", k + 1, report::printable(name_in_words(comparison, k)));
    if (kit.trial == Trial::ruled_out) {
        text += " (ruled out: another is no larger and no heavier)";
    } else if (kit.trial == Trial::left_out) {
        text += " (not packed)";
    } else if (!has_dot(kit)) {
        text += kit.bundle.status == Status::does_not_fit ? " (does not fit)" : " (not found)";
    }
    return text;
}

/// The list below the field; with no canvas it is only measured. Returns its height.
double list(const Comparison& comparison, Canvas* canvas, double top)
{
    constexpr double gutter = 6, between = 0.8;
    TextStyle style = words_style;
    style.wrap = (page_width - 2 * margin - gutter) / 2;
    const std::size_t half = (comparison.kits.size() + 1) / 2;
    double lowest = top;
    for (std::size_t column = 0; column < 2; ++column) {
        double y = top;
        for (std::size_t k = column * half; k < std::min(comparison.kits.size(), (column + 1) * half); ++k) {
            style.bold = comparison.kits[k].unbeaten;
            const std::string text = line_of(comparison, k);
            const double x = margin + static_cast<double>(column) * (style.wrap + gutter);
            y += (canvas != nullptr ? canvas->write(text, {x, y}, style) : Canvas::extent(text, style)).height + between;
        }
        lowest = std::max(lowest, y);
    }
    return lowest - top;
}

void draw_dots(Canvas& canvas, Plot& plot, const Comparison& comparison)
{
    std::vector<std::size_t> marked;
    for (std::size_t k = 0; k < comparison.kits.size(); ++k) {
        const Compared& kit = comparison.kits[k];
        if (has_dot(kit)) {
            const Spot spot = plot.at(weight_of(kit), volume_of(kit));
            canvas.draw(Path::line(spot, plot.at(weight_of(kit), on_scale(kit.lower_bound_ml))), Pen{bound_ink, 0.2});
            plot.take({spot.x - dot, spot.y - dot, 2 * dot, 2 * dot});
            if (kit.unbeaten) {
                marked.push_back(k);
            }
        }
    }
    std::sort(marked.begin(), marked.end(),
              [&](std::size_t a, std::size_t b) { return comparison.kits[a].empty_g < comparison.kits[b].empty_g; });
    Path steps; // whatever lies right of it and above is beaten
    for (const std::size_t k : marked) {
        const Spot spot = plot.at(weight_of(comparison.kits[k]), volume_of(comparison.kits[k]));
        if (!steps.empty()) {
            steps.line_to({spot.x, steps.segments().back().to.y});
        }
        steps.line_to(spot);
    }
    if (marked.size() > 1) {
        canvas.draw(steps, Pen{picture_ink, 0.35, 1.5, 1});
    }
    for (std::size_t k = 0; k < comparison.kits.size(); ++k) {
        if (has_dot(comparison.kits[k])) {
            const Spot spot = plot.at(weight_of(comparison.kits[k]), volume_of(comparison.kits[k]));
            canvas.draw(Path::circle(spot, dot), Pen{picture_ink, 0.35},
                        Fill{comparison.kits[k].unbeaten ? picture_ink : Color{1, 1, 1}});
        }
    }
    for (std::size_t k = 0; k < comparison.kits.size(); ++k) {
        if (has_dot(comparison.kits[k])) {
            plot.label(std::to_string(k + 1), plot.at(weight_of(comparison.kits[k]), volume_of(comparison.kits[k])),
                       {.size = 3.1, .bold = comparison.kits[k].unbeaten, .color = picture_ink});
        }
    }
}

} // namespace

Canvas compare_picture(const Comparison& comparison)
{
    require(!comparison.kits.empty(), "there is a kit to compare");
    const double below = plot_field.bottom() + 12;
    TextStyle legend = words_style;
    legend.wrap = page_width - 2 * margin;
    const std::string meaning = "Full dots: none of the others is as small and as light, and better in one of the two. The thin line below a dot ends "
                                "at the least volume that its kit can have.";
    const double list_top = below + Canvas::extent(meaning, legend).height + 3;
    Canvas canvas({page_width, list_top + list(comparison, nullptr, list_top) + margin});
    canvas.write("Volume against weight", {margin, margin - 2}, {.size = 5, .bold = true, .color = picture_ink});
    std::vector<double> weights, volumes;
    for (const Compared& kit : comparison.kits) {
        if (has_dot(kit)) {
            weights.push_back(weight_of(kit));
            volumes.push_back(volume_of(kit));
            volumes.push_back(on_scale(kit.lower_bound_ml));
        }
    }
    if (!weights.empty()) {
        Plot plot(canvas, plot_field, advice::scale_for(weights), advice::scale_for(volumes));
        plot.draw_scales(is_metric() ? "weight without contents, g" : "weight without contents, oz",
                         is_metric() ? "volume of the bundle, l" : "volume of the bundle, fl oz");
        draw_dots(canvas, plot, comparison);
    } else {
        canvas.write("None of the kits has a bundle to show.", {plot_field.x, plot_field.y}, words_style);
    }
    canvas.write(meaning, {margin, below}, legend);
    list(comparison, &canvas, list_top);
    return canvas;
}

} // namespace tuckwright
