// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

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

std::vector<Problem> wrong_words(const Bundle& bundle, const std::string& name)
{
    std::vector<Problem> wrong;
    for (std::size_t i = 0; i < bundle.items.size(); ++i) {
        const std::string form = bundle.items[i].closes ? "shut" : posture(bundle, i);
        if (bundle.items[i].form != form) {
            wrong.push_back({name, 0, 0,
                             fmt::format("items[{}].form: is \"{}\", but \"{}\" follows from the rest", i,
                                         bundle.items[i].form, form),
                             ""});
        }
    }
    const auto texts = step_texts(bundle);
    for (std::size_t i = 0; i < texts.size(); ++i) {
        if (bundle.steps[i].text != texts[i]) {
            wrong.push_back({name, 0, 0,
                             fmt::format("steps[{}].text: is \"{}\", but \"{}\" follows from the rest", i,
                                         bundle.steps[i].text, texts[i]),
                             ""});
        }
    }
    return wrong;
}

} // namespace tuckwright
