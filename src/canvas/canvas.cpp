// SPDX-License-Identifier: GPL-3.0-or-later
#include "tuckwright/canvas.hpp"

#include "canvas/marks.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright {

Canvas::Canvas(PageSize size) : content_(std::make_unique<Content>())
{
    require(size.width >= 1 && size.width <= 5000 && size.height >= 1 && size.height <= 5000,
            "a page's sides are 1 to 5000 mm");
    content_->size = size;
}

Canvas::~Canvas() = default;
Canvas::Canvas(Canvas&&) noexcept = default;
Canvas& Canvas::operator=(Canvas&&) noexcept = default;

PageSize Canvas::size() const { return content_->size; }

std::size_t Canvas::pages() const { return content_->pages.size(); }

void Canvas::add_page()
{
    require(content_->clips == 0, "clips end on the page on which they begin");
    content_->pages.emplace_back();
}

void Canvas::draw(const Path& path, const std::optional<Pen>& pen, const std::optional<Fill>& fill)
{
    if (!path.empty() && (pen || fill)) {
        content_->pages.back().push_back(canvas::Stroke{path, pen, fill});
    }
}

void Canvas::begin_clip(const Path& path)
{
    content_->pages.back().push_back(canvas::ClipBegin{path});
    ++content_->clips;
}

void Canvas::end_clip()
{
    require(content_->clips > 0, "a clip has been begun on this page");
    content_->pages.back().push_back(canvas::ClipEnd{});
    --content_->clips;
}

TextExtent Canvas::write(std::string_view text, Spot corner, const TextStyle& style)
{
    const auto layout = canvas::set_in_lines(text, style);
    content_->pages.back().push_back(canvas::Writing{layout, corner, style.color});
    return layout.extent;
}

} // namespace tuckwright
