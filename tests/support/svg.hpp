// SPDX-License-Identifier: GPL-3.0-or-later
/// Reads the SVG that the canvas writes back: where its lines, areas and letters are, in mm of the page. It knows only what
/// such files hold, and says so (by an exception) where they hold anything else.
#pragma once
#include <algorithm>
#include <array>
#include <cstdlib>
#include <map>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace tuckwright::svg {

struct Point {
    double x = 0, y = 0;
};

struct Bounds {
    double left = 1e9, top = 1e9, right = -1e9, bottom = -1e9;
    void take(Point p)
    {
        left = std::min(left, p.x);
        right = std::max(right, p.x);
        top = std::min(top, p.y);
        bottom = std::max(bottom, p.y);
    }
};

/// A path as drawn: its points (curves are followed in short pieces) and how it is filled or stroked.
struct Drawn {
    std::vector<std::vector<Point>> lines;
    std::map<std::string, std::string> attributes;
    bool clip = false, letter = false; ///< it bounds other things, or is one letter of a text
    int group = 0;                     ///< letters of one line of text share it
    Bounds bounds() const
    {
        Bounds all;
        for (const auto& line : lines) {
            for (const Point& p : line) {
                all.take(p);
            }
        }
        return all;
    }
};

struct Picture {
    double width = 0, height = 0; ///< mm
    std::string title;
    std::vector<Drawn> paths; ///< in the order in which they are painted, clips and letters included
};

namespace detail {

using Attributes = std::map<std::string, std::string>;
using Matrix = std::array<double, 6>;

inline Point apply(const Matrix& m, Point p)
{
    return {m[0] * p.x + m[2] * p.y + m[4], m[1] * p.x + m[3] * p.y + m[5]};
}

inline Attributes attributes_of(const std::string& tag)
{
    Attributes all;
    for (std::size_t at = tag.find('='); at != std::string::npos; at = tag.find('=', at + 1)) {
        const std::size_t start = tag.find_last_of(" \n\t", at) + 1, end = tag.find('"', at + 2);
        all[tag.substr(start, at - start)] = tag.substr(at + 2, end - at - 2);
        at = end;
    }
    return all;
}

inline Matrix matrix_of(const Attributes& all)
{
    const auto found = all.find("transform");
    if (found == all.end()) {
        return {1, 0, 0, 1, 0, 0};
    }
    std::string text = found->second;
    if (text.rfind("matrix(", 0) != 0) {
        throw std::runtime_error("unknown transform: " + text);
    }
    std::replace(text.begin(), text.end(), ',', ' ');
    std::istringstream numbers(text.substr(7));
    Matrix m{};
    for (double& value : m) {
        numbers >> value;
    }
    return m;
}

inline std::vector<std::vector<Point>> lines_of(const std::string& d, const Matrix& m, Point shift)
{
    std::vector<std::vector<Point>> lines;
    std::istringstream words(d);
    Point now;
    const auto read = [&] {
        Point p;
        words >> p.x >> p.y;
        return p;
    };
    const auto put = [&](Point p) { lines.back().push_back(apply(m, {p.x + shift.x, p.y + shift.y})); };
    for (std::string word; words >> word;) {
        if (word == "M") {
            now = read();
            lines.emplace_back();
            put(now);
        } else if (word == "L") {
            now = read();
            put(now);
        } else if (word == "C") {
            const Point a = read(), b = read(), c = read();
            constexpr int pieces = 16;
            for (int k = 1; k <= pieces; ++k) {
                const double t = static_cast<double>(k) / pieces, u = 1 - t;
                put({u * u * u * now.x + 3 * u * u * t * a.x + 3 * u * t * t * b.x + t * t * t * c.x,
                     u * u * u * now.y + 3 * u * u * t * a.y + 3 * u * t * t * b.y + t * t * t * c.y});
            }
            now = c;
        } else if (word == "Z") {
            if (!lines.empty() && !lines.back().empty()) {
                lines.back().push_back(lines.back().front());
            }
        } else {
            throw std::runtime_error("unknown in a path: " + word);
        }
    }
    lines.erase(std::remove_if(lines.begin(), lines.end(), [](const auto& line) { return line.size() < 2; }),
                lines.end());
    return lines;
}

} // namespace detail

namespace detail {

/// Goes through the elements in their order.
class Reader {
public:
    explicit Reader(const std::string& text) : text_(text) {}

    Picture read()
    {
        for (std::size_t at = text_.find('<'); at != std::string::npos; at = text_.find('<', at + 1)) {
            const std::size_t end = text_.find('>', at);
            const std::string tag = text_.substr(at + 1, end - at - 1);
            const std::string name = tag.substr(0, tag.find_first_of(" \n/", 1));
            const Attributes all = attributes_of(tag);
            if (name == "title") {
                picture_.title = text_.substr(end + 1, text_.find('<', end) - end - 1);
            } else if (name == "path" || name == "use") {
                take_path(all, name == "use");
            } else if (name == "svg") {
                take_size(all);
            } else {
                take_other(name, all);
            }
        }
        return std::move(picture_);
    }

private:
    static double number(const Attributes& all, const char* of)
    {
        return all.count(of) > 0 ? std::strtod(all.at(of).c_str(), nullptr) : 0;
    }

    void take_size(const Attributes& all)
    {
        picture_.width = number(all, "width");
        picture_.height = number(all, "height");
        std::istringstream box(all.at("viewBox"));
        double x = 0, y = 0, w = 0;
        box >> x >> y >> w;
        per_mm_ = w / picture_.width;
    }

    void take_path(const Attributes& all, bool is_letter)
    {
        if (!symbol_.empty()) {
            letters_[symbol_] = all.at("d");
            return;
        }
        const std::string d = is_letter ? letters_.at(all.at("xlink:href").substr(1)) : all.at("d");
        Matrix m = matrix_of(all);
        for (double& value : m) {
            value /= per_mm_;
        }
        picture_.paths.push_back(
            {lines_of(d, m, {number(all, "x"), number(all, "y")}), all, in_clip_, is_letter, group_});
    }

    void take_other(const std::string& name, const Attributes& all)
    {
        if (name == "g") {
            ++group_;
        } else if (name == "symbol") {
            symbol_ = all.at("id");
        } else if (name == "/symbol") {
            symbol_.clear();
        } else if (name == "clipPath" || name == "/clipPath") {
            in_clip_ = name[0] != '/';
        } else if (name != "?xml" && name != "/g" && name != "defs" && name != "/defs" && name != "/svg" &&
                   name != "/title") {
            throw std::runtime_error("unknown element: " + name);
        }
    }

    const std::string& text_;
    Picture picture_;
    std::map<std::string, std::string> letters_; ///< by id
    std::string symbol_;
    bool in_clip_ = false;
    int group_ = 0;
    double per_mm_ = 1;
};

} // namespace detail

inline Picture read(const std::string& text) { return detail::Reader(text).read(); }

} // namespace tuckwright::svg
