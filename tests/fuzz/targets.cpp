// SPDX-License-Identifier: GPL-3.0-or-later
#include "fuzz/targets.hpp"

#include "tuckwright/check_code.hpp"
#include "tuckwright/kit_reader.hpp"
#include "tuckwright/proof.hpp"
#include "tuckwright/provision.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/shelf.hpp"
#include "tuckwright/way_back.hpp"
#include "tuckwright/worst_case.hpp"

namespace tuckwright::fuzz {

namespace {

constexpr std::size_t most_problems = 1000;

/// A refusal says what is wrong, of which file, on one line, and not without end.
void require_words(const std::vector<Problem>& problems)
{
    require(!problems.empty() && problems.size() <= most_problems, "a refusal has at least one problem, and not too many");
    for (const Problem& problem : problems) {
        require(!problem.what.empty(), "a problem says what is wrong");
        require(to_string(problem).find('\n') == std::string::npos, "a problem is one line");
    }
}

/// What every kit that was accepted is taken through before a search.
void use(const Kit& kit)
{
    require(!kit.items.empty(), "a kit has items");
    if (kit.trip) {
        (void)provision(*kit.trip);
    }
    const auto whole = with_provisions(kit);
    if (!whole) {
        require_words(whole.problems());
        return;
    }
    (void)worst_case(*whole);
}

} // namespace

void try_kit(std::string_view text)
{
    const std::string name = "kit.yaml";
    (void)shelf_named_in(text, name);
    const auto kit = read_kit_text(text, name);
    if (kit) {
        use(*kit);
    } else {
        require_words(kit.problems());
    }
    const auto kits = read_kits_text(text, name);
    if (kits) {
        require(!kits->empty(), "a file has at least one kit");
        use(kits->front().kit);
        use(kits->back().kit);
    } else {
        require_words(kits.problems());
        require(!kit.ok(), "a kit without a choice is the one kit of its file");
    }
    const auto both = read_both_ways_text(text, name);
    if (both) {
        require(kit.ok(), "the way out is the kit");
        use(both->out);
        use(both->back);
    } else {
        require_words(both.problems());
    }
}

void try_table(std::string_view text)
{
    const auto shelf = shelf_from_csv(text, "things.csv", "Things");
    if (shelf) {
        require(read_shelf_text(*shelf, "things.yaml").ok(), "what is made of a table is a shelf");
    } else {
        require_words(shelf.problems());
    }
    const auto read = read_shelf_text(text, "things.yaml");
    if (!read) {
        require_words(read.problems());
    }
}

void try_saved_bundle(std::string_view text)
{
    const auto saved = read_saved(text, "bundle.json");
    if (!saved) {
        require_words(saved.problems());
        return;
    }
    const std::string once = to_json(saved->bundle);
    const auto again = read_saved(once, "bundle.json");
    require(again.ok(), "what is written can be read");
    require(to_json(again->bundle) == once, "what is read is written again the same");
}

void try_verify(std::string_view text)
{
    const auto saved = read_saved(text, "bundle.json");
    if (!saved || !saved->contradictions.empty() || !has_bundle(saved->bundle.status)) {
        return;
    }
    const auto objections = check(saved->bundle);
    for (const Objection& objection : objections) {
        require(!objection.rule.empty() && !objection.what.empty(), "an objection says what is wrong");
    }
    if (objections.empty()) {
        (void)wrong_words(saved->bundle, "bundle.json");
        require(has_words_of_today(with_words_anew(saved->bundle)), "a bundle worded anew has the words of today");
        (void)wrong_figures(saved->bundle, "bundle.json");
        require(!text_report(saved->bundle).empty() && !check_code(saved->bundle).empty(), "a proved bundle can be told");
    }
}

} // namespace tuckwright::fuzz
