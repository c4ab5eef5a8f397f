// SPDX-License-Identifier: GPL-3.0-or-later
/// A table of things becomes a tree with the table's places, which is read as any shelf is, and written out.
#include <algorithm>
#include <array>
#include <set>

#include "kit/csv.hpp"
#include "kit/document.hpp"
#include "kit/shelf_reading.hpp"
#include "kit/words.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/shelf.hpp"

namespace tuckwright {

namespace {

using namespace reading;

/// A column, and where its value stands in an entry: in a group of fields, or in the entry itself.
struct Column {
    std::string_view name, group, key;
    bool is_text = false; ///< as somebody likes to write it
};

constexpr std::array<Column, 19> columns{{{"id", "", "id"},
                                          {"name", "", "name", true},
                                          {"count", "", "count"},
                                          {"weight_g", "", "weight"},
                                          {"diameter_mm", "cylinder", "diameter"},
                                          {"length_mm", "box", "length"},
                                          {"width_mm", "box", "width"},
                                          {"height_mm", "", "height"},
                                          {"wall_mm", "inside", "wall"},
                                          {"base_mm", "inside", "base"},
                                          {"opens", "inside", "opens"},
                                          {"lid", "inside", "lid"},
                                          {"contents", "contents", "what", true},
                                          {"contents_g", "contents", "amount"},
                                          {"upright", "", "upright"},
                                          {"kinds", "", "kind"},
                                          {"closes", "closes", "item"},
                                          {"adds_mm", "closes", "adds"},
                                          {"intrudes_mm", "closes", "intrudes"}}};
constexpr std::array<std::string_view, 3> needed{"id", "weight_g", "height_mm"};

/// For each field of a record the column in which it stands; nothing for one that is not known.
using Header = std::vector<const Column*>;

Header read_header(const CsvRecord& record, ProblemList& problems)
{
    std::vector<std::string_view> known;
    for (const Column& column : columns) {
        known.push_back(column.name);
    }
    Header header;
    constexpr std::size_t most = 200; // with columns that are not known, each of which is told
    if (record.size() > most) {
        problems.add(record.front().place,
                     "the first line has " + std::to_string(record.size()) + " fields, but a table of things has at most " +
                         std::to_string(columns.size()) + " columns",
                     "the first line names the columns; check that it is the right file");
        return header;
    }
    std::set<std::string_view> given;
    for (const CsvField& field : record) {
        const auto found = std::find_if(columns.begin(), columns.end(),
                                        [&](const Column& column) { return column.name == field.text; });
        header.push_back(found != columns.end() ? &*found : nullptr);
        if (found == columns.end()) {
            problems.add(field.place, "unknown column " + in_quotes(field.text), suggestion(field.text, known));
        } else if (!given.insert(found->name).second) {
            problems.add(field.place, "the column " + in_quotes(field.text) + " is given twice", "keep one of the two");
        }
    }
    for (const std::string_view name : needed) {
        if (problems.empty() && !given.contains(name)) {
            problems.add(record.front().place, "there is no column " + in_quotes(name),
                         "the first line names the columns: id, weight_g, height_mm, and diameter_mm or length_mm and "
                         "width_mm at least");
        }
    }
    return header;
}

Entry& entry_in(Node& map, std::string_view key, Place place)
{
    const auto found = std::find_if(map.entries.begin(), map.entries.end(), [&](Entry& e) { return e.key == key; });
    if (found != map.entries.end()) {
        return *found;
    }
    return map.entries.emplace_back(Entry{std::string(key), place, Node{NodeKind::map, place, "", {}, {}}});
}

/// The value of a cell: a list for words with spaces between them, else its text.
Node value_of(const Column& column, const CsvField& field)
{
    if (column.key != "kind") {
        return Node{NodeKind::text, field.place, field.text, {}, {}};
    }
    Node list{NodeKind::list, field.place, "", {}, {}};
    for (std::size_t start = field.text.find_first_not_of(' '); start != std::string::npos;) {
        const auto end = std::min(field.text.find(' ', start), field.text.size());
        list.items.push_back(Node{NodeKind::text,
                                  {field.place.line, field.place.byte + static_cast<int>(start)},
                                  field.text.substr(start, end - start),
                                  {},
                                  {}});
        start = field.text.find_first_not_of(' ', end);
    }
    return list;
}

/// Puts the height where it belongs, and reports what makes no shape.
void settle_shape(Node& thing, ProblemList& problems)
{
    const auto find = [&](std::string_view key) {
        return std::find_if(thing.entries.begin(), thing.entries.end(), [&](Entry& e) { return e.key == key; });
    };
    // Leaves an outside that has been reported.
    const auto spoil = [&] {
        std::erase_if(thing.entries,
                      [](const Entry& e) { return e.key == "height" || e.key == "cylinder" || e.key == "box"; });
        thing.entries.push_back({"box", thing.place, Node{NodeKind::unusable, thing.place, "", {}, {}}});
    };
    const auto height = find("height"), round = find("cylinder"), angular = find("box");
    if (round != thing.entries.end() && angular != thing.entries.end()) {
        problems.add(angular->place, "the thing has a diameter and a length or width",
                     "give diameter_mm for a round one, length_mm and width_mm for one with corners");
        return spoil();
    }
    if (round == thing.entries.end() && angular == thing.entries.end()) {
        problems.add(thing.place, "the thing has no diameter_mm, and no length_mm and width_mm", "measure it");
        return spoil();
    }
    Node& outside = (round != thing.entries.end() ? round : angular)->value;
    if (height != thing.entries.end()) {
        outside.entries.push_back(*height);
        thing.entries.erase(height);
    }
}

/// The thing of a record, as an entry of a shelf. A needed cell that is empty is reported, and none of it is missed later.
Node thing_of(const CsvRecord& record, const Header& header, ProblemList& problems)
{
    Node thing{NodeKind::map, record.front().place, "", {}, {}};
    for (std::size_t i = 0; i < header.size(); ++i) {
        const Column* column = header[i];
        const CsvField& field = record[i];
        const bool is_needed =
            column != nullptr && std::find(needed.begin(), needed.end(), column->name) != needed.end();
        if (column == nullptr || (field.text.empty() && !is_needed)) {
            continue;
        }
        Node value = value_of(*column, field);
        if (field.text.empty()) {
            problems.add(field.place, std::string(column->name) + " is empty", "fill it in");
            value.kind = NodeKind::unusable;
        }
        Node& map = column->group.empty() ? thing : entry_in(thing, column->group, field.place).value;
        map.entries.push_back({std::string(column->key), field.place, std::move(value)});
    }
    settle_shape(thing, problems);
    return thing;
}

bool is_measured(const Column* column)
{
    return column != nullptr && (column->name.ends_with("_mm") || column->name.ends_with("_g"));
}

/// In a table without commas between its columns, numbers may have decimal commas, all of them or none: they become points.
/// Where some have a comma and others a point, nobody can tell which are the decimals.
void settle_decimals(std::vector<CsvRecord>& records, const Header& header, ProblemList& problems)
{
    std::vector<CsvField*> with_commas;
    const CsvField* with_point = nullptr;
    for (std::size_t r = 1; r < records.size(); ++r) {
        for (std::size_t i = 0; i < std::min(header.size(), records[r].size()); ++i) {
            CsvField& field = records[r][i];
            if (is_measured(header[i])) {
                with_point = with_point == nullptr && field.text.find('.') != std::string::npos ? &field : with_point;
                if (std::count(field.text.begin(), field.text.end(), ',') == 1) {
                    with_commas.push_back(&field);
                }
            }
        }
    }
    if (with_point != nullptr && !with_commas.empty()) {
        problems.add(with_commas.front()->place,
                     in_quotes(with_commas.front()->text) + " has a comma, but " + in_quotes(with_point->text) + " in line " +
                         std::to_string(with_point->place.line + 1) + " a point",
                     "write all numbers with decimal points, or all with decimal commas, and nothing between thousands");
        return;
    }
    for (CsvField* field : with_commas) {
        field->text[field->text.find(',')] = '.';
    }
}

Node tree_of_table(std::string_view csv, const std::string& title, ProblemList& problems)
{
    Node things{NodeKind::list, {}, "", {}, {}};
    const char separator = separator_of(csv);
    auto records = read_csv(csv, problems, separator);
    ProblemList about_header;
    const Header header = records.empty() ? Header{} : read_header(records.front(), about_header);
    if (separator != ',' && about_header.empty()) {
        settle_decimals(records, header, about_header);
    }
    problems.merge(about_header);
    if (records.empty() && problems.empty()) {
        problems.add({}, "the table is empty", "its first line names the columns, each further one is a thing");
    }
    for (std::size_t r = 1; about_header.empty() && r < records.size(); ++r) {
        if (records[r].size() != header.size()) {
            problems.add(records[r].front().place,
                         "this line has " + std::to_string(records[r].size()) + " fields, but the first " +
                             std::to_string(header.size()),
                         std::string("give each column a field, be it empty; put a field with a ") +
                             (separator == ';' ? "semicolon" : separator == '\t' ? "tab" : "comma") + " in quotes");
        } else {
            things.items.push_back(thing_of(records[r], header, problems));
        }
    }
    if (records.size() == 1 && problems.empty()) {
        problems.add(records.front().front().place, "the table names columns, but holds no things",
                     "write each thing on a line of its own");
    }
    Node document{NodeKind::map, {}, "", {}, {}};
    document.entries.push_back({"shelf", {}, Node{NodeKind::text, {}, title, {}, {}}});
    document.entries.push_back({"items", {}, std::move(things)});
    return document;
}

/// A text as YAML reads it back: in quotes unless it is a plain word or number.
std::string scalar(const std::string& text)
{
    const bool plain = std::all_of(text.begin(), text.end(), [](char c) { return is_id_letter(c) || c == '.'; });
    if (plain && !text.empty()) {
        return text;
    }
    std::string quotes = "\"";
    for (const char c : text) {
        quotes += c == '"' || c == '\\' ? std::string("\\") + c : std::string(1, c);
    }
    return quotes + "\"";
}

std::string in_one_line(const Node& node)
{
    if (node.kind == NodeKind::text) {
        return scalar(node.text);
    }
    std::string text;
    for (const Node& item : node.items) {
        text += (text.empty() ? "" : ", ") + in_one_line(item);
    }
    for (const Entry& entry : node.entries) {
        text += (text.empty() ? "" : ", ") + entry.key + ": " + in_one_line(entry.value);
    }
    return node.kind == NodeKind::list ? "[" + text + "]" : "{" + text + "}";
}

/// Each thing a block, each of its fields a line.
std::string written(const Node& document)
{
    std::string text;
    for (const Entry& entry : document.entries) {
        if (entry.value.kind != NodeKind::list) {
            text += entry.key + ": " + in_one_line(entry.value) + "\n\nitems:\n";
            continue;
        }
        for (const Node& thing : entry.value.items) {
            const char* before = "  - ";
            for (const Entry& field : thing.entries) {
                text += before + field.key + ": " + in_one_line(field.value) + "\n";
                before = "    ";
            }
        }
    }
    return text;
}

} // namespace

Result<std::string> shelf_from_csv(std::string_view csv, const std::string& name, const std::string& title)
{
    csv = without_mark(csv);
    ProblemList problems;
    Node document;
    if (check_text(csv, problems)) {
        document = tree_of_table(csv, title, problems);
        if (!document.entries.back().value.items.empty()) {
            shelf_of(document, problems);
        }
    }
    if (!problems.empty()) {
        const Source source{csv, name};
        return problems.in_order({&source, 1});
    }
    std::string text = written(document);
    require(read_shelf_text(text, name).ok(), "a shelf that is written can be read");
    return text;
}

} // namespace tuckwright
