// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/json_layout.hpp"

#include <charconv>
#include <cmath>

#include "tuckwright/contract.hpp"

namespace tuckwright::report
{

namespace
{

using nlohmann::ordered_json;

constexpr std::size_t columns = 116;
constexpr std::size_t step_in = 2;

void write_float(std::string& out, double value)
{
    require(std::isfinite(value), "a number for JSON is finite");
    value += 0.0; // no negative zero
    const double size = std::abs(value);
    const bool plain = value == 0 || (size >= 1e-6 && size < 1e15);
    char digits[64];
    const auto end = plain ? std::to_chars(digits, digits + sizeof digits, value, std::chars_format::fixed)
                           : std::to_chars(digits, digits + sizeof digits, value, std::chars_format::scientific);
    require(end.ec == std::errc{}, "64 characters hold a number");
    out.append(digits, end.ptr);
}

void write_text(std::string& out, const std::string& text)
{
    out += ordered_json(text).dump(-1, ' ', false, ordered_json::error_handler_t::replace);
}

void write_one_line(std::string& out, const ordered_json& value)
{
    if (value.is_number_float()) {
        write_float(out, value.get<double>());
    } else if (value.is_string()) {
        write_text(out, value.get_ref<const std::string&>());
    } else if (value.is_structured()) {
        out += value.is_object() ? '{' : '[';
        const char* between = "";
        for (auto part = value.begin(); part != value.end(); ++part) {
            out += between;
            if (value.is_object()) {
                write_text(out, part.key());
                out += ": ";
            }
            write_one_line(out, *part);
            between = ", ";
        }
        out += value.is_object() ? '}' : ']';
    } else {
        out += value.dump();
    }
}

void write(std::string& out, const ordered_json& value, std::size_t indent, std::size_t used)
{
    std::string line;
    write_one_line(line, value);
    if (!value.is_structured() || value.empty() || used + line.size() <= columns) {
        out += line;
        return;
    }
    const std::string start = "\n" + std::string(indent + step_in, ' ');
    out += value.is_object() ? '{' : '[';
    const char* between = "";
    for (auto part = value.begin(); part != value.end(); ++part) {
        out += between + start;
        const std::size_t before = out.size();
        if (value.is_object()) {
            write_text(out, part.key());
            out += ": ";
        }
        write(out, *part, indent + step_in, indent + step_in + out.size() - before);
        between = ",";
    }
    out += "\n" + std::string(indent, ' ');
    out += value.is_object() ? '}' : ']';
}

} // namespace

std::string laid_out(const ordered_json& value)
{
    std::string out;
    if (value.is_object()) { // the outermost is always spread out, one field a line
        out = "{";
        const char* between = "\n";
        for (const auto& part : value.items()) {
            out += between + std::string(step_in, ' ');
            write_text(out, part.key());
            out += ": ";
            write(out, part.value(), step_in, step_in + part.key().size() + 4);
            between = ",\n";
        }
        return out + "\n}";
    }
    write(out, value, 0, 0);
    return out;
}

} // namespace tuckwright::report
