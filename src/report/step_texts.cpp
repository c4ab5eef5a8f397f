// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "stacking/replay.hpp"
#include "stacking/step_words.hpp"
#include "tuckwright/report.hpp"

namespace tuckwright {

std::vector<std::string> step_texts(const Bundle& bundle)
{
    std::vector<std::string> texts;
    stacking::Replay replay(bundle);
    for (const Step& step : bundle.steps) {
        texts.push_back(stacking::step_text(replay, step));
        replay.place(step.item);
    }
    return texts;
}

namespace {

/// What every version has called an item in a sentence, whatever it put behind that: its name up to a comma, else its id.
std::string bare_name(const PlacedItem& item)
{
    const std::string name = item.name.substr(0, item.name.find(','));
    return name.empty() ? item.id : name;
}

bool says(const std::string& text, const std::string& what) { return text.find(what) != std::string::npos; }

/// Items to which something has to be done first, as today's sentences tell and none of the bundle's own does.
std::vector<std::size_t> untold_preparations(const Bundle& bundle)
{
    const auto tells = [](const auto& texts, const std::string& how) {
        return std::any_of(texts.begin(), texts.end(), [&](const std::string& text) { return says(text, how); });
    };
    std::vector<std::string> own;
    for (const Step& step : bundle.steps) {
        own.push_back(step.text);
    }
    const auto texts = step_texts(bundle);
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < bundle.items.size(); ++i) {
        const std::string& how = bundle.items[i].how;
        if (!how.empty() && tells(texts, how) && !tells(own, how)) {
            found.push_back(i);
        }
    }
    return found;
}

} // namespace

std::vector<Problem> wrong_words(const Bundle& bundle, const std::string& name)
{
    std::vector<Problem> wrong;
    for (std::size_t i = 0; i < bundle.steps.size(); ++i) {
        const std::string called = bare_name(bundle.items[bundle.steps[i].item]);
        if (!says(bundle.steps[i].text, called)) {
            wrong.push_back({name, 0, 0,
                             fmt::format("steps[{}].text: is \"{}\", but the step is about {}, which it does not name", i,
                                         bundle.steps[i].text, called),
                             ""});
        }
    }
    for (const std::size_t i : untold_preparations(bundle)) {
        wrong.push_back({name, 0, 0,
                         fmt::format("items[{}].how: is \"{}\", but the text of no step says so", i, bundle.items[i].how),
                         ""});
    }
    return wrong;
}

Bundle with_words_anew(Bundle bundle)
{
    for (std::size_t i = 0; i < bundle.items.size(); ++i) {
        bundle.items[i].form = bundle.items[i].closes ? "shut" : posture(bundle, i);
    }
    const auto texts = step_texts(bundle);
    for (std::size_t i = 0; i < texts.size(); ++i) {
        bundle.steps[i].text = texts[i];
    }
    return bundle;
}

bool has_words_of_today(const Bundle& bundle)
{
    const Bundle anew = with_words_anew(bundle);
    return std::equal(bundle.items.begin(), bundle.items.end(), anew.items.begin(),
                      [](const PlacedItem& a, const PlacedItem& b) { return a.form == b.form; }) &&
           std::equal(bundle.steps.begin(), bundle.steps.end(), anew.steps.begin(),
                      [](const Step& a, const Step& b) { return a.text == b.text; });
}

} // namespace tuckwright
