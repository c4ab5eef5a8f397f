// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/option_values.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace tuckwright::cli
{

namespace
{

template <class Number> bool reads(const std::string& text, Number& value)
{
    const auto end = std::from_chars(text.data(), text.data() + text.size(), value);
    return end.ec == std::errc{} && end.ptr == text.data() + text.size();
}

[[noreturn]] void refuse(const char* option, const std::string& text, const char* wanted)
{
    throw CLI::ValidationError(option, "\"" + text + "\" is not " + wanted);
}

} // namespace

Effort effort_value(const std::string& text)
{
    for (const auto effort : {Effort::quick, Effort::normal, Effort::thorough}) {
        if (text == to_string(effort)) {
            return effort;
        }
    }
    refuse("--effort", text, "an effort; choose quick, normal or thorough");
}

PictureFormat picture_format_value(const std::string& text)
{
    constexpr std::array<std::pair<const char*, PictureFormat>, 3> formats{
        {{"svg", PictureFormat::svg}, {"pdf", PictureFormat::pdf}, {"png", PictureFormat::png}}};
    for (const auto& [word, format] : formats) {
        if (text == word) {
            return format;
        }
    }
    refuse("--format", text, "a kind of picture; choose svg, pdf or png");
}

Paper paper_value(const std::string& text)
{
    if (text == "a4" || text == "A4") {
        return Paper::a4;
    }
    if (text == "letter" || text == "Letter") {
        return Paper::letter;
    }
    refuse("--paper", text, "a paper; choose a4 or letter");
}

report::AnswerUnits units_value(const std::string& text)
{
    if (text == "metric" || text == "us") {
        return text == "us" ? report::AnswerUnits::us_customary : report::AnswerUnits::metric;
    }
    refuse("--units", text, "a system of units; choose metric or us");
}

std::uint64_t seed_value(const std::string& text)
{
    std::uint64_t value = 0;
    if (!reads(text, value)) {
        refuse("--seed", text, "a whole number from 0 to 18446744073709551615");
    }
    return value;
}

unsigned threads_value(const std::string& text)
{
    constexpr unsigned most = 1024;
    unsigned value = 0;
    if (!reads(text, value) || value > most) {
        refuse("--threads", text, "a whole number from 1 to 1024, or 0 for as many as the machine has");
    }
    return value;
}

std::string path_value(const std::string& text)
{
    if (text.empty()) {
        refuse("--json", text, "the path of a file; give - for standard output");
    }
    return text;
}

std::size_t most_value(const std::string& text)
{
    constexpr std::size_t largest = 1'000'000;
    std::size_t value = 0;
    if (!reads(text, value) || value < 1 || value > largest) {
        refuse("--most", text, "a whole number from 1 to 1000000");
    }
    return value;
}

std::vector<Taken> taken_value(const std::string& text)
{
    std::vector<Taken> all;
    for (std::size_t start = 0; start <= text.size();) {
        const auto end = std::min(text.find(',', start), text.size());
        const std::string part = text.substr(start, end - start);
        const auto sign = part.find('=');
        if (sign == std::string::npos || sign == 0 || sign + 1 == part.size()) {
            refuse("--choose", text, "a choice and what is taken, such as pot=big-pot");
        }
        all.push_back({part.substr(0, sign), part.substr(sign + 1)});
        start = end + 1;
    }
    return all;
}

double seconds_value(const std::string& text)
{
    constexpr double year = 366.0 * 24 * 3600;
    double value = 0;
    if (!reads(text, value) || !(value > 0 && value <= year)) {
        refuse("--seconds", text, "a number of seconds above 0 and no more than a year");
    }
    return value;
}

} // namespace tuckwright::cli
