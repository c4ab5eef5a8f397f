// SPDX-License-Identifier: GPL-3.0-or-later
// A page for each step: its words, three views, and the list of what can be seen.
#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "drawing/palette.hpp"
#include "drawing/shown.hpp"
#include "report/cautions.hpp"
#include "report/covers.hpp"
#include "report/words.hpp"
#include "tuckwright/drawing.hpp"
#include "tuckwright/report.hpp"

namespace tuckwright {

namespace {

constexpr double margin = 6, gap = 2, least_row = 3.7, number_width = 6, scale_bar = 6.5,
                 views_top = margin + 20; ///< mm
constexpr Color ink = drawing::palette::ink;
constexpr std::array<View, 3> views{View::cutaway, View::above, View::slanted};

/// Half a sheet of A4, lying or upright: higher if a long list needs it.
struct Form {
    double width, height;
    std::size_t columns;
    double views_height;
    double row = least_row; ///< of the list; some scripts are high

    double inner() const { return width - 2 * margin; }
    Frame view(std::size_t k, double top) const
    {
        const double each = (inner() - 2 * gap) / 3;
        return {margin + static_cast<double>(k) * (each + gap), top, each, views_height};
    }
    double column() const { return inner() / static_cast<double>(columns); }
    double name_width() const { return column() - number_width - 2; }
    double list_height(std::size_t entries) const
    {
        return row * static_cast<double>((entries + columns - 1) / columns);
    }
};

constexpr Form lying{210, 148, 4, 82}, upright{148, 210, 3, 136};

TextStyle entry_style(bool bold) { return {.size = 2.7, .bold = bold, .color = ink}; }
TextStyle small(double wrap) { return {.size = 2.7, .color = ink, .wrap = wrap}; }

/// The usual cautions, if there are any.
std::string cautions_words(const Bundle& bundle)
{
    std::string text;
    for (const std::string& sentence : report::cautions(bundle)) {
        text += (text.empty() ? "Usual cautions; the maker's instructions and local rules go first: " : " ") +
                report::printable(sentence);
    }
    return text;
}

double scale_of(const Bundle& bundle, std::size_t step, const Form& form)
{
    double scale = 1;
    for (const View view : views) {
        const Frame frame = form.view(0, 0);
        scale = std::max(scale, fitting_scale(bundle, view, {frame.width, frame.height}, step));
    }
    return scale;
}

/// The one that shows the finished bundle larger.
Form form_for(const Bundle& bundle)
{
    const std::size_t last = bundle.steps.size();
    Form form = scale_of(bundle, last, upright) < scale_of(bundle, last, lying) ? upright : lying;
    double longest = 0;
    for (std::size_t i = 0; i < bundle.items.size(); ++i) {
        const auto extent = Canvas::extent(report::printable(spoken_name(bundle, i)), entry_style(true));
        form.row = std::max(form.row, extent.height + 0.3);
        longest = std::max(longest, extent.width);
    }
    while (form.columns > 1 && longest > form.name_width()) {
        --form.columns;
    }
    const std::string care = cautions_words(bundle);
    const double care_height = care.empty() ? 0 : Canvas::extent(care, small(form.inner())).height + 2;
    form.height = std::max(form.height, views_top + 4 + form.views_height + 2 + form.list_height(bundle.items.size()) +
                                            care_height + 3 + scale_bar + margin);
    return form;
}

std::string caption(View view)
{
    return view == View::cutaway ? "Cut open along A–A"
           : view == View::above ? "From above"
                                 : "Slanted, vessels see-through";
}

/// The text in one line of this width, its end cut off where it is too long.
std::string shortened(const std::string& text, const TextStyle& style, double room)
{
    std::string shorter = text;
    while (!shorter.empty() && Canvas::extent(shorter == text ? text : shorter + "…", style).width > room) {
        while ((static_cast<unsigned char>(shorter.back()) & 0xC0U) == 0x80U && shorter.size() > 1) { // within a letter
            shorter.pop_back();
        }
        shorter.pop_back();
    }
    return shorter == text ? text : shorter + "…";
}

class Sheets {
public:
    explicit Sheets(const Bundle& bundle)
        : bundle_(bundle), words_(step_texts(bundle)), form_(form_for(bundle)), canvas_({form_.width, form_.height})
    {
    }

