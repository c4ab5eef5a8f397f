// SPDX-License-Identifier: GPL-3.0-or-later
/// Questions put to a person at a terminal, or answered from a pipe.
#pragma once
#include <functional>
#include <stdexcept>
#include <string>
#include <vector>

#include "kit/quantity.hpp"

namespace tuckwright::cli
{

/// The answers ended before the questions did, or one was wrong again and again.
class AnswersEnded : public std::runtime_error
{
public:
    using std::runtime_error::runtime_error;
};

/// Asks on standard error, and reads a line of standard input for each answer. Each question may have an answer that is meant
/// by an empty line, and is shown in brackets; a wrong answer is told what to type instead, and asked for again.
/// Throws AnswersEnded.
class Questions
{
public:
    /// The units of plain numbers.
    explicit Questions(reading::Units plain = {}) : plain_(plain) {}
    void plain_numbers_are(reading::Units plain) { plain_ = plain; }

    /// Any text; `if_empty` is what an empty line means.
    std::string text(const std::string& question, const std::string& if_empty = "") const;
    /// One of these words, or the beginning of one. Requires: `if_empty` is one of them, or empty: then a word is needed.
    std::string word(const std::string& question, const std::vector<std::string>& words, const std::string& if_empty) const;
    bool yes(const std::string& question, bool if_empty) const;
    /// None, one or several of these words.
    std::vector<std::string> words(const std::string& question, const std::vector<std::string>& known) const;
    int count(const std::string& question, int if_empty, int most) const;
    /// A length or weight with its unit, as the answer gives it, and with the unit of plain numbers where it gives none.
    /// `if_empty` may be "none": then an empty line is an empty text. Nought is taken where `least_is_nought`.
    std::string quantity(const std::string& question, reading::Measure measure, const std::string& if_empty = "",
                         bool least_is_nought = false) const;
    /// Says something between the questions.
    static void say(const std::string& text);

private:
    /// Asks until the check has no fault to tell.
    static std::string answer(const std::string& question, const std::string& shown,
                              const std::function<std::string(const std::string&)>& fault);

    reading::Units plain_;
};

} // namespace tuckwright::cli
