// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. Everything is a block whose height is known before it is drawn. With the largest letters first, the rows of steps
// are shared out between two pages so that the smaller of their drawings are as large as may be, and each page's drawings
// take what room it has; where they would be too small, once more with smaller letters. Then the card is laid out again, now
// that the number of its pages is known.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <numeric>

#include "card/content.hpp"
#include "card/pictures.hpp"
#include "card/sheet.hpp"
#include "drawing/palette.hpp"
#include "tuckwright/card.hpp"

namespace tuckwright::card {

namespace {

/// How large everything is, mm.
struct Density {
    double picture; ///< least height of a step's drawing
    double text;    ///< size of the letters
    double whole;   ///< height of the drawing of the whole
    bool details;   ///< of what is to be laid ready
};
constexpr std::array<Density, 5> densities{
    {{34, 3.5, 62, true}, {30, 3.2, 58, true}, {27, 3.2, 54, true}, {26, 3.2, 50, false}, {24, 3.1, 45, false}}};
constexpr double largest_picture = 50, largest_whole = 92; ///< mm
constexpr double comfortable_picture = 38;                 ///< mm: from that on, one page will do
constexpr std::size_t most_pages = 2;
constexpr std::size_t step_columns = 3, part_columns = 2;
using drawing::palette::ink, drawing::palette::faint;

/// How the rows of steps are shared out.
struct Plan {
    std::size_t rows = 0;         ///< on the first page
    double first = 0, second = 0; ///< heights of their drawings there, and on the next page
    double spare = 0;             ///< mm that stay white on the first page, with drawings as large as they get
    double least() const { return std::min(first, second); }
};

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
    Pages(const Bundle& bundle, const Content& content, Paper paper, const Density& density, std::size_t pages,
          bool is_dry)
        : bundle_(bundle), content_(content), paper_(size_of(paper)), density_(density), sheet_(paper_, is_dry),
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
        plan_ = planned();
        add_steps();
        add_end();
    }

