// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <fmt/format.h>

#include "advice/chain_words.hpp"
#include "report/words.hpp"
#include "tuckwright/geometry.hpp"
#include "tuckwright/savings.hpp"

namespace tuckwright {

namespace {

using report::wrapped;

constexpr double kept_air = 0.01; ///< mm: what the search keeps at curved contacts is told with its neighbour

/// Lengths rounded to what is told so that they add up as printed: each is the difference of two levels, rounded up.
class Levels {
public:
    std::string next(double mm)
    {
        level_ += mm;
        const double steps = std::ceil(level_ / step_ - 1e-4), more = steps - told_;
        told_ = steps;
        return report::length_in_words(more * step_);
    }

    std::string total() const { return report::length_in_words(told_ * step_); }

private:
    double step_ = report::told_step(), level_ = 0, told_ = 0; ///< mm; mm; whole steps
};

bool has_lid(const Bundle& bundle, std::size_t item)
{
    return std::any_of(bundle.items.begin(), bundle.items.end(),
                       [&](const PlacedItem& other) { return other.closes == item; });
}

/// Whether it counts with what sticks out of its body, such as a handle.
bool counts_with_parts(const Bundle& bundle, const Chain& chain, const Stretch& stretch)
{
    const Hull body = hull_of(bundle.items[*stretch.item].solids.front());
    const double own = support(body, chain.along) + support(body, -1.0 * chain.along);
    return stretch.mm > own + 0.05;
}

std::string name_of(const Bundle& bundle, const Chain& chain, const Stretch& stretch)
{
    const std::string name = stretch.item ? spoken_name(bundle, *stretch.item) : "";
    switch (stretch.part) {
    case StretchPart::whole:
        return !counts_with_parts(bundle, chain, stretch) ? name
               : has_lid(bundle, *stretch.item)           ? name + ", with its lid,"
                                                          : name + ", with what is fixed to it,";
    case StretchPart::base: return "bottom of " + name;
    case StretchPart::top: return "top of " + name;
    case StretchPart::wall: return (chain.dimension == Dimension::height ? "bottom and wall of " : "wall of ") + name;
    case StretchPart::lid: return name + ", shut,";
    case StretchPart::air: return "air";
    case StretchPart::bulge: return "the round wall beyond";
    case StretchPart::bag: return bundle.bag ? bundle.bag->name + "'s wall" : "bag";
    }
    return name;
}

std::string hour(const Vec3& way)
{
    constexpr double half_hour = 15;
    const double degrees = std::atan2(way.x, way.y) * 45 / std::atan(1.0); // from 12 o'clock, as a clock goes
    const long halves = (std::lround(degrees / half_hour) + 24) % 24;
    return (halves % 2 == 0 ? "" : "half past ") + std::to_string((halves / 2 + 11) % 12 + 1);
}

std::size_t things_in(const Chain& chain)
{
    return static_cast<std::size_t>(std::count_if(chain.stretches.begin(), chain.stretches.end(),
                                                  [](const Stretch& stretch) { return stretch.item.has_value(); }));
}

std::string from_where_to_where(const Chain& chain)
{
    switch (chain.dimension) {
    case Dimension::height: return things_in(chain) > 1 ? ", from below" : "";
    case Dimension::length: return things_in(chain) > 1 ? ", from the left" : "";
    case Dimension::width: return things_in(chain) > 1 ? ", from the front" : "";
    case Dimension::diameter: break;
    }
    if (things_in(chain) < 2 && chain.straight) {
        return "";
    }
    const std::string from = hour(-1.0 * chain.along), to = hour(chain.along);
    return ", from " + from + " to " + to + (to.front() == 'h' ? "" : " o'clock");
}

std::vector<std::string> parts_in_words(const Bundle& bundle, const Chain& chain, Levels& levels)
{
    std::vector<std::string> parts(chain.stretches.size());
    double kept = 0; // hairs of air go to what comes next
    for (std::size_t k = 0; k < parts.size(); ++k) {
        const Stretch& stretch = chain.stretches[k];
        if (!stretch.item && std::abs(stretch.mm) < kept_air) {
            kept += stretch.mm;
            continue;
        }
        const std::string length = levels.next(stretch.mm + kept);
        if (stretch.item || !length.starts_with("0 ")) {
            parts[k] = name_of(bundle, chain, stretch) + " " + length;
        }
        kept = 0;
    }
    return parts;
}

std::string sum_in_words(const Bundle& bundle, const Chain& chain, Levels& levels)
{
    std::string text;
    for (const std::string& part : parts_in_words(bundle, chain, levels)) {
        text += part.empty() ? "" : (text.empty() ? "" : " + ") + part;
    }
    return text;
}

std::string listed(const Bundle& bundle, const std::vector<std::size_t>& items)
{
    constexpr std::size_t most = 5;
    std::string text;
    for (std::size_t k = 0; k < std::min(items.size(), most); ++k) {
        const bool is_last = k + 1 == items.size();
        text += (k == 0 ? "" : is_last ? " and " : ", ") + spoken_name(bundle, items[k]);
    }
    return items.size() > most ? text + fmt::format(" and {} more", items.size() - most) : text;
}

/// Whether the rival is but another copy of the same thing, which gets smaller with it.
bool is_alike(const Bundle& bundle, const Rival& rival)
{
    return std::all_of(rival.items.begin(), rival.items.end(),
                       [&](std::size_t item) { return bundle.items[item].id == bundle.items[rival.of].id; });
}

std::string rival_in_words(const Bundle& bundle, const Rival& rival)
{
    const bool one = rival.items.size() == 1;
    return fmt::format("{} {} as far as {}: as they lie, nothing is won unless {} smaller, too.",
                       listed(bundle, rival.items), one ? "reaches" : "together reach", spoken_name(bundle, rival.of),
                       one ? "it gets" : "these get");
}

std::string chain_text(const Bundle& bundle, const Chain& chain)
{
    std::string word = to_string(chain.dimension);
    word.front() = static_cast<char>(word.front() - 'a' + 'A');
    Levels levels;
    const std::string sum = sum_in_words(bundle, chain, levels);
    std::string text =
        wrapped("  ", fmt::format("{} {}{}: {}.", word, levels.total(), from_where_to_where(chain), sum));
    if (!chain.straight) {
        text += wrapped("    ", "Some of it touches aslant, so a thing counts with what it takes along this line.");
        return text +
               (chain.others.empty() ? "" : wrapped("    ", "Wedged in too: " + listed(bundle, chain.others) + "."));
    }
    for (const Rival& rival : chain.rivals) {
        text += is_alike(bundle, rival) ? "" : wrapped("    ", rival_in_words(bundle, rival));
    }
    return text;
}

} // namespace

std::string chains_text(const Bundle& bundle, const std::vector<Chain>& chains)
{
    std::string text;
    for (const Chain& chain : chains) {
        text += chain_text(bundle, chain);
    }
    return text;
}

std::vector<std::string> advice::stretches_in_words(const Bundle& bundle, const Chain& chain)
{
    Levels levels;
    return parts_in_words(bundle, chain, levels);
}

} // namespace tuckwright
