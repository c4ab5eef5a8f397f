// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/ask_kit.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "cli/questions.hpp"
#include "kit/kinds.hpp"
#include "report/words.hpp"

namespace tuckwright::cli
{

namespace
{

using reading::Measure;

constexpr int most_things = 500, most_copies = 200; // as in a kit
constexpr int most_faults = 20;                     // of one thing, so that an endless pipe comes to an end

constexpr auto about_things = R"(
Now the things, one after the other, each vessel before its lid. Measure from outside, and round up. A thing is like one of
these:
  solid   nothing goes into it
  pot     open at the top: pots, cups, bowls
  tin     with a lid of its own, which is shut: tins, bottles
  sleeve  open at both ends: windscreens, rings
  soft    takes any shape: cloth, a towel, a bag of beans
  lid     of a pot that was told before
In the end its kinds are asked for, from which the usual rules follow of what keeps apart: "lips" is what touches lips or
food, "hot" what is so after use, "sooty" what the flame touches.
)";

AskedItem new_item(const std::string& id, const std::string& name)
{
    AskedItem item;
    item.id = id;
    item.name = name;
    return item;
}

class Dialogue
{
public:
    AskedKit run(const std::string& name)
    {
        Questions::say("A few questions, and the kit file is written. An empty line takes what stands in [brackets]; end with\n"
                       "Ctrl-C, and nothing is written. What comes out wrong can be changed in the file afterwards.\n\n");
        settle([&] { kit_.name = questions_.text("What is the kit called?", name); }, "a kit's name");
        ask_for_units();
        ask_for_bundle();
        Questions::say(about_things);
        while (kit_.items.size() < most_things && ask_for_item()) {
        }
        return kit_;
    }

private:
    void ask_for_units()
    {
        const std::string word = questions_.word("Are plain numbers mm and grams, cm and grams, or inches and ounces? (mm, cm, in)",
                                                 {"mm", "cm", "in"}, "mm");
        reading::Units units;
        units.length = word == "in" ? reading::Unit::in : word == "cm" ? reading::Unit::cm : reading::Unit::mm;
        units.weight = word == "in" ? reading::Unit::oz : reading::Unit::g;
        questions_.plain_numbers_are(units);
        Questions::say("  A unit behind a number always wins: 80 mm, 3.5 cm, 3 1/2 in; 140 g, 5 oz.\n");
    }

    std::string length(const std::string& question, const std::string& if_empty = "", bool nought = false) const
    {
        return questions_.quantity("  " + question, Measure::length, if_empty, nought);
    }

    std::vector<std::string> sides(bool is_round, const std::string& if_empty = "") const
    {
        if (is_round) {
            const std::string across = length("How wide across?", if_empty);
            return {across, length("How high?", if_empty)};
        }
        const std::string along = length("How long?", if_empty), wide = length("How wide?", if_empty);
        return {along, wide, length("How high?", if_empty)};
    }

    void ask_for_bundle()
    {
        kit_.is_round =
            questions_.word("Shall the bundle be round, or a box? (round, box)", {"round", "box"}, "round") == "round";
        if (questions_.yes("Has it to go into something, such as a pannier? (yes, no)", false)) {
            Questions::say("  The room that there is, inside:\n");
            settle([&] { kit_.limits = sides(kit_.is_round, "none"); }, "the room for the bundle");
        }
    }

    /// Asks by that function, again and again until the reader of kits has nothing against it.
    template <class Ask> void settle(const Ask& ask, const std::string& about)
    {
        for (int faults = 0; faults < most_faults; ++faults) {
            ask();
            AskedKit tried = kit_;
            if (tried.items.empty()) { // a kit needs a thing
                tried.items.push_back(new_item("thing", "Thing"));
                tried.items.back().sizes = {"1 mm", "1 mm"};
                tried.items.back().weight = "1 g";
            }
            const auto fault = fault_of(tried);
            if (!fault) {
                return;
            }
            Questions::say(report::wrapped("    ", fault->what + (fault->remedy.empty() ? "" : "; " + fault->remedy)));
            Questions::say("    So once more; what is in the words of the file can be added to it afterwards.\n");
        }
        throw AnswersEnded(fmt::format("{} times in a row what was told of {} did not go together", most_faults, about));
    }

    /// One more thing, or false where all are told.
    bool ask_for_item()
    {
        const bool is_first = kit_.items.empty();
        Questions::say("\n");
        const std::string name =
            questions_.text(fmt::format("Thing {}: what is it called?", kit_.items.size() + 1), is_first ? "" : "no more");
        if (name == "no more") {
            return false;
        }
        if (name.empty()) {
            Questions::say("    A kit holds one thing at least; type its name, such as Pot\n");
            if (++nameless_ == most_faults) {
                throw AnswersEnded("no thing was told");
            }
            return true;
        }
        const std::string id = new_id(name, kit_.items);
        kit_.items.push_back(new_item(id, name));
        settle([&] { ask_for_outside(); }, id);
        settle([&] { ask_for_inside(); }, id);
        settle([&] { ask_what_it_is(); }, id);
        return true;
    }

