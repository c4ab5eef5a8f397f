// SPDX-License-Identifier: GPL-3.0-or-later
/// Pages on which lines, areas and text are drawn, and which are then written as SVG, PDF or PNG from the same calls.
/// Lengths are mm on paper, x to the right and y down from the page's upper left corner.
///
///     Canvas page({210, 297});
///     page.draw(Path::rectangle({20, 20, 60, 40}), Pen{{0, 0, 0}, 0.3}, Fill{Color{0.9, 0.9, 0.8}});
///     page.write("Steel pot", {24, 24}, {.size = 4, .bold = true});
///     const std::string bytes = page.pdf({.title = "A pot"});
#pragma once
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tuckwright {

/// A point of a page, or the way from one to another; mm.
struct Spot {
    double x = 0, y = 0;
    friend bool operator==(const Spot&, const Spot&) = default;
};

/// A rectangle of a page by its upper left corner; mm.
struct Frame {
    double x = 0, y = 0, width = 0, height = 0;
    double right() const { return x + width; }
    double bottom() const { return y + height; }
};

struct PageSize {
    double width = 210, height = 297; ///< mm; A4 upright if you say nothing
};

/// sRGB, each from 0 to 1.
struct Color {
    double red = 0, green = 0, blue = 0;
    friend bool operator==(const Color&, const Color&) = default;
};

/// How a line is drawn.
struct Pen {
    Color color{};
    double width = 0.25;      ///< mm
    double dash = 0, gap = 0; ///< mm of line and of air by turns; 0: unbroken
    double opacity = 1;
};

/// Parallel lines that fill an area.
struct Hatch {
    Color color{};
    double spacing = 1.5; ///< mm from line to line
    double angle = 45;    ///< degrees from level, up to the right
    double width = 0.2;   ///< mm
    double opacity = 1;
};

/// How an area is filled: with a colour, with a hatch, or with a hatch over a colour.
struct Fill {
    std::optional<Color> color;
    double opacity = 1; ///< of the colour
    std::optional<Hatch> hatch = std::nullopt;
};

/// Any number of open or closed outlines of straight lines and curves. An area within an even number of them is outside.
class Path {
public:
    enum class Kind { move, line, curve, close };
    /// `to` is where it leads; `first` and `second` are the control points of a cubic Bézier curve.
    struct Segment {
        Kind kind;
        Spot to{}, first{}, second{};
    };

    Path& move_to(Spot to);
    Path& line_to(Spot to); ///< begins there if there is nothing before
    Path& curve_to(Spot first, Spot second, Spot to);
    Path& close();
    /// Goes straight to, or begins at, and then along an ellipse given by its middle and two half axes (conjugate ones will
    /// do), through middle + cos t * first + sin t * second for t from `from` to `to`, radians. Ensures: off the true
    /// ellipse by less than 3e-4 of the larger half axis.
    Path& arc(Spot middle, Spot first, Spot second, double from, double to);
    Path& add(const Path& other);
    /// The same path, first scaled from the origin and then moved.
    Path placed(double scale, Spot by) const;

    static Path line(Spot from, Spot to);
    static Path polygon(const std::vector<Spot>& corners);  ///< closed
    static Path polyline(const std::vector<Spot>& corners); ///< open
    static Path rectangle(const Frame& frame);
    static Path ellipse(Spot middle, Spot first, Spot second);
    static Path circle(Spot middle, double radius);

    bool empty() const { return segments_.empty(); }
    const std::vector<Segment>& segments() const { return segments_; }
    /// The smallest upright rectangle that holds its lines, their width left out. Requires: not empty.
    Frame bounds() const;

private:
    std::vector<Segment> segments_;
};

enum class Align { left, middle, right };

/// How text is written. Letters come from the system's sans-serif font, and from its others for scripts that this lacks.
struct TextStyle {
    double size = 3.2; ///< mm from one line of a page of text to the next, roughly (the em)
    bool bold = false, italic = false;
    Color color{};
    double wrap = 0;           ///< mm; lines are broken so that none is longer; 0: no line is broken
    Align align = Align::left; ///< of several lines to one another; in a wrapped text within `wrap`
};

/// What a text takes on the page: all its ink is within.
struct TextExtent {
    double width = 0, height = 0; ///< mm
    double baseline = 0;          ///< mm from the top down to the line on which the letters of the first line stand
    int lines = 1;
};

/// What a file says about itself.
struct DocumentInfo {
    std::string title;
    std::string date; ///< "2030-05-04T10:00:00Z"; empty: none is told, and the file has the same bytes on any day
};

class Canvas {
public:
    /// One empty page; all pages are of that size. Requires: sides of 1 to 5000 mm.
    explicit Canvas(PageSize size);
    ~Canvas();
    Canvas(Canvas&&) noexcept;
    Canvas& operator=(Canvas&&) noexcept;

    PageSize size() const;
    std::size_t pages() const;
    void add_page(); ///< what follows is drawn on it

    /// Fills the path, then draws its lines, over what is there already.
    void draw(const Path& path, const std::optional<Pen>& pen, const std::optional<Fill>& fill = std::nullopt);
    /// What follows is cut off outside the path, until the matching end_clip(). Clips may be nested, on one page.
    void begin_clip(const Path& path);
    void end_clip(); ///< Requires: a clip begun on this page.
    /// Writes a text (UTF-8, any script; a newline breaks a line) with the upper left corner of its extent there. Bytes that
    /// are no UTF-8 are written as the sign for an unknown letter.
    TextExtent write(std::string_view text, Spot corner, const TextStyle& style = {});
    /// What write() would take.
    static TextExtent extent(std::string_view text, const TextStyle& style = {});
    /// The family of the font from which Latin letters come: what extents depend on.
    static std::string font_family();

    /// One page as an SVG file, its sides in mm and its own units tenths of a millimetre. Text is drawn as outlines, so that
    /// it looks the same everywhere. Ids start with the prefix, so that several may stand in one HTML page. The title is
    /// told to those who cannot see the picture. Requires: a page that is there. The same calls give the same bytes.
    std::string svg(std::size_t page = 0, const std::string& id_prefix = "p", const std::string& title = {}) const;
    /// All pages, fonts embedded and text to be searched. The same calls give the same bytes.
    std::string pdf(const DocumentInfo& info = {}) const;
    /// One page on white ground. Requires: a page that is there, 10 to 1200 dots an inch.
    std::string png(std::size_t page = 0, double dots_per_inch = 150) const;

private:
    struct Content;
    std::unique_ptr<Content> content_;
};

} // namespace tuckwright
