// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/document.hpp"

#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <sstream>
#include <unordered_map>

#include "kit/quantity.hpp"
#include "kit/syntax_words.hpp"
#include "kit/words.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright::reading
{

namespace
{

Place place_of(const YAML::Mark& mark) { return mark.is_null() ? Place{} : Place{mark.line, mark.column}; }

/// Leaves the parser at once; the problem has been added.
struct Abandon {
};

/// Builds the tree from the parser's events. Aliases arrive as events too, so that none is ever expanded.
class TreeBuilder : public YAML::EventHandler
{
public:
    TreeBuilder(std::string_view text, ProblemList& problems) : text_(text), problems_(problems) {}

    /// The first document's tree, and whether all of it has come.
    Node take() { return std::move(root_); }
    bool first_is_whole() const { return documents_ > 1; }

    void OnDocumentStart(const YAML::Mark& mark) override
    {
        if (++documents_ == 1) {
            return;
        }
        const auto at = static_cast<std::size_t>(mark.pos);
        if (at < text_.size() && text_.substr(at).starts_with("---")) {
            problems_.add(place_of(mark), "a second document begins here",
                          "keep one kit in a file, without '---' in between");
        } else { // to the parser, whatever stands behind a complete value begins a document
            problems_.add(place_of(mark), "this does not belong to what stands above it",
                          "check its indentation and the brackets above it");
        }
        throw Abandon{};
    }
    void OnDocumentEnd() override {}

    void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override
    {
        Node node = leaf(mark, NodeKind::nothing, "", "", anchor);
        node.place = dash_before(mark).value_or(node.place);
        attach(std::move(node));
    }
    void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override
    {
        problems_.add(place_of(mark), "an alias ('*' with a name) is not taken in a kit file", "write the value out");
        attach(Node{NodeKind::unusable, place_of(mark), "", {}, {}});
    }
    void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  const std::string& value) override
    {
        if (is_unclosed_quote(mark)) {
            problems_.add(place_of(mark), "this quote is not closed", "add the closing quote");
            throw Abandon{};
        }
        attach(leaf(mark, NodeKind::text, value, tag, anchor));
    }
    void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                         YAML::EmitterStyle::value) override
    {
        open(leaf(mark, NodeKind::list, "", tag, anchor));
    }
    void OnSequenceEnd() override { close(); }
    void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                    YAML::EmitterStyle::value style) override
    {
        open(leaf(mark, NodeKind::map, "", tag, anchor));
        open_.back().in_braces = style == YAML::EmitterStyle::Flow;
    }
    void OnMapEnd() override { close(); }

