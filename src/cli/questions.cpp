// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/questions.hpp"

#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <sstream>

#include "kit/words.hpp"
#include "report/words.hpp"

namespace tuckwright::cli
{

namespace
{

constexpr std::size_t longest_answer = 1000; // bytes
constexpr int most_wrong = 20;               // in a row, so that an endless pipe comes to an end

/// A line of standard input without spaces at its ends.
std::string next_line()
{
    std::string line;
    int c = std::fgetc(stdin);
    for (; c != EOF && c != '\n' && line.size() < longest_answer; c = std::fgetc(stdin)) {
        line += static_cast<char>(c);
    }
    if (c != '\n' && (c != EOF || line.empty())) {
        std::fputs("\n", stderr);
        throw AnswersEnded(c == EOF ? "the answers ended before everything was told" : "an answer is longer than a line");
    }
    if (::isatty(STDIN_FILENO) != 1) { // what is typed shows by itself
        std::fputs((report::printable(line) + "\n").c_str(), stderr);
    }
    const auto first = line.find_first_not_of(" \t\r"), last = line.find_last_not_of(" \t\r");
    return first == std::string::npos ? "" : line.substr(first, last - first + 1);
}

std::string listed(const std::vector<std::string>& words, const char* last)
{
    const std::vector<std::string_view> views(words.begin(), words.end());
    return reading::listed(views, last);
}

/// The only word that is the answer or begins with it.
std::optional<std::string> meant(const std::string& answer, const std::vector<std::string>& words)
{
    if (std::find(words.begin(), words.end(), answer) != words.end()) {
        return answer;
    }
    const auto begins = [&](const std::string& word) { return !answer.empty() && word.starts_with(answer); };
    const auto found = std::find_if(words.begin(), words.end(), begins);
    return std::count_if(words.begin(), words.end(), begins) == 1 ? std::optional(*found) : std::nullopt;
}

std::string in_small_letters(std::string text)
{
    std::transform(text.begin(), text.end(), text.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    return text;
}

const char* unit_word(reading::Unit unit)
{
    switch (unit) {
    case reading::Unit::cm: return "cm";
    case reading::Unit::in: return "in";
    case reading::Unit::g: return "g";
    case reading::Unit::oz: return "oz";
    default: return "mm";
    }
}

/// What is wrong with a length or weight, and what to type instead.
std::string quantity_fault(const std::string& answer, reading::Measure measure, const reading::Units& plain, bool nought)
{
    const bool is_length = measure == reading::Measure::length;
    if (answer.empty()) {
        return is_length ? "this is needed; type a length, such as 80, 80 mm or 3 1/2 in"
                         : "this is needed; type a weight, such as 140, 140 g or 5 oz";
    }
    const auto told = [](const Problem& problem) { return problem.what + "; " + problem.remedy; };
    double amount = 0;
    if (is_length) {
        const auto length = reading::parse_length(answer, plain.length);
        if (!length) {
            return told(length.problems().front());
        }
        amount = length->mm_down();
    } else {
        const auto weight = reading::parse_weight(answer, plain.weight);
        if (!weight) {
            return told(weight.problems().front());
        }
        amount = *weight;
    }
    return amount < 0 || (amount == 0 && !nought) ? "it must be more than nought; type what you measure" : "";
}

} // namespace

void Questions::say(const std::string& text) { std::fputs(text.c_str(), stderr); }

std::string Questions::answer(const std::string& question, const std::string& shown,
                              const std::function<std::string(const std::string&)>& fault)
{
    for (int wrong = 0; wrong < most_wrong; ++wrong) {
        say(report::printable(question) + (shown.empty() ? " " : " [" + report::printable(shown) + "] "));
        std::fflush(stderr);
        const std::string given = next_line();
        const std::string what = fault(given);
        if (what.empty()) {
            return given;
        }
        say(report::wrapped("    ", what));
    }
    throw AnswersEnded(fmt::format("{} answers in a row to '{}' were wrong", most_wrong, question));
}

std::string Questions::text(const std::string& question, const std::string& if_empty) const
{
    const std::string given = answer(question, if_empty, [](const std::string&) { return ""; });
    return given.empty() ? if_empty : given;
}

std::string Questions::word(const std::string& question, const std::vector<std::string>& words, const std::string& if_empty) const
{
    const std::string given = answer(question, if_empty, [&](const std::string& text) {
        return (text.empty() && !if_empty.empty()) || meant(in_small_letters(text), words)
                   ? ""
                   : (text.empty() ? "" : reading::in_quotes(text) + " is none of them; ") + "type " + listed(words, "or");
    });
    return given.empty() ? if_empty : *meant(in_small_letters(given), words);
}

bool Questions::yes(const std::string& question, bool if_empty) const
{
    return word(question, {"yes", "no"}, if_empty ? "yes" : "no") == "yes";
}

std::vector<std::string> Questions::words(const std::string& question, const std::vector<std::string>& known) const
{
    const auto taken_apart = [](std::string text) {
        std::replace(text.begin(), text.end(), ',', ' ');
        std::istringstream parts(in_small_letters(text));
        std::vector<std::string> all;
        for (std::string part; parts >> part;) {
            if (std::find(all.begin(), all.end(), part) == all.end() && part != "none") {
                all.push_back(part);
            }
        }
        return all;
    };
    return taken_apart(answer(question, "none", [&](const std::string& text) -> std::string {
        for (const auto& one : taken_apart(text)) {
            if (std::find(known.begin(), known.end(), one) == known.end()) {
                const std::vector<std::string_view> views(known.begin(), known.end());
                return "nothing is known as " + reading::in_quotes(one) + "; " + reading::suggestion(one, views);
            }
        }
        return "";
    }));
}

int Questions::count(const std::string& question, int if_empty, int most) const
{
    const auto number = [&](const std::string& text) {
        const bool digits = !text.empty() && text.size() < 6 && text.find_first_not_of("0123456789") == std::string::npos;
        return text.empty() ? if_empty : digits ? std::stoi(text) : 0;
    };
    return number(answer(question, std::to_string(if_empty), [&](const std::string& text) -> std::string {
        return number(text) >= 1 && number(text) <= most ? "" : fmt::format("type a whole number from 1 to {}", most);
    }));
}

std::string Questions::quantity(const std::string& question, reading::Measure measure, const std::string& if_empty,
                                bool least_is_nought) const
{
    const std::string given = answer(question, if_empty, [&](const std::string& text) -> std::string {
        return text.empty() && !if_empty.empty() ? "" : quantity_fault(text, measure, plain_, least_is_nought);
    });
    if (given.empty()) {
        return if_empty == "none" ? "" : if_empty;
    }
    const bool is_plain = given.find_last_of("0123456789.") == given.size() - 1;
    return is_plain ? given + " " + unit_word(measure == reading::Measure::length ? plain_.length : plain_.weight) : given;
}

} // namespace tuckwright::cli
