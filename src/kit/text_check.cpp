// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/document.hpp"

namespace tuckwright::reading
{

namespace
{

/// Bytes of the character at this place; 0 where it is not well-formed UTF-8. Source: The Unicode Standard 15.0,
/// table 3-7 (well-formed byte sequences).
std::size_t character_size(std::string_view text, std::size_t at)
{
    const auto byte = [&](std::size_t i) {
        return at + i < text.size() ? static_cast<unsigned char>(text[at + i]) : 0U;
    };
    const auto follows = [&](std::size_t i) { return (byte(i) & 0xC0U) == 0x80U; };
    const unsigned first = byte(0);
    if (first < 0x80U) {
        return 1;
    }
    if (first >= 0xC2U && first <= 0xDFU) {
        return follows(1) ? 2 : 0;
    }
    if (first >= 0xE0U && first <= 0xEFU) {
        const bool second = byte(1) >= (first == 0xE0U ? 0xA0U : 0x80U) && byte(1) <= (first == 0xEDU ? 0x9FU : 0xBFU);
        return second && follows(2) ? 3 : 0;
    }
    if (first >= 0xF0U && first <= 0xF4U) {
        const bool second = byte(1) >= (first == 0xF0U ? 0x90U : 0x80U) && byte(1) <= (first == 0xF4U ? 0x8FU : 0xBFU);
        return second && follows(2) && follows(3) ? 4 : 0;
    }
    return 0;
}

/// Control characters that a text file has no use for; the parser takes one of them for the end of the file.
bool is_unwanted_control(std::string_view character)
{
    const auto first = static_cast<unsigned char>(character[0]);
    if (character.size() == 1) {
        return (first < 0x20U && first != '\t' && first != '\n' && first != '\r') || first == 0x7FU;
    }
    return first == 0xC2U && static_cast<unsigned char>(character[1]) < 0xA0U;
}

/// Watches for brackets opened one after the other, with nothing but spaces between: the parser reads ahead to the end
/// of them before it tells how deep they are. Lines of comment may hold what they like.
class BracketRuns
{
public:
    /// Whether there are too many with this character.
    bool too_many(char c)
    {
        const bool blank = c == ' ' || c == '\t' || c == '\r' || c == '\n';
        if (!blank && line_is_blank_) {
            in_comment_ = c == '#';
            line_is_blank_ = false;
        }
        if (c == '[' || c == '{') {
            run_ += in_comment_ ? 0 : 1;
        } else if (!blank && !in_comment_) {
            run_ = 0;
        }
        if (c == '\n') {
            line_is_blank_ = true;
            in_comment_ = false;
        }
        return run_ > deepest_nesting;
    }

private:
    int run_ = 0;
    bool line_is_blank_ = true, in_comment_ = false;
};

} // namespace

bool check_text(std::string_view text, ProblemList& problems)
{
    if (text.size() > largest_file) {
        problems.add({}, "the file is larger than 1 MiB",
                     "a kit file is a few kilobytes of text; check that it is the right file");
        return false;
    }
    Place place;
    BracketRuns brackets;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t size = character_size(text, at);
        if (size == 0) {
            problems.add(place, "this is not UTF-8 text", "save the file as UTF-8");
            return false;
        }
        if (is_unwanted_control(text.substr(at, size))) {
            problems.add(place, "there is a control character in the text", "delete it");
            return false;
        }
        if (brackets.too_many(text[at])) {
            problems.add(place, too_deep_what, too_deep_remedy);
            return false;
        }
        place = text[at] == '\n' ? Place{place.line + 1, 0} : Place{place.line, place.byte + static_cast<int>(size)};
        at += size;
    }
    return true;
}

} // namespace tuckwright::reading
