// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/compare_things.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

#include "kit/kinds.hpp"
#include "report/words.hpp"

namespace tuckwright {

namespace {

/// How a thing is told, and what else makes it another one, told where the words alone are the same.
struct Described {
    std::string words, inside, kinds;
    friend bool operator==(const Described&, const Described&) = default;
};

/// "Small pot (pot)"; the id alone where there is no other name.
std::string called(const std::string& name, const std::string& id)
{
    return name == id || name.empty() ? id : fmt::format("{} ({})", name, id);
}

/// ", of kind sooty, lips": kinds decide what may go together.
std::string kinds_in_words(const Item& item)
{
    std::string words;
    for (const Kind kind : item.kinds) {
        words += (words.empty() ? ", of kind " : ", ") + std::string(reading::kind_words()[static_cast<std::size_t>(kind)]);
    }
    return words.empty() ? ", of no kind" : words;
}

Described described(const Item& item)
{
    std::string words = item.count > 1 ? fmt::format("{} x ", item.count) : "";
    words += fmt::format("{}, {}, {}", called(item.name, item.id), report::size_in_words(item.outside),
                         report::weight_in_words(item.weight_g));
    if (item.contents) {
        words += fmt::format(" and {} of {}", report::weight_in_words(item.contents->weight_g), item.contents->what);
    }
    const std::string inside =
        item.inside ? ", inside " + report::size_in_words(item.inside->shape, report::Rounding::down) : "";
    return {words, inside, kinds_in_words(item)};
}

std::vector<Described> described(const Kit& kit)
{
    std::vector<Described> all;
    for (const Item& item : kit.items) {
        all.push_back(described(item));
    }
    const auto add_cover = [&](const auto& cover) {
        all.push_back({fmt::format("{}, {}", called(cover.name, cover.id), report::weight_in_words(cover.weight_g)),
                       fmt::format(", {} round", report::length_in_words(cover.girth)),
                       {}});
    };
    if (kit.bag) {
        add_cover(*kit.bag);
    }
    std::for_each(kit.bands.begin(), kit.bands.end(), add_cover);
    return all;
}

std::string wish_of(const Kit& kit)
{
    std::string words = kit.bundle.shape == BundleShape::cylinder ? "a round bundle" : "a box";
    const char* before = " at most ";
    const auto add = [&](const std::optional<double>& limit, const char* how) {
        if (limit) {
            words += fmt::format("{}{} {}", before, report::room_in_words(*limit), how);
            before = ", ";
        }
    };
    add(kit.bundle.diameter, "across");
    add(kit.bundle.length, "long");
    add(kit.bundle.width, "wide");
    add(kit.bundle.height, "high");
    words += fmt::format(", with {} of clearance", report::length_in_words(kit.clearance));
    return words + (kit.worst_case ? ", for the worst case by the tolerances" : "");
}

} // namespace

std::vector<SharedThing> wishes_of(const std::vector<const Kit*>& kits)
{
    std::vector<SharedThing> wishes;
    for (std::size_t k = 0; k < kits.size(); ++k) {
        const std::string words = wish_of(*kits[k]);
        const auto found =
            std::find_if(wishes.begin(), wishes.end(), [&](const SharedThing& wish) { return wish.words == words; });
        auto& wish = found != wishes.end() ? *found : wishes.emplace_back(SharedThing{words, {}});
        wish.kits.push_back(k);
    }
    return wishes;
}

std::vector<SharedThing> things_of(const std::vector<const Kit*>& kits)
{
    std::vector<std::pair<Described, std::vector<std::size_t>>> all;
    for (std::size_t k = 0; k < kits.size(); ++k) {
        for (Described& thing : described(*kits[k])) {
            const auto found = std::find_if(all.begin(), all.end(), [&](const auto& t) { return t.first == thing; });
            auto& where = found != all.end() ? *found : all.emplace_back(std::move(thing), std::vector<std::size_t>());
            where.second.push_back(k);
        }
    }
    std::vector<SharedThing> things;
    for (const auto& [thing, where] : all) {
        const auto another_has = [&, &t = thing](std::string Described::*part) {
            return std::any_of(all.begin(), all.end(), [&](const auto& other) {
                return other.first.words == t.words && other.first.*part != t.*part;
            });
        };
        things.push_back({thing.words + (another_has(&Described::inside) ? thing.inside : "") +
                              (another_has(&Described::kinds) ? thing.kinds : ""),
                          where});
    }
    return things;
}

std::string numbers_in_words(const std::vector<std::size_t>& indices)
{
    std::vector<std::string> parts;
    for (std::size_t i = 0; i < indices.size();) {
        std::size_t last = i;
        while (last + 1 < indices.size() && indices[last + 1] == indices[last] + 1) {
            ++last;
        }
        if (last > i + 1) {
            parts.push_back(fmt::format("{} to {}", indices[i] + 1, indices[last] + 1));
        } else {
            last = i;
            parts.push_back(std::to_string(indices[i] + 1));
        }
        i = last + 1;
    }
    std::string text;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        text += (i == 0 ? "" : i + 1 < parts.size() ? ", " : " and ") + parts[i];
    }
    return text;
}

} // namespace tuckwright
