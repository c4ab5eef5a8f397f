// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "advice/compare_conclusion.hpp"
#include "advice/compare_things.hpp"
#include "report/figures.hpp"
#include "report/words.hpp"
#include "tuckwright/compare.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright {

namespace {

using report::wrapped;

constexpr const char* row_format = "{:>3}{:<2}{:>9}{:>10}{:>7}{:>9}{:>9}{:>7}  {:<26}  {}";
constexpr const char* name_indent = "     ";

/// A figure that is never understated (or never overstated) where it is rounded: whole numbers from a hundred on.
std::string figure(double value, bool up)
{
    constexpr double hair = 1e-9, hundred = 100, tenth = 10;
    const double per_unit = value < hundred ? tenth : 1;
    const double units = up ? std::ceil(value * per_unit - hair) : std::floor(value * per_unit + hair);
    return fmt::format("{:.{}f}", units / per_unit, per_unit > 1 ? 1 : 0);
}

std::string weight_figure(double grams)
{
    return fmt::format("{:.10g}", std::round(grams / report::table_units().grams * 10) / 10);
}

std::string volume_figure(double ml, bool up) { return figure(ml / report::table_units().ml, up); }

std::string bare(double mm)
{
    const std::string text = report::length_in_words(mm);
    return text.substr(0, text.find(' '));
}

std::string size_figure(const Shape& shape)
{
    if (const auto* cylinder = std::get_if<Cylinder>(&shape)) {
        return fmt::format("{} across, {} high", bare(cylinder->diameter), bare(cylinder->height));
    }
    const auto& box = std::get<Box>(shape);
    return fmt::format("{} x {} x {}", bare(box.length), bare(box.width), bare(box.height));
}

const char* status_in_words(Status status)
{
    switch (status) {
    case Status::proved_best: return "proved best";
    case Status::found: return "found";
    case Status::stopped: return "stopped";
    case Status::does_not_fit: return "does not fit";
    case Status::not_found: return "not found";
    }
    require(false, "a status is one of the five");
    return "";
}

std::string sentence(std::string text)
{
    if (text.front() >= 'a' && text.front() <= 'z') {
        text.front() = static_cast<char>(text.front() - 'a' + 'A');
    }
    return text + (text.back() == '.' ? "" : ".");
}

std::string figures_row(const Compared& kit, std::size_t number)
{
    const bool has = has_bundle(kit.bundle.status);
    const auto above = report::gap_of(kit.bundle);
    const Shape outer = outer_envelope(kit.bundle);
    const bool fits = kit.bundle.status != Status::does_not_fit;
    return fmt::format(row_format, number, kit.unbeaten ? " *" : "", has ? volume_figure(volume_ml(outer), true) : "-",
                       fits ? volume_figure(kit.lower_bound_ml, false) : "-",
                       above ? fmt::format("{:.1f}", std::max(0.0, std::ceil(*above * 1000 - 1e-3)) / 10) : "-",
                       weight_figure(kit.empty_g), weight_figure(kit.empty_g + kit.contents_g),
                       has ? std::to_string(kit.bundle.steps.size()) : "-", has ? size_figure(outer) : "-",
                       status_in_words(kit.bundle.status)) +
           "\n";
}

/// Each kit that was packed, by its number.
std::string packed_table(const Comparison& comparison)
{
    const auto units = report::table_units();
    std::string text =
        fmt::format(row_format, "", "", "volume", "at least", "gap", "weight", "filled", "steps", "size", "status") +
        "\n" + fmt::format(row_format, "", "", units.volume, units.volume, "%", units.weight, units.weight, "", units.length, "");
    text = text.substr(0, text.find_last_not_of(' ') + 1) + "\n";
    for (std::size_t k = 0; k < comparison.kits.size() && comparison.kits[k].trial == Trial::packed; ++k) {
        const Compared& kit = comparison.kits[k];
        text += figures_row(kit, k + 1) + wrapped(name_indent, name_in_words(comparison, k));
        if (!kit.bundle.explanation.empty()) {
            text += wrapped(name_indent, sentence(kit.bundle.explanation));
        }
    }
    return text;
}

std::string legend(const Comparison& comparison)
{
    const auto is_marked = [](const Compared& kit) { return kit.unbeaten; };
    std::string text;
    if (std::any_of(comparison.kits.begin(), comparison.kits.end(), is_marked)) {
        text += wrapped(" * ", "none of the others is as small and as light, and better in one of the two.");
    }
    return text + wrapped(" ",
                          "Weight is that of all things without contents, filled that with them. No bundle of a kit "
                          "can be smaller than \"at least\", with everything standing, lying or on its side; the "
                          "gap is how far the volume lies above that. Size and weight are not all: cautions "
                          "come with the steps of packing.");
}

/// Those that were not packed, and why.
std::string rest(const Comparison& comparison)
{
    std::size_t ruled_out = 0, left_out = 0;
    double least_ml = 0, least_g = 0;
    for (const Compared& kit : comparison.kits) {
        ruled_out += kit.trial == Trial::ruled_out ? 1 : 0;
        if (kit.trial == Trial::left_out) {
            least_ml = left_out == 0 ? kit.lower_bound_ml : std::min(least_ml, kit.lower_bound_ml);
            least_g = left_out == 0 ? kit.empty_g : std::min(least_g, kit.empty_g);
            ++left_out;
        }
    }
    std::string text;
    if (ruled_out > 0) {
        text +=
            wrapped("Ruled out: ", fmt::format("{} more, without packing {}: for each, one in the table is no larger "
                                               "than it can be at best, and no heavier.",
                                               ruled_out, ruled_out == 1 ? "it" : "them"));
    }
    if (left_out > 0) {
        text += wrapped("Not packed: ",
                        fmt::format("{} more, {}. Their bounds begin at {}, their weights at {}.", left_out,
                                    comparison.stopped
                                        ? "since you stopped before their turn"
                                        : fmt::format("since {} were to be packed; --most packs more", comparison.most),
                                    report::volume_in_words(least_ml, report::Rounding::down),
                                    report::weight_in_words(least_g)));
    }
    return text.empty() ? text : "\n" + text;
}

/// What only some of those in the table have.
std::string differences(const Comparison& comparison)
{
    std::vector<const Kit*> kits;
    for (std::size_t k = 0; k < comparison.kits.size() && comparison.kits[k].trial == Trial::packed; ++k) {
        kits.push_back(&comparison.kits[k].contender.chosen.kit);
    }
    std::string text;
    std::size_t common = 0;
    for (const SharedThing& asked : wishes_of(kits)) {
        if (asked.kits.size() < kits.size()) {
            text += wrapped("  - ", fmt::format("asked for is {}: in {}", asked.words, numbers_in_words(asked.kits)));
        }
    }
    for (const SharedThing& thing : things_of(kits)) {
        if (thing.kits.size() < kits.size()) {
            text += wrapped("  - ", fmt::format("{}: in {}", thing.words, numbers_in_words(thing.kits)));
        } else {
            ++common;
        }
    }
    if (text.empty()) {
        return kits.size() < 2 ? "" : "\nAll have the same things, and the same is asked for.\n";
    }
    return "\nWhat is different:\n" + text +
           (common == 0 ? "Nothing is the same in all.\n"
                        : fmt::format("The rest is the same in all: {} thing{}.\n", common, common == 1 ? "" : "s"));
}

} // namespace

std::string text_report(const Comparison& comparison)
{
    require(!comparison.kits.empty(), "a comparison has at least one kit");
    const std::size_t number = comparison.kits.size();
    std::string text = wrapped("", fmt::format("{} kit{} compared: {} effort, seed {}{}", number,
                                               number == 1 ? "" : "s", comparison.effort, comparison.seed,
                                               comparison.stopped ? "; stopped before the end" : ""));
    return text + "\n" + packed_table(comparison) + legend(comparison) + rest(comparison) + differences(comparison) +
           "\n" + conclusion(comparison);
}

} // namespace tuckwright
