// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. Everything is a block whose height is known before it is drawn. The card is laid out with the largest drawings,
// and again with smaller ones until it takes two pages; then once more, now that the number of its pages is known.
#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "card/content.hpp"
#include "card/pictures.hpp"
#include "card/sheet.hpp"
#include "drawing/palette.hpp"
#include "tuckwright/card.hpp"

namespace tuckwright::card {

namespace {

/// How large everything is, mm.
struct Density {
    double picture; ///< height of a step's drawing
    double text;    ///< size of the letters
    double whole;   ///< height of the drawing of the whole
    bool details;   ///< of what is to be laid ready
};
constexpr std::array<Density, 8> densities{{{42, 3.5, 62, true}, {38, 3.5, 62, true}, {34, 3.5, 62, true},
                                            {36, 3.2, 58, true}, {32, 3.2, 58, true}, {28, 3.2, 54, true},
                                            {28, 3.2, 50, false}, {25, 3.1, 45, false}}};
constexpr std::size_t most_pages = 2;
constexpr std::size_t step_columns = 3, part_columns = 2;
using drawing::palette::ink, drawing::palette::faint;

PageSize size_of(Paper paper) { return paper == Paper::a4 ? PageSize{210, 297} : PageSize{215.9, 279.4}; }

std::string in_order(const std::vector<std::string>& names)
{
    std::string text;
    for (const std::string& name : names) {
        text += (text.empty() ? "" : " \u2192 ") + name;
    }
    return text;
}

/// The card with one density, all in blocks.
class Pages {
public:
    Pages(const Bundle& bundle, const Content& content, Paper paper, const Density& density, std::size_t pages)
        : bundle_(bundle), content_(content), paper_(size_of(paper)), density_(density), sheet_(paper_),
          plain_{.size = density.text, .color = ink}, bold_{.size = density.text, .bold = true, .color = ink}
    {
        sheet_.on_page = [this, pages](Canvas& canvas, std::size_t page) { foot(canvas, page, pages); };
        sheet_.on_page(sheet_.canvas(), 1);
        width_ = sheet_.width();
        sheet_.add(text_block(content.title, {.size = 7, .bold = true, .color = ink}, width_));
        sheet_.space(3);
        sheet_.add(overview());
        sheet_.add(heading("Lay ready"));
        std::vector<Block> parts;
        for (const Part& part : content.parts) {
            parts.push_back(part_block(part, sheet_.column(part_columns)));
        }
        sheet_.add_columns(parts, part_columns, 1.2);
        add_steps();
        add_end();
    }

    const Sheet& sheet() const { return sheet_; }

private:
    void foot(Canvas& canvas, std::size_t page, std::size_t pages) const
    {
        const std::string date = content_.date.empty() ? "" : "   Made " + content_.date + ".";
        canvas.write(fmt::format("{}{}   Page {} of {}.", proof_line(content_), date, page, pages),
                     {Sheet::margin, paper_.height - Sheet::margin - Sheet::foot + 1},
                     {.size = 2.8, .color = faint, .wrap = paper_.width - 2 * Sheet::margin});
    }

    Block heading(const std::string& text) const
    {
        Block words = text_block(text, {.size = 4.4, .bold = true, .color = ink}, width_);
        constexpr double line = 2.5, above = 4, below = 1.5;
        return {above + words.height + below, [words, width = width_](Canvas& canvas, Spot corner) {
                    const double y = corner.y + line;
                    canvas.draw(Path::line({corner.x, y}, {corner.x + width, y}), Pen{faint, 0.2});
                    words.draw(canvas, {corner.x, corner.y + above});
                }};
    }

    /// A square to tick, numbers and name, the weight at the right, and the details below.
    Block part_block(const Part& part, double width) const
    {
        constexpr double tick = 3, indent = 4.6, gap = 1.4;
        const std::string weight = part.copies > 1 ? fmt::format("{} \u00D7 {}", part.copies, part.weight) : part.weight;
        const double weight_width = Canvas::extent(weight, plain_).width;
        const double begin = indent + (part.numbers.empty() ? 0 : Canvas::extent(part.numbers, bold_).width + gap);
        const Block name = text_block(part.name, plain_, width - begin - weight_width - gap);
        const TextStyle small{.size = 0.9 * density_.text, .color = ink};
        const Block details = part.details.empty() || !density_.details ? Block{} : text_block(part.details, small, width - indent);
        return {name.height + details.height, [=, bold = bold_, plain = plain_](Canvas& canvas, Spot corner) {
                    canvas.draw(Path::rectangle({corner.x, corner.y + 0.7, tick, tick}), Pen{ink, 0.25});
                    canvas.write(part.numbers, {corner.x + indent, corner.y}, bold);
                    name.draw(canvas, {corner.x + begin, corner.y});
                    canvas.write(weight, {corner.x + width - weight_width, corner.y}, plain);
                    if (details.draw) {
                        details.draw(canvas, {corner.x + indent, corner.y + name.height});
                    }
                }};
    }

