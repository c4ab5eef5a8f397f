// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "advice/provision_cautions.hpp"
#include "provision/working.hpp"
#include "report/words.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/provision_report.hpp"

namespace tuckwright {

namespace {

using provisioning::figure;
using report::wrapped;

std::string counted(int number, const char* one, const char* many)
{
    return fmt::format("{} {}", number, number == 1 ? one : many);
}

/// "507.5 ml (428.7 g)".
std::string amount(const Need& need)
{
    const std::string grams = figure(need.grams) + " g";
    return need.ml ? figure(*need.ml) + " ml (" + grams + ")" : grams;
}

/// "2 of Bottle, 0.3 l (spirit-300), 253.8 ml (214.4 g) in each".
std::string chosen_in_words(const Need& need)
{
    const Considered& chosen = need.vessels[*need.chosen];
    const std::string each =
        need.ml ? figure(need.each) + " ml (" + figure(need.each_g) + " g)" : figure(need.each_g) + " g";
    const std::string name = chosen.name == chosen.id ? chosen.id : chosen.name + " (" + chosen.id + ")";
    return chosen.count == 1 ? fmt::format("{}, with {} in it", name, each)
                             : fmt::format("{} of {}, with {} in each", chosen.count, name, each);
}

std::string to_take(const Need& need)
{
    return wrapped("  - ", need.what + ": " + amount(need)) +
           wrapped("    ",
                   need.chosen ? "in " + chosen_in_words(need) : "No vessel is offered for it, so 'pack' adds none.");
}

/// What a boil burns, for a trial at home.
std::string fuel_of_a_boil(const Provision& needs)
{
    const double all = needs.fuel.ml.value_or(needs.fuel.grams);
    return wrapped("    ",
                   fmt::format("It is for {}: {} {} each, the reserve included.", counted(needs.boils, "boil", "boils"),
                               figure(provisioning::rounded(all / needs.boils, 1, provisioning::Toward::nearest)),
                               needs.fuel.ml ? "ml" : "g"));
}

std::string lines_of(const std::vector<WorkingLine>& working)
{
    std::string text;
    for (const WorkingLine& line : working) {
        text += wrapped("  ", line.what + ": " + line.words);
        const std::string value = fmt::format("{} {}", figure(line.value), line.unit);
        text += wrapped("      ", line.sum.empty() ? value : line.sum + " = " + value);
    }
    return text;
}

/// Each vessel that was offered, and why that one was chosen.
std::string vessels_of(const Need& need)
{
    std::string text;
    const std::string unit = need.ml ? "ml" : "g";
    for (const Considered& one : need.vessels) {
        const std::string usable =
            one.usable < one.holds ? fmt::format(", and may be filled with {} {}", figure(one.usable), unit) : "";
        text += wrapped("  - ", fmt::format("{} holds {} {}{}: {} of it would do, and take{} up {}", one.name,
                                            figure(one.holds), unit, usable, one.count, one.count == 1 ? "s" : "",
                                            report::volume_in_words(one.outside_ml, report::Rounding::up)));
    }
    if (need.chosen) {
        const Considered& chosen = need.vessels[*need.chosen];
        const char* why = need.vessels.size() == 1 ? "it is the only one offered"
                          : chosen.count == 1      ? "one is enough, and no smaller one does that"
                                                   : "no single vessel is enough, and these are the smallest together";
        text += wrapped("  ",
                        fmt::format("{} needed: {}, for {}.",
                                    need.ml ? figure(*need.ml) + " ml" : figure(need.grams) + " g", chosen.name, why));
    }
    return text;
}

std::string dilution_of(const Dilution& dilution)
{
    const auto percent = [](double share) { return figure(100 * share) + " %"; };
    std::string text = "\nHow to dilute it, by weight on a scale or by volume:\n";
    text += wrapped("  ",
                    fmt::format("Pour {} g ({} ml) of spirit of {} and {} g ({} ml) of water together. Volumes do not "
                                "add up: it becomes {} ml, not {}.",
                                figure(dilution.spirit_g), figure(dilution.spirit_ml), percent(dilution.from),
                                figure(dilution.water_g), figure(dilution.water_ml), figure(dilution.mixed_ml),
                                figure(provisioning::rounded(dilution.spirit_ml + dilution.water_ml, 1,
                                                             provisioning::Toward::nearest))));
    text +=
        wrapped("  ", fmt::format("By the rule of thumb, one part of water to ten of spirit of {}, it would become {} "
                                  "vol; {} if volumes added up.",
                                  percent(dilution.from), percent(dilution.thumb_true), percent(dilution.thumb_plain)));
    return text + lines_of(dilution.working);
}

std::string list(const char* title, const std::vector<std::string>& entries)
{
    std::string text = entries.empty() ? "" : std::string("\n") + title + "\n";
    for (const std::string& entry : entries) {
        text += wrapped("  - ", entry);
    }
    return text;
}

/// Fuel that the kit has among its own items.
std::string fuel_besides(const Kit& kit)
{
    std::set<std::string> offered;
    for (const Offer& offer : kit.trip->fuel.offers) {
        offered.insert(offer.item.id);
    }
    std::string names;
    for (const Item& item : kit.items) {
        const bool fuel = std::find(item.kinds.begin(), item.kinds.end(), Kind::fuel) != item.kinds.end();
        if (fuel && item.contents && offered.count(item.id) == 0) {
            names += (names.empty() ? "" : ", ") + item.name;
        }
    }
    return names.empty() ? ""
                         : wrapped("  Mind: ", "among the kit's own items there is fuel already: " + names +
                                                   ". It is not counted here; take it out if this replaces it.");
}

} // namespace

std::string provision_text(const Provision& needs, const Kit& kit)
{
    require(kit.trip != nullptr, "the kit has a trip");
    std::string text =
        wrapped("", fmt::format("{}: what the trip takes, {} for {}", kit.name,
                                counted(needs.people, "person", "people"), counted(needs.days, "day", "days")));
    text += "\nTo take along:\n" + to_take(needs.fuel) + fuel_of_a_boil(needs);
    for (const Need& need : needs.food) {
        text += to_take(need);
    }
    text += fuel_besides(kit);
    text += list("Taken for granted:", needs.assumed);
    text += "\n" +
            wrapped("", "The working. Each figure is rounded as it is printed, in the direction that takes more fuel "
                        "along, and the next line goes on with it so; a ^ b is a to the power of b.") +
            "\nThe heat:\n" + lines_of(needs.heat) + "\nThe fuel:\n" + lines_of(needs.fuel.working) +
            vessels_of(needs.fuel);
    if (needs.dilution) {
        text += dilution_of(*needs.dilution);
    }
    for (const Need& need : needs.food) {
        text += "\n" + wrapped("", "Food, " + need.what + ":") + lines_of(need.working) + vessels_of(need);
    }
    return text + list("Where the figures come from:", needs.sources) +
           list("Take care:", advice::provision_cautions(*kit.trip));
}

std::string provided_text(const Provision& needs)
{
    std::string names;
    std::vector<const Need*> all{&needs.fuel};
    for (const Need& need : needs.food) {
        all.push_back(&need);
    }
    for (const Need* need : all) {
        if (need->chosen) {
            names += (names.empty() ? "" : "; ") + need->what + " in " + chosen_in_words(*need);
        }
    }
    const std::string shown = " 'tuckwright provision' shows what the trip takes, and the working.";
    return "\n" + wrapped("For the trip: ", names.empty()
                                                ? "no vessel is offered, so no fuel or food was added." + shown
                                                : names + "." + shown);
}

} // namespace tuckwright
