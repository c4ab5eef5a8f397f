// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/steps_frame.hpp"

#include <algorithm>

#include "report/covers.hpp"
#include "report/words.hpp"

namespace tuckwright::report {

namespace {

constexpr double hardly_longer = 1.0; ///< mm
constexpr double upright_cosine = 0.9995;

/// Whether an item lies in the holder, or in what lies there, or is a lid shut on one of these or on the holder.
bool moves_with(const Bundle& bundle, std::size_t item, std::size_t holder)
{
    for (std::size_t steps = 0; steps <= 2 * bundle.items.size(); ++steps) {
        const PlacedItem& it = bundle.items[item];
        if (item == holder || it.closes == holder) {
            return true;
        }
        if (it.closes) {
            item = *it.closes;
        } else if (it.in) {
            item = it.in->item;
        } else {
            return false;
        }
    }
    return false;
}

/// Whether everything moves with the item.
bool is_the_whole(const Bundle& bundle, std::size_t item)
{
    for (std::size_t i = 0; i < bundle.items.size(); ++i) {
        if (!moves_with(bundle, i, item)) {
            return false;
        }
    }
    return true;
}

bool is_upright_box(const PlacedItem& vessel, std::size_t index)
{
    if (index >= vessel.cavities.size()) {
        return false;
    }
    const PlacedCavity& cavity = vessel.cavities[index];
    return std::holds_alternative<Box>(cavity.shape) && rotation_matrix(cavity.pose.turn)[2][2] > upright_cosine;
}

} // namespace

namespace {

constexpr const char* clock_in_words =
    "Hours are those of a clock seen from above, 12 farthest from you, round the middle of whatever a thing goes into. "
    "Fill each vessel the way round in which it will stand.";

std::string box_frame(const Bundle& bundle, const Box& box, bool has_hours)
{
    const bool boxes_filled = std::any_of(bundle.items.begin(), bundle.items.end(), [&](const PlacedItem& item) {
        return item.in && item.in->item < bundle.items.size() &&
               is_upright_box(bundle.items[item.in->item], item.in->cavity);
    });
    const std::string side = box.length >= box.width + hardly_longer ? "its long side" : "one side";
    return "The bundle stands with " + side + " in front of you: left and right are along its length, " +
           "front and back along its width." +
           (has_hours      ? std::string(" ") + clock_in_words
            : boxes_filled ? " A box that is filled beforehand is turned as it will be in the bundle."
                           : "");
}

} // namespace

std::string frame_in_words(const Bundle& bundle)
{
    const auto speak_of = [&](const char* words) {
        return std::any_of(bundle.steps.begin(), bundle.steps.end(),
                           [&](const Step& step) { return step.text.find(words) != std::string::npos; });
    };
    const bool has_hours = (speak_of("o'clock") || speak_of("half past"));
    const std::string mouths = speak_of("mouth up for now") ? " What ends upside down or on its side is filled mouth up." : "";
    if (const auto* box = std::get_if<Box>(&bundle.envelope)) {
        return bundle.items.size() < 2 ? "" : box_frame(bundle, *box, has_hours) + mouths;
    }
    const auto direct = std::count_if(bundle.items.begin(), bundle.items.end(),
                                      [](const PlacedItem& item) { return !item.in && !item.closes; });
    std::string text = (has_hours ? clock_in_words : "") + mouths;
    if (direct > 1 && speak_of("off the middle")) {
        text += " The bundle's own middle is that of a circle " +
                length_in_words(std::get<Cylinder>(bundle.envelope).diameter) + " across.";
    }
    return text.starts_with(' ') ? text.substr(1) : text;
}

std::string first_when_unpacking(const Bundle& bundle)
{
    for (auto step = bundle.steps.rbegin(); step != bundle.steps.rend(); ++step) {
        const PlacedItem& item = bundle.items[step->item];
        if (item.closes) {
            return "open " + spoken_name(bundle, *item.closes);
        }
        if (!is_the_whole(bundle, step->item)) {
            return "take out " + spoken_name(bundle, step->item);
        }
    }
    return "";
}

std::vector<ComingOut> unpacking_order(const Bundle& bundle)
{
    std::vector<ComingOut> order;
    for (const std::string& cover : covers_from_outside(bundle)) {
        order.push_back({cover, std::nullopt});
    }
    for (auto step = bundle.steps.rbegin(); step != bundle.steps.rend(); ++step) {
        const PlacedItem& item = bundle.items[step->item];
        const std::string name = spoken_name(bundle, step->item);
        if (item.closes) {
            for (const std::string& band : bands_over(bundle, step->item)) {
                order.push_back({band + " off " + name, std::nullopt});
            }
            order.push_back({name + " off " + spoken_name(bundle, *item.closes), step->item});
        } else if (item.in) {
            order.push_back({name + " from " + spoken_name(bundle, item.in->item), step->item});
        } else if (!is_the_whole(bundle, step->item)) {
            order.push_back({name, step->item});
        }
    }
    return order;
}

} // namespace tuckwright::report
