// SPDX-License-Identifier: GPL-3.0-or-later
#include "tuckwright/kit_reader.hpp"

#include <algorithm>
#include <optional>

#include "kit/choices.hpp"
#include "kit/document.hpp"
#include "kit/file_text.hpp"
#include "kit/kit_reading.hpp"
#include "kit/shelf.hpp"
#include "kit/shelf_reading.hpp"
#include "kit/way_back_document.hpp"
#include "kit/words.hpp"
#include "tuckwright/trip.hpp"
#include "tuckwright/way_back.hpp"

namespace tuckwright {

namespace {

using namespace reading;

constexpr std::size_t most_combinations = 1000;
constexpr std::size_t most_things = 50'000;                       // in all combinations
constexpr std::size_t most_bytes = std::size_t{64} * 1024 * 1024; // of text that is gone through for them

/// A kit file with its choices, as they are given.
struct Choosing {
    std::string_view text;
    std::string name;
    std::optional<Node> document; ///< with the things that it takes from a shelf; nothing where there is no tree
    std::optional<ShelfFile> shelf;
    std::optional<WayBackDocument> back; ///< nothing where the file says nothing of a way back
    std::vector<Choice> choices;
    ProblemList problems;

    std::vector<Problem> told() const
    {
        std::vector<Source> sources{{text, name}};
        if (shelf) {
            sources.push_back({shelf->text, shelf->name});
        }
        return problems.in_order(sources);
    }
};

/// The entries under `items`.
std::size_t entries_of(const Node& document)
{
    const auto items = std::find_if(document.entries.begin(), document.entries.end(),
                                    [](const Entry& entry) { return entry.key == "items"; });
    return items != document.entries.end() ? items->value.items.size() : 0;
}

/// A kit of one combination, and what is wrong with it.
struct Combination {
    Kit kit;
    ProblemList found;
};

/// Reads a document of the file with the choices settled. `absent` are things that do not come along in it.
Combination read_document(const Choosing& file, const Node& document, const std::vector<Choice>& choices,
                          const Picks& picks, std::map<std::string, Absent> absent)
{
    Combination result;
    const ShelfFile none;
    const ShelfFile& shelf = file.shelf ? *file.shelf : none;
    Reading reading{result.found, {}, {}, shelf.units};
    absent.insert(shelf.left.begin(), shelf.left.end());
    const Node plain = settled(reading, document, choices, picks, absent);
    if (!picks.empty() && entries_of(plain) == 0 && !file.problems.empty()) {
        return {}; // nothing is left of faulty alternatives: that it is nothing would be a second complaint
    }
    result.kit = read_kit(reading, plain);
    result.kit.name += (picks.empty() ? "" : " ") + picks_in_words(file.choices, picks);
    return result;
}

const Item* item_of(const Kit& kit, const std::string& id)
{
    const auto found = std::find_if(kit.items.begin(), kit.items.end(), [&](const Item& item) { return item.id == id; });
    return found != kit.items.end() ? &*found : nullptr;
}

/// Reports what is left of contents where that is none of them, or more than there was.
void check_left(Choosing& file, const Kit& out, const Kit& back)
{
    ProblemList found;
    for (const LeftOver& left : file.back->left) {
        const Item *before = item_of(out, left.id), *after = item_of(back, left.id);
        if (before == nullptr || after == nullptr || !before->contents || !after->contents) {
            continue;
        }
        if (after->contents->weight_g <= 0) {
            found.add(left.place, "nothing is left in " + in_quotes(left.id), "name it under 'empty' instead");
        } else if (after->contents->weight_g > before->contents->weight_g) {
            found.add(left.place, "more is left in " + in_quotes(left.id) + " than it holds on the way out",
                      "check the amount and its unit; what is filled anew has its 'contents' under 'changed'");
        }
    }
    file.problems.merge(found);
}

/// The kit on the way back. Problems that both ways share are told once.
Kit read_back(Choosing& file, const Picks& picks, const Combination& out)
{
    ProblemList known;
    Reading reading{known, {}, {}, {}};
    const auto choices = read_choices(reading, file.back->document);
    Combination back = read_document(file, file.back->document, choices, picks, file.back->gone);
    file.problems.merge(back.found, file.back->places, out.found.empty() ? "on the way back: " : "");
    if (out.found.empty() && back.found.empty()) {
        check_left(file, out.kit, back.kit);
    }
    back.kit.name += ", on the way back";
    if (back.kit.trip) {
        Trip trip = *back.kit.trip;
        trip.is_over = true;
        back.kit.trip = std::make_shared<const Trip>(std::move(trip));
    }
    return std::move(back.kit);
}

/// The kit both ways; the way back is that of the kit without things where the file says nothing of it.
BothWays read_combination(Choosing& file, const Picks& picks)
{
    const auto only_back = file.back ? file.back->added : std::map<std::string, Absent>();
    const Combination out = read_document(file, *file.document, file.choices, picks, only_back);
    file.problems.merge(out.found);
    return {out.kit, file.back ? read_back(file, picks, out) : Kit{}};
}

/// The things of one combination at the most.
std::size_t most_things_of(const Choosing& file)
{
    std::size_t things = entries_of(*file.document);
    for (const Choice& choice : file.choices) {
        std::size_t most = 0;
        for (const Alternative& alternative : choice.alternatives) {
            most = std::max(most, alternative.entries.size());
        }
        things += most;
    }
    return things;
}

/// Reads as few combinations as have every alternative in one of them; fewer of a file that is far too large.
void check_alternatives(Choosing& file)
{
    std::size_t most = 1;
    for (const Choice& choice : file.choices) {
        most = std::max(most, choice.alternatives.size());
    }
    const std::size_t by_things = most_things / 2 / std::max<std::size_t>(1, most_things_of(file)) + 1;
    const std::size_t by_bytes = most_bytes / 4 / std::max<std::size_t>(1, file.text.size()) + 1;
    most = std::min({most, by_things, by_bytes});
    for (std::size_t i = 0; i < most && file.problems.size() <= ProblemList::most; ++i) {
        Picks picks;
        for (const Choice& choice : file.choices) {
            const std::size_t last = std::max<std::size_t>(1, choice.alternatives.size()) - 1;
            picks.push_back(std::min(i, last));
        }
        read_combination(file, picks);
    }
}

/// The file, with what it takes from its shelf, and with all that is wrong with either and with the choices reported.
Choosing choosing_of(std::string_view text, const std::string& name)
{
    Choosing file{without_mark(text), name, std::nullopt, std::nullopt, std::nullopt, {}, {}};
    auto document = tree_of(file.text, file.problems, "kit");
    if (document && is_shelf(*document)) {
        file.problems.add(
            {}, "this is a shelf, not a kit",
            "write a kit that takes things from it: 'kit: ...', 'shelf: FILE', and entries '- from: pot'");
        return file;
    }
    if (!document) {
        return file;
    }
    file.document = std::move(document);
    file.shelf = take_from_shelf(file.problems, *file.document, name);
    Reading reading{file.problems, {}, {}, {}};
    file.back = way_back_of(reading, *file.document);
    file.choices = read_choices(reading, *file.document);
    if (!file.choices.empty()) {
        check_alternatives(file);
    }
    return file;
}

std::vector<std::string_view> words_of(const Choice& choice)
{
    std::vector<std::string_view> words;
    for (const Alternative& alternative : choice.alternatives) {
        words.push_back(alternative.word);
    }
    return words;
}

/// Finds what is taken among the file's choices; reports what it does not have, and choices left open.
Picks picks_of(const std::vector<Choice>& choices, const std::vector<Taken>& chosen, ProblemList& problems)
{
    std::vector<std::string_view> names;
    for (const Choice& choice : choices) {
        names.push_back(choice.name);
    }
    for (const Taken& taken : chosen) {
        const auto is_same = [&](const Taken& other) { return other.choice == taken.choice; };
        if (std::find_if(chosen.begin(), chosen.end(), is_same)->what != taken.what) {
            problems.add({}, "the choice " + in_quotes(taken.choice) + " is settled in two ways", "keep one of the two");
        }
        if (std::find(names.begin(), names.end(), taken.choice) == names.end()) {
            problems.add({}, "there is no choice " + in_quotes(taken.choice) + " in this kit",
                         names.empty() ? "it has no choices at all: do not choose" : suggestion(taken.choice, names));
        }
    }
    Picks picks;
    for (const Choice& choice : choices) {
        const auto words = words_of(choice);
        const auto taken =
            std::find_if(chosen.begin(), chosen.end(), [&](const Taken& t) { return t.choice == choice.name; });
        picks.push_back(0);
        if (taken == chosen.end()) {
            problems.add(choice.place, "the choice " + in_quotes(choice.name) + " is open: " + listed(words, "or"),
                         "compare them all with 'tuckwright compare', or say which, such as '--choose " + choice.name +
                             "=" + std::string(words.front()) + "'");
            continue;
        }
        const auto word = std::find(words.begin(), words.end(), taken->what);
        if (word == words.end()) {
            problems.add(choice.place,
                         "the choice " + in_quotes(choice.name) + " has no alternative " + in_quotes(taken->what),
                         suggestion(taken->what, words));
        } else {
            picks.back() = static_cast<std::size_t>(word - words.begin());
        }
    }
    return picks;
}

void check_number(Choosing& file)
{
    const std::size_t number = combinations(file.choices);
    const std::size_t things = most_things_of(file);
    if (number > most_combinations || number * things > most_things || number * file.text.size() > most_bytes) {
        file.problems.add(file.choices.front().place,
                          "the choices make " + std::to_string(number) + " combinations" +
                              (number > most_combinations ? "" : " of some " + std::to_string(things) + " things") +
                              ", which is more than can be compared (1000, of 50 things each)",
                          "take out alternatives, or settle a choice");
    }
}

std::vector<Taken> taken_of(const std::vector<Choice>& choices, const Picks& picks)
{
    std::vector<Taken> taken;
    for (std::size_t c = 0; c < choices.size(); ++c) {
        taken.push_back({choices[c].name, choices[c].alternatives[picks[c]].word});
    }
    return taken;
}

/// The kit of a file without choices.
BothWays read_plain(Choosing& file)
{
    if (file.shelf || file.back) {
        return read_combination(file, {});
    }
    Reading reading{file.problems, {}, {}, {}};
    return {read_kit(reading, *file.document), {}};
}

/// The kit with what is taken of its choices. Where something is wrong, the file has problems.
BothWays read_chosen(Choosing& file, const std::vector<Taken>& chosen)
{
    BothWays both;
    if (file.document && file.choices.empty()) {
        both = read_plain(file);
    }
    if (file.problems.empty()) {
        const Picks picks = picks_of(file.choices, chosen, file.problems);
        if (file.problems.empty() && !picks.empty()) {
            both = read_combination(file, picks);
        }
    }
    return both;
}

} // namespace

Result<Kit> read_kit_text(std::string_view text, const std::string& name, const std::vector<Taken>& chosen)
{
    Choosing file = choosing_of(text, name);
    BothWays both = read_chosen(file, chosen);
    return file.problems.empty() ? Result<Kit>(std::move(both.out)) : Result<Kit>(file.told());
}

Result<BothWays> read_both_ways_text(std::string_view text, const std::string& name, const std::vector<Taken>& chosen)
{
    Choosing file = choosing_of(text, name);
    BothWays both = read_chosen(file, chosen);
    if (file.problems.empty() && !file.back) {
        file.problems.add({}, "this kit does not say what is different on the way back",
                          "say it at the top of the file, such as '" + std::string(way_back_example) + "'");
    }
    return file.problems.empty() ? Result<BothWays>(std::move(both)) : Result<BothWays>(file.told());
}

Result<std::vector<ChosenKit>> read_kits_text(std::string_view text, const std::string& name)
{
    Choosing file = choosing_of(text, name);
    std::vector<ChosenKit> kits;
    if (file.document && file.choices.empty()) {
        kits.push_back({read_plain(file).out, {}});
    } else if (file.problems.empty()) {
        check_number(file);
        Picks picks(file.choices.size(), 0);
        for (bool more = file.problems.empty(); more; more = next_picks(file.choices, picks)) {
            kits.push_back({read_combination(file, picks).out, taken_of(file.choices, picks)});
        }
    }
    if (!file.problems.empty()) {
        return file.told();
    }
    return kits;
}

Result<Kit> read_kit_file(const std::string& path)
{
    const Result<std::string> text = file_text(path, largest_file);
    return text ? read_kit_text(*text, path) : Result<Kit>(text.problems());
}

} // namespace tuckwright
