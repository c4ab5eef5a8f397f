// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/text.hpp"

#include <pango/pangocairo.h>

#include <algorithm>
#include <string>

#include "tuckwright/contract.hpp"

#if defined(__SANITIZE_ADDRESS__)
/// The font library keeps what it has read of the system's fonts until the end, and then does not free it.
extern "C" const char* __lsan_default_suppressions() { return "leak:libfontconfig\n"; }
/// And nothing is said of that, for standard error belongs to the program.
extern "C" const char* __lsan_default_options() { return "print_suppressions=0"; }
#endif

namespace tuckwright::canvas {

namespace {

constexpr const char* family = "sans-serif";

/// Something of GLib's that is counted.
template <class T> std::shared_ptr<T> counted(T* object)
{
    require(object != nullptr, "the text library has memory for its objects");
    return {object, [](T* mine) { g_object_unref(mine); }};
}

/// The same on every screen: no hinting, no rounding to dots, no language of the user's.
std::shared_ptr<PangoContext> context()
{
    const auto made = counted(pango_font_map_create_context(pango_cairo_font_map_get_default()));
    const std::unique_ptr<cairo_font_options_t, void (*)(cairo_font_options_t*)> options(cairo_font_options_create(),
                                                                                         cairo_font_options_destroy);
    cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
    pango_cairo_context_set_font_options(made.get(), options.get());
    pango_cairo_context_set_resolution(made.get(), 72);
    pango_context_set_round_glyph_positions(made.get(), FALSE);
    pango_context_set_language(made.get(), pango_language_from_string("en"));
    return made;
}

std::unique_ptr<PangoFontDescription, void (*)(PangoFontDescription*)> font(const TextStyle& style)
{
    std::unique_ptr<PangoFontDescription, void (*)(PangoFontDescription*)> wanted(pango_font_description_new(),
                                                                                  pango_font_description_free);
    pango_font_description_set_family(wanted.get(), family);
    pango_font_description_set_absolute_size(wanted.get(), style.size * text_units * PANGO_SCALE);
    pango_font_description_set_weight(wanted.get(), style.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
    pango_font_description_set_style(wanted.get(), style.italic ? PANGO_STYLE_ITALIC : PANGO_STYLE_NORMAL);
    return wanted;
}

PangoAlignment alignment(Align align)
{
    return align == Align::left ? PANGO_ALIGN_LEFT : align == Align::middle ? PANGO_ALIGN_CENTER : PANGO_ALIGN_RIGHT;
}

/// The extent of what has been set, ink that hangs over included.
void measure(Layout& layout)
{
    PangoRectangle ink, logical;
    pango_layout_get_extents(layout.lines.get(), &ink, &logical);
    if (ink.width == 0 || ink.height == 0) {
        ink = logical;
    }
    const int left = std::min(ink.x, logical.x), top = std::min(ink.y, logical.y);
    const int right = std::max(ink.x + ink.width, logical.x + logical.width);
    const int bottom = std::max(ink.y + ink.height, logical.y + logical.height);
    const auto mm = [](int units) { return units / (text_units * PANGO_SCALE); };
    layout.origin = {-mm(left), -mm(top)};
    layout.extent = {mm(right - left), mm(bottom - top), mm(pango_layout_get_baseline(layout.lines.get()) - top),
                     pango_layout_get_line_count(layout.lines.get())};
}

} // namespace

Layout set_in_lines(std::string_view text, const TextStyle& style)
{
    require(style.size > 0 && style.size < 1000 && style.wrap >= 0, "text has a size in mm and a width");
    const auto where = context();
    Layout layout{counted(pango_layout_new(where.get())), {}, {}};
    PangoLayout* const lines = layout.lines.get();
    pango_layout_set_font_description(lines, font(style).get());
    const std::unique_ptr<char, void (*)(void*)> valid(g_utf8_make_valid(text.data(), static_cast<gssize>(text.size())),
                                                       g_free);
    pango_layout_set_text(lines, valid.get(), -1);
    pango_layout_set_alignment(lines, alignment(style.align));
    if (style.wrap > 0) {
        pango_layout_set_width(lines, static_cast<int>(style.wrap * text_units * PANGO_SCALE));
        pango_layout_set_wrap(lines, PANGO_WRAP_WORD_CHAR);
    }
    measure(layout);
    return layout;
}

} // namespace tuckwright::canvas

namespace tuckwright {

TextExtent Canvas::extent(std::string_view text, const TextStyle& style)
{
    return canvas::set_in_lines(text, style).extent;
}

std::string Canvas::font_family()
{
    const auto where = canvas::context();
    const auto loaded = canvas::counted(
        pango_font_map_load_font(pango_cairo_font_map_get_default(), where.get(), canvas::font({}).get()));
    const std::unique_ptr<PangoFontDescription, void (*)(PangoFontDescription*)> found(
        pango_font_describe(loaded.get()), pango_font_description_free);
    const char* name = pango_font_description_get_family(found.get());
    return name == nullptr ? "" : name;
}

} // namespace tuckwright
