// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "report/carrying.hpp"
#include "report/cautions.hpp"
#include "report/covers.hpp"
#include "report/figures.hpp"
#include "report/layout_text.hpp"
#include "report/measures.hpp"
#include "report/nesting_tree.hpp"
#include "report/notes.hpp"
#include "report/steps_frame.hpp"
#include "report/words.hpp"
#include "tuckwright/report.hpp"

namespace tuckwright {

namespace {

using report::wrapped;

std::string sentence(std::string text)
{
    if (!text.empty() && text.find_last_of(".!?") != text.size() - 1) {
        text += ".";
    }
    if (!text.empty() && text.front() >= 'a' && text.front() <= 'z') {
        text.front() = static_cast<char>(text.front() - 'a' + 'A');
    }
    return text;
}

const char* kind(const Bundle& bundle) { return bundle.rule.shape == BundleShape::cylinder ? "round bundle" : "box"; }

std::string limits_in_words(const BundleRule& rule)
{
    std::string text;
    const auto add = [&](const std::optional<double>& limit, const char* how) {
        if (limit) {
            text += (text.empty() ? " at most " : ", ") + (report::answer_units() == report::AnswerUnits::metric ? fmt::format("{:.10g} mm {}", *limit, how)
                                                                          : report::room_in_words(*limit) + " " + how);
        }
    };
    add(rule.diameter, "across");
    add(rule.length, "long");
    add(rule.width, "wide");
    add(rule.height, "high");
    return text;
}

/// The turns for which the bound holds.
constexpr const char* model_in_words = "standing, lying or on its side";

std::string bound_in_words(const Bundle& bundle)
{
    const auto above = report::gap_of(bundle);
    if (!above) {
        return "How much smaller a bundle could be is not known.";
    }
    constexpr double wide = 0.3; // seldom reached by kits of up to 16 things
    const bool is_whole_search = bundle.status == Status::found;
    const char* const longer = bundle.effort == "thorough" ? "" : ", or --effort thorough,";
    return fmt::format("With everything {}, no {} of this kit can be smaller than {}; this one is {} above that.{}",
                       model_in_words, kind(bundle),
                       report::volume_in_words(bundle.lower_bound_ml, report::Rounding::down),
                       report::share_in_words(*above),
                       *above < wide || !is_whole_search
                           ? ""
                           : fmt::format(" So wide a gap lies in part in the bound, which does not know how shapes get in one "
                                         "another's way, and in part in the packing: another --seed{} may well find a smaller "
                                         "one.", longer));
}

std::string status_in_words(const Bundle& bundle)
{
    switch (bundle.status) {
    case Status::proved_best:
        return fmt::format("Proved to fit, and proved the smallest: with everything {}, no {} of this kit can be smaller.",
                           model_in_words, kind(bundle));
    case Status::stopped:
        return "Proved to fit. The search was stopped early, so a smaller one may well exist. " +
               bound_in_words(bundle);
    default: return "Proved to fit; a smaller one may exist. " + bound_in_words(bundle);
    }
}

std::string volume_line(const Bundle& bundle)
{
    const double volume = volume_ml(outer_envelope(bundle)), outsides = report::outsides_ml(bundle);
    return fmt::format("{}, {} of the {} that the things add up to one by one",
                       report::volume_in_words(volume, report::Rounding::up), report::share_in_words(volume / outsides),
                       report::volume_in_words(outsides, report::Rounding::up));
}

std::string weight_line(const Bundle& bundle)
{
    const auto weights = report::weights_of(bundle);
    std::string text = report::weight_in_words(weights.total);
    if (weights.contents > 0) {
        text += fmt::format(", of it {} contents", report::weight_in_words(weights.contents));
    }
    return text;
}

/// A paragraph, or nothing where there is none.
std::string paragraph(const char* first, const std::string& text) { return text.empty() ? text : wrapped(first, text); }

std::string steps_text(const Bundle& bundle)
{
    if (bundle.steps.empty()) {
        return {};
    }
    std::string text = "\nPutting it together:\n" + paragraph("  ", report::frame_in_words(bundle)) +
                       paragraph("  ", report::cooling_note(bundle));
    const auto covers = report::cover_steps(bundle);
    const std::size_t digits = std::to_string(bundle.steps.size() + covers.size()).size();
    for (std::size_t i = 0; i < bundle.steps.size(); ++i) {
        const auto& step = bundle.steps[i];
        text += wrapped(fmt::format("  {:>{}}. ", i + 1, digits),
                        step.text.empty() ? spoken_name(bundle, step.item) + " goes into its place."
                                          : report::in_answer_units(step.text, bundle));
    }
    for (std::size_t i = 0; i < covers.size(); ++i) {
        text += wrapped(fmt::format("  {:>{}}. ", bundle.steps.size() + i + 1, digits), covers[i]);
    }
    return text + paragraph("", report::unpacking_note(bundle));
}

std::string cautions_text(const Bundle& bundle)
{
    const auto sentences = report::cautions(bundle);
    if (sentences.empty()) {
        return {};
    }
    std::string text = "\nUsual cautions; the maker's instructions and local rules go first:\n";
    for (const auto& caution : sentences) {
        text += wrapped("  - ", caution);
    }
    return text;
}

std::string worst_case_in_words(const Bundle& bundle)
{
    const bool has_tolerances = std::any_of(bundle.items.begin(), bundle.items.end(), [](const PlacedItem& item) {
        return std::any_of(item.solids_off.begin(), item.solids_off.end(), any) ||
               std::any_of(item.cavities.begin(), item.cavities.end(),
                           [](const PlacedCavity& cavity) { return any(cavity.off); });
    });
    return has_tolerances ? "all sizes here are those that leave the least room, each measurement off by its tolerance in "
                            "the bad direction."
                          : "nothing here has a tolerance, so that it is the same as any other; 'tolerance: 0.5 mm' at the "
                            "top of the kit gives one to every measurement.";
}

std::string packed_text(const Bundle& bundle)
{
    std::string text =
        wrapped("", fmt::format("{}: packs into {}", bundle.kit, report::envelope_in_words(outer_envelope(bundle)) +
                                      (bundle.bag ? ", in its bag" : ""))) +
        "\n";
    if (const std::string limits = limits_in_words(bundle.rule); !limits.empty()) {
        text += wrapped("Limits: ", limits.substr(1) + "; kept");
    }
    if (bundle.worst_case) {
        text += wrapped("Packed for the worst case: ", worst_case_in_words(bundle));
    }
    text += wrapped("Volume: ", volume_line(bundle));
    text += wrapped("Weight: ", weight_line(bundle));
    text += wrapped("Status: ", status_in_words(bundle));
    if (!bundle.explanation.empty()) {
        text += wrapped("", sentence(bundle.explanation));
    }
    return text + report::layout_text(bundle);
}

std::string misfit_text(const Bundle& bundle)
{
    std::string text = wrapped(
        "", fmt::format("{}: does not fit into a {}{}", bundle.kit, kind(bundle), limits_in_words(bundle.rule)));
    if (bundle.worst_case) {
        text += wrapped("For the worst case: ", worst_case_in_words(bundle));
    }
    text += "\n" + wrapped("Proof: ", sentence(bundle.explanation));
    return text + wrapped("", fmt::format("No search can help: take out or change what is named here, or the rule about it{}.",
                                         limits_in_words(bundle.rule).empty() ? "" : ", or allow a larger bundle"));
}

std::string not_found_text(const Bundle& bundle)
{
    std::string text =
        wrapped("", fmt::format("{}: no {}{} was found", bundle.kit, kind(bundle), limits_in_words(bundle.rule)));
    if (bundle.worst_case) {
        text += wrapped("For the worst case: ", worst_case_in_words(bundle));
    }
    const bool said = bundle.explanation.find("no proof") != std::string::npos;
    const bool stopped = bundle.explanation.find("stopped") != std::string::npos;
    text +=
        "\n" + wrapped("", (said ? "" : "This is no proof that the kit does not fit. ") + sentence(bundle.explanation));
    if (bundle.lower_bound_ml > 0) {
        text += wrapped("", fmt::format("No {} of this kit can be smaller than {}.", kind(bundle),
                                        report::volume_in_words(bundle.lower_bound_ml, report::Rounding::down)));
    }
    if (stopped) {
        return text + "What to try:\n" + wrapped("  - ", "give it longer: more --seconds, or none") +
               wrapped("  - ", "a search that ends sooner by itself: --effort quick");
    }
    return text + "What to try:\n" + wrapped("  - ", "more effort: --effort thorough") +
           wrapped("  - ", fmt::format("another seed: --seed {}", bundle.seed + 1)) +
           wrapped("  - ", "larger limits in the kit file, or fewer items");
}

} // namespace

std::string report::layout_text(const Bundle& bundle)
{
    return "\nWhat lies in what:\n" + nesting_tree(bundle) + carrying(bundle) + covers_text(bundle) + fits_text(bundle) +
           steps_text(bundle) + paragraph("", toppling_note(bundle)) + paragraph("", unheld_note(bundle)) +
           paragraph("", rattling_note(bundle)) + cautions_text(bundle);
}

std::string text_report(const Bundle& bundle)
{
    if (has_bundle(bundle.status)) {
        return packed_text(bundle);
    }
    return bundle.status == Status::does_not_fit ? misfit_text(bundle) : not_found_text(bundle);
}

} // namespace tuckwright