private:
    /// A list or map whose end has not come yet. In a map a key waits for its value.
    struct Open {
        Node node;
        bool in_braces = false;
        bool key_waits = false;
        Node key;
        std::unordered_map<std::string, int> lines; // of the keys so far
    };

    /// The parser lets the end of a file close a quote. What it has read it would take for one long text.
    bool is_unclosed_quote(const YAML::Mark& mark) const
    {
        auto at = static_cast<std::size_t>(mark.pos);
        if (at >= text_.size() || (text_[at] != '"' && text_[at] != '\'')) {
            return false;
        }
        const char quote = text_[at];
        for (++at; at < text_.size() && text_[at] != quote; ++at) {
            at += quote == '"' && text_[at] == '\\' ? 1 : 0;
        }
        return at >= text_.size();
    }

    /// The dash of a list entry with nothing behind it, for which the parser tells the place of whatever comes next.
    std::optional<Place> dash_before(const YAML::Mark& mark) const
    {
        int line = mark.line;
        for (auto at = std::min(static_cast<std::size_t>(mark.pos), text_.size()); at > 0; --at) {
            const char c = text_[at - 1];
            if (c == '-') {
                const auto line_end = text_.rfind('\n', at - 1);
                const std::size_t line_start = line_end == std::string_view::npos ? 0 : line_end + 1;
                return Place{line, static_cast<int>(at - 1 - line_start)};
            }
            if (c != ' ' && c != '\n' && c != '\r') {
                return std::nullopt;
            }
            line -= c == '\n' ? 1 : 0;
        }
        return std::nullopt;
    }

    Node leaf(const YAML::Mark& mark, NodeKind kind, const std::string& text, const std::string& tag,
              YAML::anchor_t anchor)
    {
        const Place place = place_of(mark);
        if (anchor != 0) {
            problems_.add(place, "an anchor ('&' with a name) is not taken in a kit file", "take it out");
        }
        if (!tag.empty() && tag != "?" && tag != "!") {
            problems_.add(place, "a tag (" + in_quotes(tag) + ") is not taken in a kit file", "take it out");
        }
        return Node{kind, place, text, {}, {}};
    }

    void open(Node node)
    {
        if (static_cast<int>(open_.size()) == deepest_nesting) {
            problems_.add(node.place, too_deep_what, too_deep_remedy);
            throw Abandon{};
        }
        open_.push_back({std::move(node), false, false, {}, {}});
    }

    void close()
    {
        require(!open_.empty(), "an end belongs to a start");
        Node done = std::move(open_.back().node);
        open_.pop_back();
        attach(std::move(done));
    }

    void attach(Node node)
    {
        if (open_.empty()) {
            root_ = std::move(node);
            return;
        }
        Open& parent = open_.back();
        if (parent.node.kind == NodeKind::list) {
            parent.node.items.push_back(std::move(node));
        } else if (!parent.key_waits) {
            parent.key = std::move(node);
            parent.key_waits = true;
        } else {
            parent.key_waits = false;
            add_entry(parent, std::move(node));
        }
    }

    /// Whether a key is the rest of the number before it: in braces the comma of '{height: 90,5}' ends the value.
    static bool is_cut_by_comma(const Node& map, const Node& key)
    {
        constexpr std::string_view digits = "0123456789";
        if (map.entries.empty() || map.entries.back().value.kind != NodeKind::text) {
            return false;
        }
        const std::string& number = map.entries.back().value.text;
        return !number.empty() && number.find_first_not_of("+-.0123456789") == std::string::npos &&
               digits.find(number.back()) != std::string_view::npos && !key.text.empty() &&
               digits.find(key.text.front()) != std::string_view::npos;
    }

    void add_entry(Open& map, Node value)
    {
        const Node& key = map.key;
        if (key.kind == NodeKind::unusable) {
            return;
        }
        if (key.kind != NodeKind::text) {
            problems_.add(key.place, "a key is " + kind_name(key) + ", not a word", "write 'key: value'");
            return;
        }
        if (map.in_braces && value.kind == NodeKind::nothing && is_cut_by_comma(map.node, key)) {
            Entry& cut = map.node.entries.back();
            problems_.add(cut.value.place,
                          cut.key + ": " + in_quotes(cut.value.text + "," + key.text) + " has a comma in its number",
                          comma_remedy);
            cut.value.kind = NodeKind::unusable;
            return;
        }
        const auto [first, fresh] = map.lines.emplace(key.text, key.place.line);
        if (!fresh) {
            problems_.add(key.place,
                          in_quotes(key.text) + " is given twice, first in line " + std::to_string(first->second + 1),
                          "keep one of the two");
            return;
        }
        map.node.entries.push_back({key.text, key.place, std::move(value)});
    }

    std::string_view text_;
    ProblemList& problems_;
    Node root_;
    std::vector<Open> open_;
    int documents_ = 0;
};

} // namespace

std::string kind_name(const Node& node)
{
    switch (node.kind) {
    case NodeKind::nothing: return "nothing";
    case NodeKind::text: return "text";
    case NodeKind::list: return "a list";
    case NodeKind::map: return "a group of fields";
    case NodeKind::unusable: return "unusable";
    }
    require(false, "a node's kind is one of the five");
    return "";
}

std::optional<Node> parse_document(std::string_view text, ProblemList& problems)
{
    TreeBuilder builder(text, problems);
    try {
        std::istringstream stream{std::string(text)};
        YAML::Parser parser(stream);
        while (parser.HandleNextDocument(builder)) {
        }
    } catch (const YAML::Exception& error) {
        add_syntax_problem(text, error.msg, place_of(error.mark), problems);
        return std::nullopt;
    } catch (const Abandon&) {
        return builder.first_is_whole() ? std::optional(builder.take()) : std::nullopt;
    }
    return builder.take();
}

Node text_at(Place place, std::string text) { return {NodeKind::text, place, std::move(text), {}, {}}; }

} // namespace tuckwright::reading
