// SPDX-License-Identifier: GPL-3.0-or-later
// What a filling tells people and programs.
#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "report/json_layout.hpp"
#include "report/layout_text.hpp"
#include "report/words.hpp"
#include "tuckwright/fill.hpp"
#include "tuckwright/report.hpp"

namespace tuckwright {

namespace {

using report::wrapped;

std::string called(const Bundle& bundle, const std::string& id, const std::string& otherwise)
{
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        if (bundle.items[item].id == id) {
            return spoken_name(bundle, item);
        }
    }
    return otherwise;
}

std::string shut_in_words(const Filling& filling)
{
    if (!filling.lid.empty()) {
        return " with " + called(filling.bundle, filling.lid, filling.lid) + " shut on it";
    }
    return filling.own_lid ? " with its lid shut" : " (it has no lid here: nothing stands out above its rim)";
}

std::string choice_in_words(const Filling& filling)
{
    switch (filling.choice) {
    case Choice::proved:
        return filling.left.empty() ? "Everything goes in: proved."
                                    : "Proved to go in; and no better choice goes in, proved with everything standing, "
                                      "lying or on its side.";
    case Choice::searched:
        return "Proved to go in. No better choice was found: each holds things that were not found to go in together, "
               "which is no proof that they cannot.";
    case Choice::cut_short:
        return "Proved to go in. Not every better choice was tried within this effort; --effort thorough tries more.";
    case Choice::none: break;
    }
    return "";
}

std::string left_text(const Filling& filling)
{
    if (filling.left.empty()) {
        return {};
    }
    std::string text = "\nWhat stays outside, and why:\n";
    for (const Left& left : filling.left) {
        const std::string copies = left.copies > 1 ? fmt::format(" ({} of them)", left.copies) : "";
        text += wrapped("  - ", left.name + copies + ": " + left.words);
    }
    return text;
}

} // namespace

std::string fill_text(const Filling& filling)
{
    const Bundle& bundle = filling.bundle;
    const std::string vessel = called(bundle, filling.vessel, filling.vessel);
    if (filling.choice == Choice::none) {
        return wrapped("", fmt::format("{}: what must go in was not found to go into {}", filling.kit, vessel)) +
               left_text(filling);
    }
    std::string text =
        wrapped("", fmt::format("{}: {} of {} things go into {}{}", filling.kit,
                                filling.left.empty() ? "all" : std::to_string(filling.things), filling.candidates, vessel,
                                shut_in_words(filling))) +
        "\n";
    text += wrapped("Choice: ", choice_in_words(filling));
    text += wrapped("Room: ", fmt::format("the things take {} of the {} inside, as their outsides count",
                                          report::volume_in_words(filling.filled_ml, report::Rounding::up),
                                          report::volume_in_words(filling.room_ml, report::Rounding::down)));
    text += wrapped("Weight: ", report::weight_in_words(total_weight_g(bundle)) + " in all, the vessel included");
    Bundle shown = bundle; // without the rules that are only what was asked
    std::erase_if(shown.rules, [&](const CarryRule& rule) {
        return rule.second == filling.vessel && (rule.keep == Keep::within || rule.keep == Keep::shut);
    });
    return text + left_text(filling) + report::layout_text(shown);
}

std::string fill_json(const Filling& filling)
{
    nlohmann::ordered_json left = nlohmann::ordered_json::array();
    for (const Left& one : filling.left) {
        left.push_back({{"id", one.id},
                        {"copies", one.copies},
                        {"why", to_string(one.why)},
                        {"with", one.with},
                        {"text", one.words}});
    }
    nlohmann::ordered_json json{{"format", "tuckwright-filling"},
                                {"version", 1},
                                {"kit", filling.kit},
                                {"vessel", filling.vessel},
                                {"lid", filling.lid.empty() ? nlohmann::ordered_json() : nlohmann::ordered_json(filling.lid)},
                                {"choice", to_string(filling.choice)},
                                {"things", filling.things},
                                {"candidates", filling.candidates},
                                {"room_ml", filling.room_ml},
                                {"filled_ml", filling.filled_ml},
                                {"tries", filling.tries},
                                {"left", std::move(left)},
                                {"bundle", nlohmann::ordered_json::parse(to_json(filling.bundle))}};
    return report::laid_out(json) + "\n";
}

} // namespace tuckwright
