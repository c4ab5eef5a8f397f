// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/csv.hpp"

#include <utility>

namespace tuckwright::reading {

namespace {

/// Goes through the text once, keeping count of the place.
class CsvReader {
public:
    CsvReader(std::string_view text, ProblemList& problems, char separator)
        : text_(text), problems_(problems), separator_(separator)
    {
    }

    std::vector<CsvRecord> records()
    {
        std::vector<CsvRecord> all;
        while (at_ < text_.size()) {
            CsvRecord record = read_record();
            const bool is_blank = record.size() == 1 && record.front().text.empty() && !was_quoted_;
            if (!is_blank) {
                all.push_back(std::move(record));
            }
        }
        return all;
    }

private:
    bool at_break() const { return at_ == text_.size() || text_[at_] == '\n' || text_.substr(at_).starts_with("\r\n"); }

    void step()
    {
        const bool is_break = text_[at_++] == '\n';
        place_ = is_break ? Place{place_.line + 1, 0} : Place{place_.line, place_.byte + 1};
    }

    CsvRecord read_record()
    {
        CsvRecord record{read_field()};
        while (!at_break()) { // at a separator
            step();
            record.push_back(read_field());
        }
        while (at_ < text_.size() && text_[at_] != '\n') {
            step();
        }
        if (at_ < text_.size()) {
            step();
        }
        return record;
    }

    /// Up to the separator or line break behind it.
    CsvField read_field()
    {
        CsvField field{"", place_};
        was_quoted_ = at_ < text_.size() && text_[at_] == '"';
        if (was_quoted_ && !read_quoted(field)) {
            return field;
        }
        const Place rest = place_;
        bool has_rest = false, has_quote = false;
        for (; !at_break() && text_[at_] != separator_; step()) {
            has_quote |= text_[at_] == '"';
            has_rest = true;
            field.text += text_[at_];
        }
        if (was_quoted_ && has_rest) {
            problems_.add(rest, "there is more behind the closing quote",
                          "put the whole field in quotes, and double each quote in it");
        } else if (has_quote) {
            problems_.add(field.place, "there is a quote in a field that does not begin with one",
                          "put the whole field in quotes, and double each quote in it");
        }
        return field;
    }

    /// The part in quotes; false where the text ends in it.
    bool read_quoted(CsvField& field)
    {
        for (step(); at_ < text_.size(); step()) {
            if (text_[at_] == '"') {
                step();
                if (at_ == text_.size() || text_[at_] != '"') {
                    return true;
                }
            }
            field.text += text_[at_];
        }
        problems_.add(field.place, "this quote is not closed", "add the closing quote");
        return false;
    }

    std::string_view text_;
    ProblemList& problems_;
    char separator_;
    std::size_t at_ = 0;
    Place place_;
    bool was_quoted_ = false;
};

} // namespace

char separator_of(std::string_view text)
{
    while (text.starts_with('\n') || text.starts_with('\r')) {
        text.remove_prefix(1);
    }
    std::size_t commas = 0, semicolons = 0, tabs = 0;
    bool in_quotes = false;
    for (const char c : text.substr(0, text.find('\n'))) {
        in_quotes ^= c == '"';
        commas += c == ',' && !in_quotes ? 1 : 0;
        semicolons += c == ';' && !in_quotes ? 1 : 0;
        tabs += c == '\t' && !in_quotes ? 1 : 0;
    }
    return commas >= semicolons && commas >= tabs ? ',' : semicolons >= tabs ? ';' : '\t';
}

std::vector<CsvRecord> read_csv(std::string_view text, ProblemList& problems, char separator)
{
    return CsvReader(text, problems, separator).records();
}

} // namespace tuckwright::reading
