// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. Everything is a block whose height is known before it is drawn. The card is laid out with the largest drawings,
// and again with smaller ones until it takes two pages; then once more, now that the number of its pages is known.
#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "card/content.hpp"
#include "card/pictures.hpp"
#include "card/sheet.hpp"
#include "tuckwright/card.hpp"

namespace tuckwright::card {

namespace {

constexpr std::array<double, 5> picture_heights{44, 39, 34, 29, 25}; ///< mm
constexpr std::size_t most_pages = 2;
constexpr std::size_t step_columns = 3, part_columns = 2;
constexpr Color ink{0.1, 0.1, 0.1}, faint{0.45, 0.45, 0.45};
const TextStyle text_style{.size = 3.5, .color = ink}, small_style{.size = 3.1, .color = ink};

PageSize size_of(Paper paper) { return paper == Paper::a4 ? PageSize{210, 297} : PageSize{215.9, 279.4}; }

Block heading(const std::string& text, double width)
{
    Block words = text_block(text, {.size = 4.4, .bold = true, .color = ink}, width);
    constexpr double above = 4, below = 1.5;
    return {above + words.height + below, [words, width](Canvas& canvas, Spot corner) {
                canvas.draw(Path::line({corner.x, corner.y + above - 1.5}, {corner.x + width, corner.y + above - 1.5}),
                            Pen{faint, 0.2});
                words.draw(canvas, {corner.x, corner.y + above});
            }};
}

/// A square to tick, the name, the weight at the right, and the details below.
Block part_block(const Part& part, double width)
{
    constexpr double tick = 3, indent = 4.6;
    const std::string weight = part.copies > 1 ? fmt::format("{} × {}", part.copies, part.weight) : part.weight;
    const double weight_width = Canvas::extent(weight, text_style).width;
    const Block name = text_block(part.name, text_style, width - indent - weight_width - 2);
    const bool has_details = !part.details.empty();
    const Block details = has_details ? text_block(part.details, small_style, width - indent) : Block{};
    return {name.height + details.height, [=](Canvas& canvas, Spot corner) {
                canvas.draw(Path::rectangle({corner.x, corner.y + 0.7, tick, tick}), Pen{ink, 0.25});
                name.draw(canvas, {corner.x + indent, corner.y});
                canvas.write(weight, {corner.x + width - weight_width, corner.y}, text_style);
                if (has_details) {
                    details.draw(canvas, {corner.x + indent, corner.y + name.height});
                }
            }};
}

/// A drawing with its number, and the sentence below.
Block step_block(const Bundle& bundle, const Step& step, std::size_t number, double width, double height)
{
    const Block words = text_block(step.text, text_style, width);
    constexpr double gap = 1.5, badge = 3.2;
    return {height + gap + words.height, [=, &bundle](Canvas& canvas, Spot corner) {
                draw_step(canvas, {corner.x, corner.y, width, height}, bundle, step.step);
                const Spot middle{corner.x + badge, corner.y + badge};
                const TextStyle digits{.size = 3.8, .bold = true, .color = {1, 1, 1}};
                const std::string text = std::to_string(number);
                const TextExtent extent = Canvas::extent(text, digits);
                canvas.draw(Path::circle(middle, badge), std::nullopt, Fill{ink});
                canvas.write(text, {middle.x - extent.width / 2, middle.y - extent.height / 2}, digits);
                words.draw(canvas, {corner.x, corner.y + height + gap});
            }};
}

/// Sentences in a frame that is seen even where nothing else is read.
Block cautions_block(const std::vector<std::string>& cautions, double width)
{
    constexpr double inset = 3;
    std::vector<Block> lines{text_block("Usual cautions; the maker's instructions and local rules go first",
                                        {.size = 3.8, .bold = true, .color = ink}, width - 2 * inset)};
    for (const std::string& caution : cautions) {
        lines.push_back(text_block("– " + caution, text_style, width - 2 * inset));
    }
    const Block all = stacked(lines, 0.8);
    return {all.height + 2 * inset, [=](Canvas& canvas, Spot corner) {
                canvas.draw(Path::rectangle({corner.x, corner.y, width, all.height + 2 * inset}), Pen{ink, 0.6});
                all.draw(canvas, {corner.x + inset, corner.y + inset});
            }};
}

/// The picture of the whole, and the figures beside it.
Block overview(const Bundle& bundle, const Content& content, double width)
{
    constexpr double side = 62, gap = 5;
    const double beside = width - side - gap;
    std::vector<Block> lines;
    const auto fact = [&](const std::string& name, const std::string& value) {
        const Block value_block = text_block(value, text_style, beside - 22);
        lines.push_back({value_block.height, [=](Canvas& canvas, Spot corner) {
                             canvas.write(name, corner, {.size = text_style.size, .bold = true, .color = ink});
                             value_block.draw(canvas, {corner.x + 22, corner.y});
                         }});
    };
    fact("Size", content.size);
    fact("Volume", content.volume);
    fact("Weight", content.weight);
    fact("Code", content.code);
    for (const std::string& note : content.notes) {
        lines.push_back(text_block(note, text_style, beside));
    }
    const Block facts = stacked(lines, 1.6);
    return {std::max(side, facts.height), [=, &bundle](Canvas& canvas, Spot corner) {
                draw_whole(canvas, {corner.x, corner.y, side, side}, bundle);
                facts.draw(canvas, {corner.x + side + gap, corner.y});
            }};
}

std::string in_order(const std::vector<std::string>& names)
{
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        text += fmt::format("{}{}\u00A0{}", i == 0 ? "" : "   ", i + 1, names[i]);
    }
    return text;
}

void add_steps(Sheet& sheet, const Bundle& bundle, const Content& content, double picture_height)
{
    std::vector<Block> cells;
    for (std::size_t i = 0; i < content.steps.size(); ++i) {
        cells.push_back(step_block(bundle, content.steps[i], i + 1, sheet.column(step_columns), picture_height));
    }
    for (std::size_t i = 0; i < cells.size(); i += step_columns) {
        const auto begin = cells.begin() + static_cast<std::ptrdiff_t>(i);
        const auto end = begin + static_cast<std::ptrdiff_t>(std::min(step_columns, cells.size() - i));
        sheet.add_row({begin, end}, step_columns);
        sheet.space(3);
    }
}

Sheet laid_out(const Bundle& bundle, const Content& content, Paper paper, double picture_height, std::size_t pages)
{
    Sheet sheet(size_of(paper));
    const PageSize size = size_of(paper);
    sheet.on_page = [&content, size, pages](Canvas& canvas, std::size_t page) {
        const std::string text = fmt::format("{}{}   page {} of {}", proof_line(content),
                                             content.date.empty() ? "" : "   " + content.date, page, pages);
        canvas.write(text, {Sheet::margin, size.height - Sheet::margin - Sheet::foot + 1},
                     {.size = 2.8, .color = faint, .wrap = size.width - 2 * Sheet::margin});
    };
    sheet.on_page(sheet.canvas(), 1);
    const double width = sheet.width();
    sheet.add(text_block(content.title, {.size = 7, .bold = true, .color = ink}, width));
    sheet.space(3);
    sheet.add(overview(bundle, content, width));
    sheet.add(heading("Lay ready", width));
    std::vector<Block> parts;
    for (const Part& part : content.parts) {
        parts.push_back(part_block(part, sheet.column(part_columns)));
    }
    sheet.add_columns(parts, part_columns, 1.2);
    const Block title = heading("Put together", width);
    sheet.keep_together(title.height + picture_height + 20);
    sheet.add(title);
    for (const std::string& note : content.before) {
        sheet.add(text_block(note, text_style, width));
        sheet.space(2);
    }
    add_steps(sheet, bundle, content, picture_height);
    if (content.unpacking.size() > 1) {
        sheet.add(stacked({heading("Comes out in this order", width), text_block(in_order(content.unpacking), text_style, width)}, 0));
    }
    if (!content.cautions.empty()) {
        sheet.space(4);
        sheet.add(cautions_block(content.cautions, width));
    }
    return sheet;
}

} // namespace

} // namespace tuckwright::card

namespace tuckwright {

std::string card_pdf(const Bundle& bundle, const CardOptions& options)
{
    const card::Content content = card::content_of(bundle, options.date);
    for (const double height : card::picture_heights) {
        const std::size_t pages = card::laid_out(bundle, content, options.paper, height, card::most_pages).pages();
        if (pages <= card::most_pages || height == card::picture_heights.back()) {
            return card::laid_out(bundle, content, options.paper, height, pages).canvas().pdf({.title = content.title, .date = {}});
        }
    }
    return {};
}

} // namespace tuckwright