    Canvas drawn()
    {
        for (std::size_t step = 0; step <= bundle_.steps.size(); ++step) {
            if (step > 0) {
                canvas_.add_page();
            }
            sheet(step);
        }
        return std::move(canvas_);
    }

private:
    void sheet(std::size_t step)
    {
        const bool done = step == bundle_.steps.size();
        const TextStyle heading{.size = 4.4, .bold = true, .color = ink};
        canvas_.write(shortened(step_title(bundle_, step), heading, form_.inner()), {margin, margin}, heading);
        const std::string text = done ? packed_words() : report::in_answer_units(words_[step], bundle_);
        const double room = form_.inner();
        TextStyle style{.size = 3.5, .color = ink, .wrap = room};
        while (Canvas::extent(text, style).height > 12 && style.size > 1) { // of long names
            style.size *= 0.9;
        }
        canvas_.write(report::printable(text), {margin, margin + 7}, style);
        constexpr double top = views_top;
        const double scale = scale_of(bundle_, step, form_);
        for (std::size_t k = 0; k < views.size(); ++k) {
            const Frame frame = form_.view(k, top + 4);
            canvas_.write(caption(views[k]), {frame.x, top}, {.size = 2.7, .italic = true, .color = ink});
            draw_view(canvas_, frame, bundle_, step, views[k], {.scale = scale});
        }
        const double foot = canvas_.size().height - margin - scale_bar;
        draw_scale_bar(canvas_, {margin, foot}, scale);
        if (done && !report::cautions(bundle_).empty()) {
            const double below = top + 4 + form_.views_height + 2 + form_.list_height(bundle_.items.size()) + 2;
            canvas_.write(cautions_words(bundle_), {margin, below}, small(form_.inner()));
        } else if (!done) {
            draw_legend(canvas_, {margin + 37, foot + 2});
        }
        list(step, top + 4 + form_.views_height + 2);
    }

    std::string packed_words() const
    {
        const Shape outer = outer_envelope(bundle_);
        std::string text =
            fmt::format("It is {}{}, {}, {}.", report::envelope_in_words(outer), bundle_.bag ? " in its bag" : "",
                        report::volume_in_words(volume_ml(outer), report::Rounding::up),
                        report::weight_in_words(total_weight_g(bundle_)));
        for (const std::string& step : report::cover_steps(bundle_)) {
            text += " " + step;
        }
        return text;
    }

    /// Numbers and names of all that is in the picture, down one column after the other.
    void list(std::size_t step, double top)
    {
        const drawing::Shown shown = drawing::shown_at(bundle_, step);
        std::vector<std::size_t> entries;
        for (std::size_t i = 0; i < bundle_.items.size(); ++i) {
            if (shown.there[i]) {
                entries.push_back(i);
            }
        }
        const std::size_t rows = (entries.size() + form_.columns - 1) / form_.columns;
        for (std::size_t k = 0; k < entries.size(); ++k) {
            const std::size_t i = entries[k];
            const TextStyle style = entry_style(shown.item == i);
            const double x = margin + form_.column() * static_cast<double>(k / rows),
                         y = top + form_.row * static_cast<double>(k % rows);
            canvas_.write(std::to_string(i + 1), {x, y}, entry_style(true));
            canvas_.write(shortened(report::printable(spoken_name(bundle_, i)), style, form_.name_width()),
                          {x + number_width, y}, style);
        }
    }

    const Bundle& bundle_;
    std::vector<std::string> words_;
    Form form_;
    Canvas canvas_;
};

} // namespace

std::string step_title(const Bundle& bundle, std::size_t step)
{
    const std::size_t steps = bundle.steps.size();
    const std::string which = step == steps ? "packed" : fmt::format("step {} of {}", step + 1, steps);
    return report::printable(bundle.kit) + ": " + which;
}

Canvas step_pictures(const Bundle& bundle) { return Sheets(bundle).drawn(); }

} // namespace tuckwright
