// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <fmt/format.h>

#include "report/words.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/savings.hpp"

namespace tuckwright {

namespace {

using report::length_in_words;
using report::Rounding;
using report::volume_in_words;
using report::wrapped;

constexpr double worth_a_line = 1e-3; ///< share of the volume that a saving comes to at least

/// A share rounded down, so that a saving is not overstated: "8.2 %", "31 %".
std::string saved_share(double share)
{
    constexpr double hair = 1e-6;
    const double tenths = std::floor(1000 * share + hair);
    return tenths < 100 ? fmt::format("{:.1f} %", tenths / 10)
                        : fmt::format("{:.0f} %", std::floor(tenths / 10 + hair));
}

std::string name_of(const Kit& kit, const SizeAnswer& answer, const WhatIf& ask)
{
    const Item& item = kit.items[ask.item];
    std::string name = common_name(answer.bundle, item.id);
    const bool is_lid = item.closes.has_value();
    if (ask.also) {
        const std::string other = common_name(answer.bundle, kit.items[*ask.also].id);
        name += is_lid ? ", with " + other : " with its lid";
    }
    return name;
}

std::string change_of(const Kit& kit, const WhatIf& ask)
{
    const bool several = kit.items[ask.item].count > 1;
    if (ask.change == Change::left_out) {
        return several ? "one left at home" : "left at home";
    }
    const std::string less = (several ? "each " : "") + length_in_words(ask.mm) + " less ";
    const std::string side = ask.shut && ask.side == Dimension::height ? "above the rim" : to_string(*ask.side);
    return less + side + (ask.change == Change::a_tenth ? " (10 %)" : "");
}

double share_of(const SizeAnswer& answer, const WhatIf& ask)
{
    return ask.bundle ? saved_ml(answer.bundle, ask) / packed_volume_ml(answer.bundle) : 0;
}

std::size_t width_of(const std::string& text)
{
    return static_cast<std::size_t>(std::count_if(
        text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::string padded(const std::string& text, std::size_t width)
{
    const std::size_t own = width_of(text);
    return own < width ? text + std::string(width - own, ' ') : text;
}

std::string table(const Kit& kit, const SizeAnswer& answer)
{
    std::vector<const WhatIf*> rows;
    const std::string head = "What would make it smaller:";
    std::size_t widest = width_of(head);
    for (const WhatIf& ask : answer.what_ifs) {
        if (share_of(answer, ask) >= worth_a_line) {
            rows.push_back(&ask);
        }
    }
    std::vector<std::string> labels;
    for (const WhatIf* ask : rows) {
        labels.push_back(report::printable(name_of(kit, answer, *ask)) + ": " + change_of(kit, *ask));
        widest = std::max(widest, width_of(labels.back()));
    }
    if (rows.empty()) {
        return "";
    }
    constexpr std::size_t most = 66;
    widest = std::min(widest, most);
    const std::size_t volume_width = report::answer_units() == report::AnswerUnits::metric ? 9 : 11;
    std::string text = "\n" + padded(head, widest + 4) + padded("bundle", volume_width + 2) + "saved\n";
    for (std::size_t k = 0; k < rows.size(); ++k) {
        text += fmt::format("  {}  {:<{}}  {} ({})\n", padded(labels[k], widest),
                            volume_in_words(packed_volume_ml(*rows[k]->bundle), Rounding::up), volume_width,
                            volume_in_words(saved_ml(answer.bundle, *rows[k]), Rounding::down),
                            saved_share(share_of(answer, *rows[k])));
    }
    return text;
}

/// Those that change nothing, and those that could not be asked, each in a paragraph.
std::string in_vain(const Kit& kit, const SizeAnswer& answer)
{
    std::string nothing, impossible;
    for (const WhatIf& ask : answer.what_ifs) {
        const std::string words = name_of(kit, answer, ask) + " " + change_of(kit, ask);
        if (ask.bundle && share_of(answer, ask) < worth_a_line) {
            nothing +=
                (nothing.empty() ? "" : "; ") + words + (ask.kept ? "" : " (things do not fit as they lie then)");
        } else if (!ask.bundle && ask.why_not != given_up) { // of which the last line tells
            impossible += (impossible.empty() ? "" : "; ") + words + ": " + ask.why_not;
        }
    }
    std::string text;
    if (!nothing.empty()) {
        text += "What makes it hardly any smaller, or not as far as was found:\n" + wrapped("  ", nothing + ".");
    }
    if (!impossible.empty()) {
        text += "No answer for:\n" + wrapped("  ", impossible + ".");
    }
    return text.empty() ? text : "\n" + text;
}

const WhatIf* best_of(const SizeAnswer& answer, bool left_out)
{
    for (const WhatIf& ask : answer.what_ifs) { // what saves most comes first
        if ((ask.change == Change::left_out) == left_out && share_of(answer, ask) >= worth_a_line) {
            return &ask;
        }
    }
    return nullptr;
}

std::string advice_text(const Kit& kit, const SizeAnswer& answer)
{
    const WhatIf *smaller = best_of(answer, false), *out = best_of(answer, true);
    if (smaller == nullptr && out == nullptr) {
        return wrapped("", "None of these things makes the bundle smaller by itself; look for two that could change "
                           "together.");
    }
    std::string text;
    if (smaller != nullptr) {
        text += fmt::format("If you look for another size of one thing, begin with {}: {} saves {} of the volume. ",
                            name_of(kit, answer, *smaller), change_of(kit, *smaller),
                            saved_share(share_of(answer, *smaller)));
    }
    if (out != nullptr) {
        text +=
            fmt::format("Of what might stay at home, {} saves most, {}; whether you can do without is for you to say.",
                        name_of(kit, answer, *out), saved_share(share_of(answer, *out)));
    }
    return wrapped("", text);
}

/// A smaller thing is another thing: nobody should cut or file what holds fuel, fire or pressure.
std::string caution(const Bundle& bundle)
{
    const bool is_risky = std::any_of(bundle.items.begin(), bundle.items.end(), [](const PlacedItem& item) {
        return std::any_of(item.kinds.begin(), item.kinds.end(), [](Kind kind) {
            return kind == Kind::fuel || kind == Kind::flame || kind == Kind::pressurised || kind == Kind::hot ||
                   kind == Kind::sharp;
        });
    });
    return wrapped("",
                   std::string("A smaller vessel holds less. Smaller means another thing, bought or chosen so") +
                       (is_risky ? ": never cut, file or squeeze what holds fuel, fire, heat or pressure, or covers a "
                                   "blade. The maker's instructions and local rules go first."
                                 : "."));
}

} // namespace

std::string size_text(const Kit& kit, const SizeAnswer& answer)
{
    const Bundle& bundle = answer.bundle;
    if (!has_bundle(bundle.status)) {
        return text_report(bundle);
    }
    std::string text =
        wrapped("", fmt::format("{}: packs into {}, {}", bundle.kit, report::envelope_in_words(outer_envelope(bundle)),
                                volume_in_words(packed_volume_ml(bundle), Rounding::up)));
    if (bundle.worst_case) {
        text += wrapped("", "All sizes are those at worst, by the tolerances.");
    }
    if (answer.bettered) {
        text += wrapped(
            "", "This is smaller than what 'pack' finds with the same effort: a search for one of the questions "
                "below came upon it.");
    }
    text += "\nWhat sets the size:\n" + chains_text(bundle, answer.chains);
    text += table(kit, answer) + in_vain(kit, answer) + "\n" + advice_text(kit, answer) + caution(bundle);
    if (answer.stopped) {
        text += wrapped("", "The search was stopped before all was asked.");
    }
    return text;
}

} // namespace tuckwright