    const Sheet& sheet() const { return sheet_; }
    double spare() const { return plan_.spare; }
    /// Whether as many rows stand on the first page, in drawings no smaller than those of another layout.
    bool first_rows_as_large_as(const Pages& other) const
    {
        return plan_.rows == other.plan_.rows && plan_.first > other.plan_.first - rounding;
    }
    /// Whether all goes onto two pages, in drawings that are large enough.
    bool is_good() const { return sheet_.pages() <= most_pages && plan_.least() >= density_.picture; }

private:
    void foot(Canvas& canvas, std::size_t page, std::size_t pages) const
    {
        const std::string date = content_.date.empty() ? "" : "   Made " + content_.date + ".";
        const std::string title = page > 1 ? content_.title + ".   " : ""; // where sheets come apart
        canvas.write(fmt::format("{}{}{}   Page {} of {}.", title, proof_line(content_), date, page, pages),
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
    Block step_block(const Step& step, std::size_t number, double height) const
    {
        const double width = sheet_.column(step_columns);
        const Block words = text_block(step.text, plain_, width);
        constexpr double gap = above_words;
        return {height + gap + words.height, [=, this](Canvas& canvas, Spot corner) {
                    draw_step(canvas, {corner.x, corner.y, width, height}, bundle_, step);
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

    /// What comes before the first row.
    Block start() const
    {
        std::vector<Block> notes{heading("Put together")};
        for (const std::string& note : content_.before) {
            notes.push_back(text_block(note, plain_, width_));
        }
        return stacked(notes, 1.5);
    }

    /// What comes after the last row.
    std::vector<Block> end() const
    {
        std::vector<Block> blocks;
        if (content_.unpacking.size() > 1) {
            blocks.push_back(stacked(
                {heading("Comes out in this order"), text_block(in_order(content_.unpacking), plain_, width_)}, 0));
        }
        if (!content_.cautions.empty()) {
            blocks.push_back(cautions_block());
        }
        return blocks;
    }

    /// mm that a row of steps takes besides its drawings.
    std::vector<double> rows_without_drawings() const
    {
        std::vector<double> rows;
        for (std::size_t i = 0; i < content_.steps.size(); i += step_columns) {
            double most = 0;
            for (std::size_t k = i; k < std::min(i + step_columns, content_.steps.size()); ++k) {
                most = std::max(most, step_block(content_.steps[k], k + 1, 0).height);
            }
            rows.push_back(most + below_row);
        }
        return rows;
    }

    /// Shares the rows out, now that what stands above them has been drawn. Where that takes more than a page, all have the
    /// least height.
    Plan planned() const
    {
        const auto rows = rows_without_drawings();
        const double head = start().height + below_start;
        double tail = 0;
        for (const Block& block : end()) {
            tail += block.height + above_end;
        }
        Plan best{0, density_.picture, density_.picture};
        double most = 0;
        for (std::size_t k = rows.size() + 1; k-- > 0 && sheet_.pages() == 1;) { // more on the first page goes before
            const auto middle = rows.begin() + static_cast<std::ptrdiff_t>(k);
            double on_first = sheet_.room() - std::accumulate(rows.begin(), middle, head);
            const double on_second =
                sheet_.page_room() - std::accumulate(middle, rows.end(), tail + (k == 0 ? head : 0));
            if (k == rows.size() && (on_first - tail) / static_cast<double>(k) >= comfortable_picture) {
                on_first -= tail; // all on one page
            }
            const auto height = [](double room, std::size_t count) {
                return count == 0 ? largest_picture
                                  : std::min(largest_picture, room / static_cast<double>(count) - rounding);
            };
            Plan plan{k, height(on_first, k), height(on_second, rows.size() - k)};
            plan.spare = std::max(0.0, on_first - static_cast<double>(k) * plan.first);
            if (plan.least() > most) {
                most = plan.least();
                best = plan;
            }
        }
        return best;
    }

    void add_steps()
    {
        const auto picture_in = [&](std::size_t row) {
            return std::max(row < plan_.rows ? plan_.first : plan_.second, density_.picture);
        };
        const Block before = start();
        const auto rows = rows_without_drawings();
        const double first_row = rows.empty() ? 0 : rows.front() - below_row + picture_in(0);
        sheet_.keep_together(before.height + below_start + first_row);
        sheet_.add(before);
        sheet_.space(below_start);
        std::vector<Block> row;
        for (std::size_t i = 0; i < content_.steps.size(); ++i) {
            row.push_back(step_block(content_.steps[i], i + 1, picture_in(i / step_columns)));
            if (row.size() == step_columns || i + 1 == content_.steps.size()) {
                sheet_.add_row(row, step_columns);
                sheet_.space(below_row);
                row.clear();
            }
        }
    }

    void add_end()
    {
        for (const Block& block : end()) {
            sheet_.space(above_end);
            sheet_.add(block);
        }
    }

    static constexpr double above_words = 1.5, below_row = 2.5, below_start = 2, above_end = 3, rounding = 0.01; ///< mm
    const Bundle& bundle_;
    const Content& content_;
    PageSize paper_;
    Density density_;
    Sheet sheet_;
    TextStyle plain_, bold_;
    double width_ = 0;
    Plan plan_;
};

/// What stays white on the first page goes to the drawing of the whole, as long as all else stays as good.
void enlarge_whole(const Bundle& bundle, const Content& content, Paper paper, Density& density, std::size_t pages)
{
    if (pages > most_pages) {
        return;
    }
    const Pages before(bundle, content, paper, density, pages, true);
    if (before.spare() < 1) {
        return;
    }
    // Beside the drawing stand words, which may be higher than it is: then it can grow by more than what is white.
    Density larger = density;
    for (larger.whole = largest_whole; larger.whole > density.whole + 1; larger.whole -= 3) {
        const Pages card(bundle, content, paper, larger, pages, true);
        if (card.is_good() && card.sheet().pages() == pages && card.first_rows_as_large_as(before)) {
            density = larger;
            return;
        }
    }
}

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
        const card::Pages card(bundle, content, options.paper, density, card::most_pages, true);
        pages = card.sheet().pages();
        if (card.is_good()) {
            break;
        }
    }
    card::enlarge_whole(bundle, content, options.paper, density, pages);
    const card::Pages card(bundle, content, options.paper, density, pages, false);
    return card.sheet().canvas().pdf({.title = content.title, .date = {}});
}

} // namespace tuckwright
