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
#include "kit/words.hpp"

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

Kit read_combination(Choosing& file, const Picks& picks)
{
    ProblemList found;
    const ShelfFile none;
    const ShelfFile& shelf = file.shelf ? *file.shelf : none;
    Reading reading{found, {}, {}, shelf.units};
    const Node document = settled(reading, *file.document, file.choices, picks, shelf.left);
    if (!picks.empty() && entries_of(document) == 0 && !file.problems.empty()) {
        return {}; // nothing is left of faulty alternatives: that it is nothing would be a second complaint
    }
    Kit kit = read_kit(reading, document);
    kit.name += (picks.empty() ? "" : " ") + picks_in_words(file.choices, picks);
    file.problems.merge(found);
    return kit;
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
    Choosing file{without_mark(text), name, std::nullopt, std::nullopt, {}, {}};
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
Kit read_plain(Choosing& file)
{
    if (file.shelf) {
        return read_combination(file, {});
    }
    Reading reading{file.problems, {}, {}, {}};
    return read_kit(reading, *file.document);
}

} // namespace

Result<Kit> read_kit_text(std::string_view text, const std::string& name, const std::vector<Taken>& chosen)
{
    Choosing file = choosing_of(text, name);
    Kit kit;
    if (file.document && file.choices.empty()) {
        kit = read_plain(file);
    }
    if (file.problems.empty()) {
        const Picks picks = picks_of(file.choices, chosen, file.problems);
        if (file.problems.empty() && !picks.empty()) {
            kit = read_combination(file, picks);
        }
    }
    if (!file.problems.empty()) {
        return file.told();
    }
    return kit;
}

Result<std::vector<ChosenKit>> read_kits_text(std::string_view text, const std::string& name)
{
    Choosing file = choosing_of(text, name);
    std::vector<ChosenKit> kits;
    if (file.document && file.choices.empty()) {
        kits.push_back({read_plain(file), {}});
    } else if (file.problems.empty()) {
        check_number(file);
        Picks picks(file.choices.size(), 0);
        for (bool more = file.problems.empty(); more; more = next_picks(file.choices, picks)) {
            kits.push_back({read_combination(file, picks), taken_of(file.choices, picks)});
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
