// SPDX-License-Identifier: GPL-3.0-or-later
#include "tuckwright/check_code.hpp"

#include <fmt/format.h>

#include <boost/crc.hpp>
#include <cmath>
#include <cstdint>
#include <iterator>

#include "tuckwright/contract.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright {

namespace {

constexpr std::string_view digits = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"; // no I, L, O and U, which are misread
constexpr std::size_t before_dash = 4, length = 7;                     // 7 x 5 bits hold the 32
constexpr unsigned bits_a_digit = 5;

/// What decides how the bundle is put together, one line each; lengths in whole nanometres, weights in milligrams.
class Lines {
public:
    void add(std::string_view text) { text_ += fmt::format("{}:{}\n", text.size(), text); }

    void add(const Shape& shape)
    {
        if (const auto* c = std::get_if<Cylinder>(&shape)) {
            numbers({c->diameter, c->height, c->foot});
        } else {
            const Box& box = std::get<Box>(shape);
            numbers({box.length, box.width, box.height});
        }
    }

    void add(const Solid& solid)
    {
        add(solid.shape);
        numbers({solid.pose.center.x, solid.pose.center.y, solid.pose.center.z});
        const Quaternion& q = solid.pose.turn;
        fmt::format_to(std::back_inserter(text_), "{} {} {} {}\n", q.w, q.x, q.y, q.z);
    }

    void add(double grams)
    {
        constexpr double milligrams = 1000;
        fmt::format_to(std::back_inserter(text_), "{} mg\n", std::llround(grams * milligrams));
    }

    void add(std::uint64_t number) { fmt::format_to(std::back_inserter(text_), "{}\n", number); }

    std::uint32_t crc() const
    {
        boost::crc_32_type sum;
        sum.process_bytes(text_.data(), text_.size());
        return sum.checksum();
    }

private:
    void numbers(std::initializer_list<double> lengths)
    {
        for (const double mm : lengths) {
            fmt::format_to(std::back_inserter(text_), "{} ", to_nanometres(mm));
        }
        text_ += "\n";
    }

    std::string text_;
};

std::string in_digits(std::uint32_t crc)
{
    std::string code;
    for (std::size_t i = length; i-- > 0;) {
        const std::uint32_t left = i * bits_a_digit >= 32 ? 0 : crc >> (i * bits_a_digit);
        code += digits[left % digits.size()];
        code += code.size() == before_dash ? "-" : "";
    }
    return code;
}

void add_item(Lines& lines, const PlacedItem& item)
{
    lines.add(item.id);
    lines.add(std::uint64_t(item.copy));
    lines.add(item.stowed);
    lines.add(item.weight_g + item.contents_g);
    lines.add(item.in ? std::uint64_t{item.in->item} + 1 : 0);
    lines.add(item.closes ? std::uint64_t{*item.closes} + 1 : 0);
    for (const Solid& solid : item.solids) {
        lines.add(solid);
    }
}

} // namespace

std::string check_code(const Bundle& bundle)
{
    Lines lines;
    lines.add(bundle.kit);
    lines.add(bundle.envelope);
    for (const PlacedItem& item : bundle.items) {
        add_item(lines, item);
    }
    for (const Step& step : bundle.steps) {
        require(step.item < bundle.items.size(), "a step's item is one of the bundle's");
        lines.add(std::uint64_t{step.item});
    }
    if (bundle.bag) {
        lines.add(bundle.bag->id);
        lines.add(bundle.bag->weight_g);
    }
    for (const Band& band : bundle.bands) {
        lines.add(band.id);
        lines.add(band.over);
        lines.add(band.weight_g);
    }
    return in_digits(lines.crc());
}

std::optional<std::string> code_as_written(std::string_view typed)
{
    std::string code;
    for (char c : typed) {
        c = c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
        c = c == 'O' ? '0' : c == 'I' || c == 'L' ? '1' : c;
        if (c == '-' || c == ' ') {
            continue;
        }
        if (digits.find(c) == std::string_view::npos) {
            return std::nullopt;
        }
        code += c;
        code += code.size() == before_dash ? "-" : "";
    }
    return code.size() == length + 1 ? std::optional(code) : std::nullopt;
}

} // namespace tuckwright
