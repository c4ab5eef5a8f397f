// SPDX-License-Identifier: GPL-3.0-or-later
/// Kit files written line by line.
#pragma once
#include <cstdio>
#include <string>

namespace tuckwright::test {

/// A length on the grid, as a kit file gives it.
inline std::string mm(double value)
{
    char text[40];
    std::snprintf(text, sizeof text, "%.6f", value);
    return text;
}

inline std::string cylinder(double diameter, double height)
{
    return "cylinder: {diameter: " + mm(diameter) + ", height: " + mm(height) + "}";
}

inline std::string box(double length, double width, double height)
{
    return "box: {length: " + mm(length) + ", width: " + mm(width) + ", height: " + mm(height) + "}";
}

/// The text of a kit file, item by item.
class KitText {
public:
    explicit KitText(const std::string& bundle, double clearance = 0)
        : text_("kit: written by a test\nclearance: " + mm(clearance) + "\nbundle: " + bundle + "\nitems:\n")
    {
    }

    /// `fields` are such as "cylinder: {...}, inside: {...}".
    KitText& item(const std::string& id, const std::string& fields, int count = 1)
    {
        text_ += "  - {id: " + id + ", weight: 10, count: " + std::to_string(count) + ", " + fields + "}\n";
        return *this;
    }

    const std::string& text() const { return text_; }

private:
    std::string text_;
};

inline std::string round_bundle() { return "{shape: cylinder}"; }
inline std::string round_bundle(double diameter, double height)
{
    return "{shape: cylinder, limits: {diameter: " + mm(diameter) + ", height: " + mm(height) + "}}";
}
inline std::string box_bundle() { return "{shape: box}"; }
inline std::string box_bundle(double length, double width, double height)
{
    return "{shape: box, limits: {length: " + mm(length) + ", width: " + mm(width) + ", height: " + mm(height) + "}}";
}

} // namespace tuckwright::test
