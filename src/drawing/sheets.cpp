// SPDX-License-Identifier: GPL-3.0-or-later
// A page for each step: its words, three views, and the list of what can be seen.
#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "drawing/palette.hpp"
#include "drawing/shown.hpp"
#include "report/words.hpp"
#include "tuckwright/drawing.hpp"
#include "tuckwright/report.hpp"

namespace tuckwright {

namespace {

constexpr double margin = 6, gap = 2, row = 3.7, scale_bar = 6.5; ///< mm
constexpr Color ink = drawing::palette::ink;
constexpr std::array<View, 3> views{View::cutaway, View::above, View::slanted};

/// Half a sheet of A4, lying or upright: higher if a long list needs it.
struct Form {
    double width, height;
    std::size_t columns;
    double views_height;

    double inner() const { return width - 2 * margin; }
    Frame view(std::size_t k, double top) const
    {
        const double each = (inner() - 2 * gap) / 3;
        return {margin + static_cast<double>(k) * (each + gap), top, each, views_height};
    }
    double list_height(std::size_t entries) const
    {
        return row * static_cast<double>((entries + columns - 1) / columns);
    }
};

constexpr Form lying{210, 148, 4, 82}, upright{148, 210, 3, 136};

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
    form.height = std::max(form.height, 43 + form.views_height + form.list_height(bundle.items.size()));
    return form;
}

std::string caption(View view)
{
    return view == View::cutaway ? "Cut open along A–A" : view == View::above ? "From above" : "Slanted, vessels see-through";
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
    explicit Sheets(const Bundle& bundle) : bundle_(bundle), words_(step_texts(bundle)), form_(form_for(bundle)), canvas_({form_.width, form_.height}) {}

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
        const std::size_t steps = bundle_.steps.size();
        const bool done = step == steps;
        const std::string title = fmt::format("{}: {}", bundle_.kit, done ? "packed" : fmt::format("step {} of {}", step + 1, steps));
        const TextStyle heading{.size = 4.4, .bold = true, .color = ink};
        canvas_.write(shortened(report::printable(title), heading, form_.inner()), {margin, margin}, heading);
        const std::string text = done ? packed_words() : words_[step];
        const double room = form_.inner();
        TextStyle style{.size = 3.5, .color = ink, .wrap = room};
        while (Canvas::extent(text, style).height > 12 && style.size > 1) { // of long names
            style.size *= 0.9;
        }
        canvas_.write(report::printable(text), {margin, margin + 7}, style);
        constexpr double top = margin + 20;
        const double scale = scale_of(bundle_, step, form_);
        for (std::size_t k = 0; k < views.size(); ++k) {
            const Frame frame = form_.view(k, top + 4);
            canvas_.write(caption(views[k]), {frame.x, top}, {.size = 2.7, .italic = true, .color = ink});
            draw_view(canvas_, frame, bundle_, step, views[k], {.scale = scale});
        }
        const double foot = canvas_.size().height - margin - scale_bar;
        draw_scale_bar(canvas_, {margin, foot}, scale);
        if (!done) {
            draw_legend(canvas_, {margin + 37, foot + 2});
        }
        list(step, top + 4 + form_.views_height + 2);
    }

    std::string packed_words() const
    {
        const Shape outer = outer_envelope(bundle_);
        return fmt::format("It is {}, {}, {}.", report::envelope_in_words(outer),
                           report::volume_in_words(volume_ml(outer), report::Rounding::up),
                           report::weight_in_words(total_weight_g(bundle_)));
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
        const double each = form_.inner() / static_cast<double>(form_.columns);
        for (std::size_t k = 0; k < entries.size(); ++k) {
            const std::size_t i = entries[k];
            const bool now = shown.item == i;
            const TextStyle style{.size = 2.7, .bold = now, .color = ink};
            const double x = margin + each * static_cast<double>(k / rows), y = top + row * static_cast<double>(k % rows);
            canvas_.write(std::to_string(i + 1), {x, y}, {.size = 2.7, .bold = true, .color = ink});
            canvas_.write(shortened(report::printable(spoken_name(bundle_, i)), style, each - 9), {x + 6, y}, style);
        }
    }

    const Bundle& bundle_;
    std::vector<std::string> words_;
    Form form_;
    Canvas canvas_;
};

} // namespace

Canvas step_pictures(const Bundle& bundle) { return Sheets(bundle).drawn(); }

} // namespace tuckwright
