// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/content.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "report/cautions.hpp"
#include "report/covers.hpp"
#include "report/figures.hpp"
#include "report/measures.hpp"
#include "report/notes.hpp"
#include "report/steps_frame.hpp"
#include "report/words.hpp"
#include "tuckwright/check_code.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright::card {

namespace {

using report::printable;
using report::weight_in_words;

std::string whole_name(const std::string& name, const std::string& id) { return printable(name.empty() ? id : name); }

std::string details_of(const Bundle& bundle, const PlacedItem& item)
{
    std::string text = item.stowed.empty() ? "" : report::in_answer_units(item.stowed, bundle) + ", ";
    if (!item.solids.empty()) { // of a shut lid only the plate is a solid of its own: its height says nothing
        text += item.closes ? "lid, " + report::width_in_words(item.solids.front().shape)
                            : report::size_in_words(item.solids.front().shape);
    }
    if (!item.contents.empty()) {
        text += fmt::format("; holds {} of {}", weight_in_words(item.contents_g), item.contents);
    }
    if (!item.how.empty()) {
        text += "; " + report::in_answer_units(item.how, bundle);
    }
    return printable(text);
}

/// Up to so many copies have lines of their own, for steps and drawings tell them apart.
constexpr std::size_t copies_apart = 4;

bool has_many_copies(const Bundle& bundle, const std::string& id)
{
    return static_cast<std::size_t>(std::count_if(bundle.items.begin(), bundle.items.end(),
                                                  [&](const PlacedItem& item) { return item.id == id; })) > copies_apart;
}

/// "Steel pot, 1.1 l", "Cup 2, blue"; of many copies only what is common to them.
std::string name_of(const Bundle& bundle, std::size_t i)
{
    const PlacedItem& item = bundle.items[i];
    const auto comma = item.name.find(',');
    const std::string rest = comma == std::string::npos ? "" : item.name.substr(comma);
    return printable((has_many_copies(bundle, item.id) ? common_name(bundle, item.id) : spoken_name(bundle, i)) + rest);
}

bool is_alike(const Part& a, const Part& b)
{
    return a.name == b.name && a.details == b.details && a.weight == b.weight;
}

template <class Cover> Part cover_part(const Cover& cover)
{
    return {{}, whole_name(cover.name, cover.id), {}, weight_in_words(cover.weight_g)};
}

std::vector<Part> parts_of(const Bundle& bundle)
{
    std::vector<Part> parts;
    const auto add = [&](const Part& part) {
        const auto same = std::find_if(parts.begin(), parts.end(), [&](const Part& p) { return is_alike(p, part); });
        if (same == parts.end()) {
            parts.push_back(part);
        } else {
            ++same->copies;
            same->numbers = same->numbers.substr(0, same->numbers.find(' ')) + " \u2026 " + part.numbers;
        }
    };
    for (std::size_t i = 0; i < bundle.items.size(); ++i) {
        const PlacedItem& item = bundle.items[i];
        add({std::to_string(i + 1), name_of(bundle, i), details_of(bundle, item),
             weight_in_words(item.weight_g + item.contents_g)});
    }
    for (const Band& band : bundle.bands) {
        add(cover_part(band));
    }
    if (bundle.bag) {
        add(cover_part(*bundle.bag));
    }
    return parts;
}

std::vector<Step> steps_of(const Bundle& bundle)
{
    std::vector<Step> steps;
    for (std::size_t i = 0; i < bundle.steps.size(); ++i) {
        const std::string& text = bundle.steps[i].text;
        steps.push_back({printable(text.empty() ? spoken_name(bundle, bundle.steps[i].item) + " goes into its place."
                                                : report::in_answer_units(text, bundle)),
                         i});
    }
    std::size_t covers = 0;
    for (const std::string& text : report::cover_steps(bundle)) {
        steps.push_back({printable(text), bundle.steps.size(), ++covers});
    }
    return steps;
}

/// The number of a copy stays on the line of its name.
std::string kept_whole(std::string text)
{
    constexpr const char* no_break = "\u00A0";
    for (std::size_t i = text.size(); i-- > 1;) {
        if (text[i - 1] == ' ' && text[i] >= '0' && text[i] <= '9') {
            text.replace(i - 1, 1, no_break);
        }
    }
    return text;
}

void add_if_any(std::vector<std::string>& sentences, const std::string& sentence)
{
    if (!sentence.empty()) {
        sentences.push_back(printable(sentence));
    }
}

} // namespace

Content content_of(const Bundle& bundle, const std::string& date)
{
    require(has_bundle(bundle.status), "a card is about a bundle that is there");
    const Shape outer = outer_envelope(bundle);
    Content content;
    content.title = printable(bundle.kit);
    content.size = report::envelope_in_words(outer) + (bundle.bag ? ", in its bag" : "");
    content.volume = report::volume_in_words(volume_ml(outer), report::Rounding::up);
    const auto weights = report::weights_of(bundle);
    content.weight = weight_in_words(weights.total) +
                     (weights.contents > 0 ? ", of it " + weight_in_words(weights.contents) + " contents" : "");
    content.parts = parts_of(bundle);
    add_if_any(content.before, report::frame_in_words(bundle));
    add_if_any(content.before, report::cooling_note(bundle));
    content.steps = steps_of(bundle);
    for (const report::ComingOut& out : report::unpacking_order(bundle)) {
        const std::string number = out.item ? std::to_string(*out.item + 1) + ": " : "";
        content.unpacking.push_back(kept_whole(number + printable(out.words)));
    }
    add_if_any(content.notes, report::toppling_note(bundle));
    add_if_any(content.notes, report::unheld_note(bundle));
    add_if_any(content.notes, report::rattling_note(bundle));
    add_if_any(content.notes, report::tightest_note(bundle));
    content.cautions = report::cautions(bundle);
    content.code = check_code(bundle);
    content.date = printable(date);
    return content;
}

std::string proof_line(const Content& content)
{
    return fmt::format("Code {}. 'tuckwright verify --code {} FILE' confirms that the saved bundle FILE is this one, and "
                       "proves it anew.",
                       content.code, content.code);
}

} // namespace tuckwright::card