    /// A drawing with its number, and the sentence below.
    Block step_block(const Step& step, std::size_t number, double width) const
    {
        const Block words = text_block(step.text, plain_, width);
        constexpr double gap = 1.5, badge = 3.2;
        const double height = density_.picture;
        return {height + gap + words.height, [=, this](Canvas& canvas, Spot corner) {
                    draw_step(canvas, {corner.x, corner.y, width, height}, bundle_, step.step);
                    const Spot middle{corner.x + badge, corner.y + badge};
                    const TextStyle digits{.size = 3.8, .bold = true, .color = drawing::palette::paper};
                    const std::string text = std::to_string(number);
                    const TextExtent extent = Canvas::extent(text, digits);
                    canvas.draw(Path::circle(middle, badge), std::nullopt, Fill{ink});
                    canvas.write(text, {middle.x - extent.width / 2, middle.y - extent.height / 2}, digits);
                    words.draw(canvas, {corner.x, corner.y + height + gap});
                }};
    }

    /// Sentences in a frame that is seen even where nothing else is read.
    Block cautions_block() const
    {
        constexpr double inset = 3;
        std::vector<Block> lines{
            text_block("Usual cautions; the maker's instructions and local rules go first", bold_, width_ - 2 * inset)};
        for (const std::string& caution : content_.cautions) {
            lines.push_back(text_block("\u2013 " + caution, plain_, width_ - 2 * inset));
        }
        const Block all = stacked(lines, 0.8);
        return {all.height + 2 * inset, [all, width = width_](Canvas& canvas, Spot corner) {
                    canvas.draw(Path::rectangle({corner.x, corner.y, width, all.height + 2 * inset}), Pen{ink, 0.6});
                    all.draw(canvas, {corner.x + inset, corner.y + inset});
                }};
    }

    Block fact(const std::string& name, const std::string& value, double width) const
    {
        constexpr double beside = 18;
        const Block words = text_block(value, plain_, width - beside);
        return {words.height, [=, bold = bold_](Canvas& canvas, Spot corner) {
                    canvas.write(name, corner, bold);
                    words.draw(canvas, {corner.x + beside, corner.y});
                }};
    }

    /// The picture of the whole, and the figures beside it.
    Block overview() const
    {
        constexpr double gap = 5;
        const double side = density_.whole, width = width_ - side - gap;
        std::vector<Block> lines{fact("Size", content_.size, width), fact("Volume", content_.volume, width),
                                 fact("Weight", content_.weight, width), fact("Code", content_.code, width)};
        for (const std::string& note : content_.notes) {
            lines.push_back(text_block(note, plain_, width));
        }
        const Block facts = stacked(lines, 1.4);
        return {std::max(side, facts.height), [=, this](Canvas& canvas, Spot corner) {
                    draw_whole(canvas, {corner.x, corner.y, side, side}, bundle_);
                    facts.draw(canvas, {corner.x + side + gap, corner.y});
                }};
    }

    void add_steps()
    {
        std::vector<Block> notes{heading("Put together")};
        for (const std::string& note : content_.before) {
            notes.push_back(text_block(note, plain_, width_));
        }
        const Block start = stacked(notes, 1.5);
        sheet_.keep_together(start.height + density_.picture + 5 * density_.text); // with the first row
        sheet_.add(start);
        sheet_.space(2);
        std::vector<Block> row;
        for (std::size_t i = 0; i < content_.steps.size(); ++i) {
            row.push_back(step_block(content_.steps[i], i + 1, sheet_.column(step_columns)));
            if (row.size() == step_columns || i + 1 == content_.steps.size()) {
                sheet_.add_row(row, step_columns);
                sheet_.space(2.5);
                row.clear();
            }
        }
    }

    void add_end()
    {
        if (content_.unpacking.size() > 1) {
            sheet_.add(stacked({heading("Comes out in this order"),
                                text_block(in_order(content_.unpacking), plain_, width_)},
                               0));
        }
        if (!content_.cautions.empty()) {
            sheet_.space(3);
            sheet_.add(cautions_block());
        }
    }

    const Bundle& bundle_;
    const Content& content_;
    PageSize paper_;
    Density density_;
    Sheet sheet_;
    TextStyle plain_, bold_;
    double width_ = 0;
};

} // namespace

} // namespace tuckwright::card

namespace tuckwright {

std::string card_pdf(const Bundle& bundle, const CardOptions& options)
{
    const card::Content content = card::content_of(bundle, options.date);
    card::Density density = card::densities.back();
    std::size_t pages = 0;
    for (const card::Density& tried : card::densities) {
        density = tried;
        pages = card::Pages(bundle, content, options.paper, density, card::most_pages).sheet().pages();
        if (pages <= card::most_pages) {
            break;
        }
    }
    const card::Pages card(bundle, content, options.paper, density, pages);
    return card.sheet().canvas().pdf({.title = content.title, .date = {}});
}

} // namespace tuckwright
