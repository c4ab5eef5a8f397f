// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/plot.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>

#include "tuckwright/contract.hpp"

namespace tuckwright::advice {

namespace {

constexpr Color ink{0.1, 0.1, 0.12}, faint{0.62, 0.62, 0.64};
constexpr double letters = 3.1; ///< mm

bool meet(const Frame& a, const Frame& b)
{
    constexpr double air = 0.3; // mm
    return a.x < b.right() + air && b.x < a.right() + air && a.y < b.bottom() + air && b.y < a.bottom() + air;
}

std::string mark(double number, double step) { return fmt::format("{:.{}f}", std::abs(number) < step / 2 ? 0.0 : number, step < 0.1 ? 2 : step < 1 ? 1 : 0); }

} // namespace

Scale scale_for(const std::vector<double>& numbers)
{
    require(!numbers.empty(), "there is something to show");
    const auto [least, most] = std::minmax_element(numbers.begin(), numbers.end());
    const double spare = std::max({(*most - *least) * 0.08, std::abs(*most) * 0.01, 1e-3});
    Scale scale{*least - spare, *most + spare, 1};
    constexpr double marks = 6;
    const double rough = (scale.high - scale.low) / marks, decade = std::pow(10.0, std::floor(std::log10(rough)));
    for (const double step : {1.0, 2.0, 5.0, 10.0}) {
        if (decade * step >= rough) {
            scale.step = decade * step;
            break;
        }
    }
    return scale;
}

Spot Plot::at(double x, double y) const
{
    return {field_.x + (x - across_.low) / (across_.high - across_.low) * field_.width,
            field_.bottom() - (y - up_.low) / (up_.high - up_.low) * field_.height};
}

void Plot::draw_scales(const std::string& across, const std::string& up)
{
    const TextStyle style{.size = letters, .color = ink};
    const Pen line{faint, 0.15};
    for (double x = std::ceil(across_.low / across_.step) * across_.step; x <= across_.high; x += across_.step) {
        const double left = at(x, up_.low).x;
        canvas_.draw(Path::line({left, field_.y}, {left, field_.bottom()}), line);
        const std::string text = mark(x, across_.step);
        canvas_.write(text, {left - Canvas::extent(text, style).width / 2, field_.bottom() + 1}, style);
    }
    for (double y = std::ceil(up_.low / up_.step) * up_.step; y <= up_.high; y += up_.step) {
        const double top = at(across_.low, y).y;
        canvas_.draw(Path::line({field_.x, top}, {field_.right(), top}), line);
        const std::string text = mark(y, up_.step);
        const TextExtent extent = Canvas::extent(text, style);
        canvas_.write(text, {field_.x - extent.width - 1.5, top - extent.height / 2}, style);
    }
    canvas_.draw(Path::rectangle(field_), Pen{ink, 0.25});
    const TextStyle bold{.size = letters, .bold = true, .color = ink};
    canvas_.write(across, {field_.right() - Canvas::extent(across, bold).width, field_.bottom() + 5.5}, bold);
    canvas_.write(up, {field_.x, field_.y - 5}, bold);
}

bool Plot::is_free(const Frame& frame) const
{
    return frame.x >= field_.x && frame.y >= field_.y && frame.right() <= field_.right() &&
           frame.bottom() <= field_.bottom() &&
           std::none_of(taken_.begin(), taken_.end(), [&](const Frame& other) { return meet(frame, other); });
}

void Plot::label(const std::string& text, Spot beside, const TextStyle& style)
{
    constexpr double close = 2, farthest = 24, farther = 1.5; // mm
    constexpr int ways = 16;
    const TextExtent extent = Canvas::extent(text, style);
    for (double away = close; away <= farthest; away += farther) {
        for (int k = 0; k < ways; ++k) {
            const double angle = 2 * std::numbers::pi * (k + 1) / ways - std::numbers::pi / 4;
            const Spot middle{beside.x + (away + extent.width / 2) * std::cos(angle),
                              beside.y - (away + extent.height / 2) * std::sin(angle)};
            const Frame frame{middle.x - extent.width / 2, middle.y - extent.height / 2, extent.width, extent.height};
            if (is_free(frame)) {
                if (away > close + farther) {
                    canvas_.draw(Path::line(beside, middle), Pen{faint, 0.2});
                    canvas_.draw(Path::rectangle(frame), std::nullopt, Fill{Color{1, 1, 1}});
                }
                canvas_.write(text, {frame.x, frame.y}, style);
                take(frame);
                return;
            }
        }
    }
}

} // namespace tuckwright::advice
