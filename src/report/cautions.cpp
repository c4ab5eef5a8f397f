// SPDX-License-Identifier: GPL-3.0-or-later
// Common practice, no source; what the maker and the place say goes first.
#include "report/cautions.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <span>
#include <string_view>

namespace tuckwright::report {

namespace {

struct Caution {
    std::vector<Kind> kinds;             ///< what the kit says that it is
    std::vector<std::string_view> words; ///< whole words; a plural s is taken off before they are compared
    std::string_view advice;
    enum class Stoves { too, not_these, alone } stoves = Stoves::too; ///< whether it is about stoves, which have a flame
};

constexpr std::array<std::string_view, 2> stove_words{"stove", "burner"};

const std::array<Caution, 9>& known()
{
    static const std::vector<std::string_view> fuels{"fuel",   "spirit",   "alcohol",  "petrol",   "gasoline",
                                                     "paraffin", "kerosene", "methanol", "ethanol"};
    static const std::array<Caution, 9> all{{
        {{Kind::fuel},
         fuels,
         "keep tightly shut, away from flames and apart from food",
         Caution::Stoves::not_these},
        {{Kind::fuel},
         fuels,
         "let what is in it burn off, or shut it tightly once it is cold; never fill it near a flame or while it is hot",
         Caution::Stoves::alone},
        {{Kind::pressurised},
         {"gas", "cartridge", "canister", "propane", "butane", "isobutane"},
         "keep cool, take off whatever is screwed on before packing, and ask before taking it on a train, ship or "
         "plane"},
        {{}, {"stove", "burner"}, "let the flame go out before packing; never use in a tent or closed room"},
        {{Kind::flame},
         {"lighter", "match", "matche", "firelighter", "firesteel", "tinder"},
         "keep dry, and out of children's reach"},
        {{Kind::sharp},
         {"knife", "knive", "blade", "saw", "scissor", "razor"},
         "fold or cover the edge before packing"},
        {{Kind::hot},
         {"stove", "burner"},
         "let cool down before packing; hot, it can melt, burn or burst what it touches"},
        {{Kind::fragile}, {}, "wrap in something soft, and set the bundle down gently"},
        {{Kind::liquid}, {}, "shut tightly, and keep the bundle upright"},
    }};
    return all;
}

/// The words of a text in small letters, without the s of a plural.
void add_words(std::set<std::string>& words, std::string_view text)
{
    std::string word;
    const auto end_word = [&] {
        words.insert(word);
        if (word.size() > 3 && word.back() == 's') {
            words.insert(word.substr(0, word.size() - 1));
        }
        word.clear();
    };
    for (const char c : text) {
        if (c >= 'A' && c <= 'Z') {
            word += static_cast<char>(c - 'A' + 'a');
        } else if ((c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80U) {
            word += c;
        } else {
            end_word();
        }
    }
    end_word();
}

/// The name up to a comma, for all copies.
std::string name_of(const PlacedItem& item)
{
    const std::string name = item.name.substr(0, item.name.find(','));
    return name.empty() ? item.id : name;
}

bool names_any(const PlacedItem& item, std::span<const std::string_view> wanted)
{
    std::set<std::string> words;
    for (const auto* text : {&item.id, &item.name, &item.contents}) {
        add_words(words, *text);
    }
    return std::any_of(wanted.begin(), wanted.end(),
                       [&](std::string_view word) { return words.count(std::string(word)) > 0; });
}

/// Whether the item is, or speaks of, what the caution is about.
bool speaks_of(const PlacedItem& item, const Caution& caution)
{
    const auto is_of = [&](Kind kind) {
        return std::find(item.kinds.begin(), item.kinds.end(), kind) != item.kinds.end();
    };
    const bool is_stove = names_any(item, stove_words);
    if ((caution.stoves == Caution::Stoves::alone && !is_stove) ||
        (caution.stoves == Caution::Stoves::not_these && is_stove)) {
        return false;
    }
    if (std::any_of(caution.kinds.begin(), caution.kinds.end(), is_of)) {
        return true;
    }
    return names_any(item, caution.words);
}

} // namespace

std::vector<std::string> cautions(const Bundle& bundle)
{
    std::vector<std::string> result;
    for (const auto& caution : known()) {
        std::string about;
        std::set<std::string> named; // copies once
        for (const auto& item : bundle.items) {
            if (speaks_of(item, caution) && named.insert(item.id).second) {
                about += (about.empty() ? "" : ", ") + name_of(item);
            }
        }
        if (!about.empty()) {
            result.push_back(about + ": " + std::string(caution.advice) + ".");
        }
    }
    return result;
}

} // namespace tuckwright::report
