// SPDX-License-Identifier: GPL-3.0-or-later
// The way out and the way back side by side, for a person at the table.
#include <algorithm>
#include <cmath>
#include <fmt/format.h>

#include "report/carrying.hpp"
#include "report/words.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/savings.hpp"
#include "tuckwright/there_and_back.hpp"

namespace tuckwright {

namespace {

using report::wrapped;

/// How people call things of either way.
class Names {
public:
    explicit Names(const ThereAndBack& answer) : answer_(answer) {}

    std::string operator()(const std::string& id) const
    {
        for (const Bundle* bundle : {&answer_.back, &answer_.out}) {
            if (std::any_of(bundle->items.begin(), bundle->items.end(),
                            [&](const PlacedItem& item) { return item.id == id; })) {
                return common_name(*bundle, id);
            }
        }
        return id;
    }

    /// "Cup (2 of them)".
    std::string counted(const std::string& id, int copies) const
    {
        return (*this)(id) + (copies > 1 ? fmt::format(" ({} of them)", copies) : "");
    }

private:
    const ThereAndBack& answer_;
};

std::string brief(const Bundle& bundle)
{
    if (!has_bundle(bundle.status)) {
        return bundle.status == Status::does_not_fit ? "does not fit, which is proved: " + bundle.explanation
                                                     : "nothing was found: " + bundle.explanation;
    }
    return fmt::format("{}; {}, {}; {}", report::envelope_in_words(outer_envelope(bundle)),
                       report::volume_in_words(packed_volume_ml(bundle), report::Rounding::up),
                       report::weight_in_words(total_weight_g(bundle)),
                       bundle.status == Status::proved_best ? "proved to fit, and proved the smallest"
                                                            : "proved to fit");
}

/// "12 ml (3 %) smaller and 120 g lighter"; what nobody could measure counts as nothing.
std::string beside(const Bundle& out, const Bundle& back)
{
    const double before = packed_volume_ml(out), more = packed_volume_ml(back) - before;
    const double heavier = total_weight_g(back) - total_weight_g(out);
    const std::string size =
        std::abs(more) < 1e-4 * before
            ? "just as large"
            : fmt::format("{} ({}) {}", report::volume_in_words(std::abs(more), report::Rounding::up),
                          report::share_in_words(std::abs(more) / before), more > 0 ? "larger" : "smaller");
    const std::string weight =
        std::abs(heavier) < 0.5
            ? "just as heavy"
            : fmt::format("{} {}", report::weight_in_words(std::abs(heavier)), heavier > 0 ? "heavier" : "lighter");
    return fmt::format("On the way back it is {} and {}.", size, weight);
}

/// These rules in words, of a bundle with their things.
std::string rules_text(const Bundle& bundle, const char* title, const std::vector<CarryRule>& rules)
{
    Bundle shown = bundle; // with nothing but these to tell
    shown.rules = rules;
    shown.waived.clear();
    for (PlacedItem& item : shown.items) {
        item.nothing_on_top = false;
        item.bears_g.reset();
        item.reach = Wanted::any;
    }
    return rules.empty() ? "" : title + report::carrying(shown);
}

std::string changes_text(const ThereAndBack& answer, const Names& name)
{
    std::string text = "\nWhat is different on the way back:\n";
    if (answer.changes.empty()) {
        text += "  - nothing about the things themselves\n";
    }
    for (std::size_t k = 0; k < answer.changes.size(); ++k) {
        const StateChange& change = answer.changes[k];
        const bool tells_copies = change.difference == Difference::gone && change.words != "does not come back";
        std::string words = name.counted(change.id, tells_copies ? 1 : change.copies) + ": " + change.words;
        for (; k + 1 < answer.changes.size() && answer.changes[k + 1].id == change.id; ++k) {
            words += "; " + answer.changes[k + 1].words;
        }
        text += wrapped("  - ", words);
    }
    return text + rules_text(answer.back, "Rules that did not hold on the way out:", answer.new_rules) +
           rules_text(answer.back, "Rules that held on the way out only:", answer.old_rules);
}

/// How much of the way out was kept, and what that costs or would cost.
std::string keeping_text(const ThereAndBack& answer)
{
    const auto litres = [](double ml) { return report::volume_in_words(ml, report::Rounding::up); };
    const double volume = packed_volume_ml(answer.back);
    const auto costs = [&] {
        const bool is_more = answer.searched_ml && *answer.searched_ml < volume * (1 - 1e-4);
        return is_more
                   ? fmt::format(" A search without regard to the way out found {}, {} less: 'tuckwright pack' "
                                 "with --way-back packs that.",
                                 litres(*answer.searched_ml), report::share_in_words(1 - *answer.searched_ml / volume))
                   : std::string(" A search without regard to the way out found none smaller.");
    };
    switch (answer.keeping) {
    case Keeping::places:
        return "The arrangement of the way out is kept, as far as the rules let it, and pushed together." + costs();
    case Keeping::vessels:
        return "Things stay in what they were in, as far as the rules let them, but may lie otherwise in there." +
               costs();
    case Keeping::nothing: break;
    }
    const auto kept = answer.places_ml && answer.vessels_ml
                          ? std::optional(std::min(*answer.places_ml, *answer.vessels_ml))
                      : answer.places_ml ? answer.places_ml
                                         : answer.vessels_ml;
    if (kept) {
        return fmt::format(
            "It is arranged anew: with things staying in what they were in, as far as the rules let them, "
            "it came to {}, {} more, and up to {} would have been put up with.",
            litres(*kept), report::share_in_words(*kept / volume - 1), report::share_in_words(worth_staying));
    }
    return answer.vessels_refuted
               ? "It is arranged anew: that not all can stay in what it was in is proved."
               : "It is arranged anew: with things staying in what they were in nothing was found, which is no proof.";
}

/// "in Pot, standing", "outside all vessels, flat", "shut on Pot".
std::string place_in_words(const Whereabouts& where, const Names& name)
{
    if (where.form == "shut") {
        return "shut on " + name(where.in);
    }
    return (where.in.empty() ? std::string("outside all vessels") : "in " + name(where.in)) +
           (where.stowed.empty() ? "" : ", " + where.stowed) + (where.form.empty() ? "" : ", " + where.form);
}

/// Whether anything that went out comes back.
bool something_returns(const ThereAndBack& answer)
{
    return std::any_of(answer.back.items.begin(), answer.back.items.end(), [&](const PlacedItem& item) {
        return std::any_of(answer.out.items.begin(), answer.out.items.end(),
                           [&](const PlacedItem& other) { return other.id == item.id; });
    });
}

std::string elsewhere_text(const ThereAndBack& answer, const Names& name)
{
    if (answer.elsewhere.empty() && answer.reordered.empty()) {
        return "\n" + wrapped("", "Everything goes back where it was, in the same order.");
    }
    std::string told, untold;
    bool by_rule = false;
    for (const Elsewhere& one : answer.elsewhere) {
        by_rule |= one.cause == Cause::rule;
        const std::string line = report::in_answer_units(
            fmt::format("{}: now {}; before {}.", name.counted(one.id, one.copies), place_in_words(one.now, name),
                        place_in_words(one.before, name)),
            answer.back);
        if (one.cause == Cause::search) {
            untold += wrapped("  - ", line);
        } else {
            told += wrapped("  - ", line + report::in_answer_units(" Why: " + one.words + ".", answer.back));
        }
    }
    for (const Reordered& one : answer.reordered) {
        const std::string where = one.in.empty() ? "to its place" : "into " + name(one.in);
        untold += wrapped("  - ", fmt::format("{}: goes {} in another order, {}.", name(one.id), where,
                                              one.after.empty() ? "now first" : "now after " + name(one.after)));
    }
    if (by_rule) {
        told += wrapped(
            "", "Where a rule is named, that is proved: with the thing back in its old place, and all else as it "
                "lies now, the rule is broken.");
    }
    const std::string also = told.empty() ? "What goes elsewhere than before" : "And what goes elsewhere";
    return (told.empty() ? "" : "\nWhat goes elsewhere than before, and why:\n" + told) +
           (untold.empty() ? ""
                           : "\n" +
                                 wrapped("", also + " though no rule asks for it; so it lies in the bundle that was "
                                                    "found:") +
                                 untold) +
           "All else goes back into what it was in, turned as it was.\n";
}

} // namespace

std::string there_and_back_text(const ThereAndBack& answer)
{
    const Names name(answer);
    const bool both = has_bundle(answer.out.status) && has_bundle(answer.back.status);
    std::string text = wrapped("", answer.out.kit + ": out and back") + "\n";
    text += wrapped("Out:  ", brief(answer.out)) + wrapped("Back: ", brief(answer.back));
    if (both) {
        text += wrapped("", beside(answer.out, answer.back));
        text += answer.bettered
                    ? wrapped("", "For the way out this is smaller than what 'tuckwright pack' finds: the search "
                                  "for the way back led to it. Both are told in full below.")
                    : "";
        text += wrapped("", something_returns(answer) ? keeping_text(answer) : "Nothing that goes out comes back.");
    }
    text += changes_text(answer, name);
    if (both && something_returns(answer)) {
        text += elsewhere_text(answer, name);
    }
    if (!has_bundle(answer.out.status) || answer.bettered) {
        text += "\n" + text_report(answer.out);
    }
    return text + "\n" + text_report(answer.back);
}

} // namespace tuckwright
