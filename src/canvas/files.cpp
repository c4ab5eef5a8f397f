// SPDX-License-Identifier: GPL-3.0-or-later
// The same marks as a file of each kind.
#include <cairo-pdf.h>
#include <cairo-svg.h>

#include <cmath>
#include <functional>

#include "canvas/paint.hpp"
#include "canvas/svg_text.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright {

namespace {

using Surface = std::unique_ptr<cairo_surface_t, void (*)(cairo_surface_t*)>;
using Context = std::unique_ptr<cairo_t, void (*)(cairo_t*)>;

constexpr double points_per_mm = 72 / 25.4;

cairo_status_t append(void* text, const unsigned char* bytes, unsigned count)
{
    static_cast<std::string*>(text)->append(reinterpret_cast<const char*>(bytes), count);
    return CAIRO_STATUS_SUCCESS;
}

void require_sound(cairo_status_t status) { require(status == CAIRO_STATUS_SUCCESS, cairo_status_to_string(status)); }

Surface owned(cairo_surface_t* surface)
{
    Surface mine(surface, cairo_surface_destroy);
    require_sound(cairo_surface_status(surface));
    return mine;
}

void paint_page(const Surface& surface, const canvas::Page& page, double units_per_mm)
{
    const Context to(cairo_create(surface.get()), cairo_destroy);
    cairo_scale(to.get(), units_per_mm, units_per_mm);
    canvas::paint(to.get(), page);
    require_sound(cairo_status(to.get()));
}

void finish(const Surface& surface)
{
    cairo_surface_finish(surface.get());
    require_sound(cairo_surface_status(surface.get()));
}

} // namespace

std::string Canvas::svg(std::size_t page, const std::string& id_prefix, const std::string& title) const
{
    require(page < pages() && content_->clips == 0, "the page is there and its clips are ended");
    std::string text;
    const PageSize mm = size();
    const Surface surface = owned(cairo_svg_surface_create_for_stream(append, &text, mm.width * canvas::text_units,
                                                                      mm.height * canvas::text_units));
    cairo_svg_surface_restrict_to_version(surface.get(), CAIRO_SVG_VERSION_1_2);
    cairo_svg_surface_set_document_unit(surface.get(), CAIRO_SVG_UNIT_PX);
    paint_page(surface, content_->pages[page], canvas::text_units);
    finish(surface);
    return canvas::tidied_svg(text, mm, id_prefix, title);
}

std::string Canvas::pdf(const DocumentInfo& info) const
{
    require(content_->clips == 0, "clips are ended");
    std::string text;
    const PageSize mm = size();
    const Surface surface =
        owned(cairo_pdf_surface_create_for_stream(append, &text, mm.width * points_per_mm, mm.height * points_per_mm));
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, info.title.c_str());
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, info.date.c_str());
    for (const auto& page : content_->pages) {
        paint_page(surface, page, points_per_mm);
        cairo_surface_show_page(surface.get());
    }
    finish(surface);
    return text;
}

std::string Canvas::png(std::size_t page, double dots_per_inch) const
{
    require(page < pages() && content_->clips == 0, "the page is there and its clips are ended");
    require(dots_per_inch >= 10 && dots_per_inch <= 1200, "a picture has 10 to 1200 dots an inch");
    const double dots = dots_per_inch / 25.4;
    const auto whole = [&](double mm) { return static_cast<int>(std::ceil(mm * dots - 1e-6)); };
    const Surface surface =
        owned(cairo_image_surface_create(CAIRO_FORMAT_RGB24, whole(size().width), whole(size().height)));
    {
        const Context ground(cairo_create(surface.get()), cairo_destroy);
        cairo_set_source_rgb(ground.get(), 1, 1, 1);
        cairo_paint(ground.get());
    }
    paint_page(surface, content_->pages[page], dots);
    std::string text;
    require_sound(cairo_surface_write_to_png_stream(surface.get(), append, &text));
    return text;
}

} // namespace tuckwright