    AskedItem& item() { return kit_.items.back(); }

    /// Vessels that have no lid yet.
    std::vector<std::string> open_vessels() const
    {
        std::vector<std::string> ids;
        for (const AskedItem& vessel : kit_.items) {
            const bool has_lid = std::any_of(kit_.items.begin(), kit_.items.end(),
                                             [&](const AskedItem& lid) { return lid.closes == vessel.id; });
            if (vessel.sort == Sort::pot && !has_lid && &vessel != &kit_.items.back()) {
                ids.push_back(vessel.id);
            }
        }
        return ids;
    }

    Sort ask_for_sort()
    {
        item() = new_item(item().id, item().name);
        const auto vessels = open_vessels();
        std::vector<std::string> words{"solid", "pot", "tin", "sleeve", "soft"};
        if (!vessels.empty()) {
            words.push_back("lid");
        }
        const std::string word = questions_.word(fmt::format("  What is it like? ({})", fmt::join(words, ", ")), words, "solid");
        return word == "pot"      ? Sort::pot
               : word == "tin"    ? Sort::tin
               : word == "sleeve" ? Sort::sleeve
               : word == "soft"   ? Sort::soft
               : word == "lid"    ? Sort::lid
                                  : Sort::solid;
    }

    void ask_for_outside()
    {
        item().sort = ask_for_sort();
        if (item().sort == Sort::soft) {
            ask_for_softness();
        } else if (item().sort == Sort::lid) {
            ask_for_lid();
        } else {
            item().is_round = questions_.word("  Is it round, or a box? (round, box)", {"round", "box"}, "round") == "round";
            item().sizes = sides(item().is_round);
            // Until they are asked for, walls that suit whatever is as large as that.
            item().wall = item().base = "0.001 mm";
        }
        item().weight = questions_.quantity("  How heavy is it, empty?", Measure::weight);
    }

    /// Sides as pressed together; the volume is their product, rounded up.
    void ask_for_softness()
    {
        Questions::say("  Press it together as you would pack it, and measure that:\n");
        double volume_mm3 = 1;
        for (const std::string& side : sides(false)) {
            volume_mm3 *= reading::parse_length(side, reading::Unit::mm)->mm_up();
        }
        constexpr double mm3_per_ml = 1000;
        item().volume = fmt::format("{:.0f} ml", std::ceil(volume_mm3 / mm3_per_ml));
        item().thickness = length("How thin can it lie at least?");
    }

    void ask_for_lid()
    {
        const auto vessels = open_vessels();
        item().closes = questions_.word(fmt::format("  Of which one is it the lid? ({})", fmt::join(vessels, ", ")), vessels,
                                        vessels.back());
        const auto vessel = std::find_if(kit_.items.begin(), kit_.items.end(),
                                         [&](const AskedItem& other) { return other.id == item().closes; });
        item().is_round = vessel->is_round;
        item().count = vessel->count; // each copy has one
        item().sizes = sides(item().is_round);
        Questions::say("  When it is shut:\n");
        item().adds = length("How much of it stands above the rim?", "", true);
        item().intrudes = length("How far down does it hang into the vessel?", "0 mm", true);
    }

    void ask_for_inside()
    {
        const Sort sort = item().sort;
        if (sort != Sort::pot && sort != Sort::tin && sort != Sort::sleeve) {
            return;
        }
        item().wall = length("How thick is its wall?");
        item().base = sort == Sort::sleeve ? "" : length("How thick is its bottom?");
        if (sort == Sort::tin) {
            item().contents = questions_.text("  What does it hold?", "nothing");
            item().contents = item().contents == "nothing" ? "" : item().contents;
            item().amount = item().contents.empty() ? "" : questions_.quantity("  How much of it, by weight?", Measure::weight);
        }
    }

    void ask_what_it_is()
    {
        if (item().sort != Sort::lid) {
            item().count = questions_.count("  How many alike?", 1, most_copies);
        }
        const auto known = reading::kind_words();
        item().kinds = questions_.words(fmt::format("  Is it any of these: {}?", fmt::join(known, ", ")),
                                        std::vector<std::string>(known.begin(), known.end()));
    }

    Questions questions_;
    AskedKit kit_;
    int nameless_ = 0;
};

} // namespace

AskedKit ask_for_kit(const std::string& name) { return Dialogue().run(name); }

} // namespace tuckwright::cli
