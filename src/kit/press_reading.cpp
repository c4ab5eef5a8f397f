// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/press_reading.hpp"

#include <array>

#include "kit/words.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright::reading
{

namespace
{

using Drafts = std::vector<ItemDraft>;

constexpr std::array<std::string_view, 2> press_keys{"into", "gives"};
constexpr KnownFields press_fields{press_keys, "press-fit: {into: pot, gives: 3 mm}", press_keys};

const Cylinder* straight_round(const Shape& shape)
{
    const auto* cylinder = std::get_if<Cylinder>(&shape);
    return cylinder != nullptr && cylinder->foot == 0 ? cylinder : nullptr;
}

/// Refuses whatever only a thing has that is not pressed together.
void check_shape(Reading& reading, Fields& item, const ItemDraft& draft)
{
    for (const std::string_view key : {"closes", "parts", "forms"}) {
        if (item.given(key)) {
            item.refuse(key,
                        "what is pressed together is one plain cylinder or sleeve and has no '" + std::string(key) + "'",
                        "keep one of the two");
        }
    }
    if (draft.outside && straight_round(draft.item.outside) == nullptr) {
        item.refuse("press-fit", "only a straight round thing is pressed into a round inside",
                    "give it a cylinder without 'foot', or delete 'press-fit'");
    }
    const auto& inside = draft.item.inside;
    if (inside && (straight_round(inside->shape) == nullptr || inside->neck)) {
        reading.problems.add(*draft.inside_place, "the inside of what is pressed together is a straight round one",
                             "give it a cylinder without 'foot' and 'opening', or delete 'press-fit'");
    }
}

/// Whether something can be pressed into the vessel at all, with the reason if not.
bool check_vessel(Reading& reading, const Named& into, const ItemDraft& vessel)
{
    const auto refuse = [&](const std::string& what, const std::string& remedy) {
        reading.problems.add(into.place, in_quotes(into.id) + " " + what, remedy);
        return false;
    };
    const std::string remedy = "name a vessel with a straight round inside";
    if (vessel.is_cover) {
        return refuse("goes round everything", remedy);
    }
    if (vessel.closes) {
        return refuse("is a lid, and nothing is pressed into a lid", remedy);
    }
    if (!vessel.inside_place) {
        return refuse("has no inside that something could be pressed into", remedy);
    }
    if (!vessel.item.inside) {
        return false; // its inside is faulty, and has been reported
    }
    if (vessel.press) {
        return refuse("is pressed together itself", "name a vessel that keeps its width");
    }
    if (vessel.item.is_full()) {
        return refuse("is filled by its contents, and nothing else lies in it",
                      "name another vessel, or write 'fills: no' in its contents");
    }
    const Cavity& inside = *vessel.item.inside;
    if (inside.opens == Opening::both) {
        return refuse("is open at both ends, so that what is pressed in may be pushed through", remedy);
    }
    if (std::holds_alternative<Box>(inside.shape)) {
        return refuse("has an inside that is not round", remedy);
    }
    if (straight_round(inside.shape) == nullptr) {
        return refuse("tapers, so that what is pressed in would slip out", remedy);
    }
    if (inside.neck) {
        return refuse("has an opening narrower than its inside", remedy);
    }
    return true;
}

Length on_grid(double mm) { return Length::of_nanometres(to_nanometres(mm)); }

/// "110 mm", or "110 mm, at worst 109.5 mm": a width as measured, and at the end of its range that matters.
std::string with_worst(Length measured, Length worst)
{
    return to_string(measured) + (worst == measured ? "" : ", at worst " + to_string(worst));
}

/// Whether the spring holds it and lets it in, whatever the tolerances of both.
void check_widths(Reading& reading, const ItemDraft& draft, const ItemDraft& vessel)
{
    const Cavity& inside = *vessel.item.inside;
    const Length wide = on_grid(std::get<Cylinder>(draft.item.outside).diameter);
    const Length bore = on_grid(std::get<Cylinder>(inside.shape).diameter);
    const Length off = on_grid(draft.item.outside_off.mm.front()), bore_off = on_grid(inside.off.mm.front());
    const auto& gives = draft.press->gives;
    if (wide - off <= bore + bore_off) {
        reading.problems.add(draft.outside->places.front(),
                             in_quotes(draft.item.id) + " is " + with_worst(wide, wide - off) +
                                 " across, not wider than the inside of " + in_quotes(vessel.item.id) + ", " +
                                 with_worst(bore, bore + bore_off) + ": it would be loose",
                             "measure both again, or delete 'press-fit'");
    } else if (gives && wide + off - *gives > bore - bore_off) {
        reading.problems.add(draft.press->gives_place,
                             "pressed together by " + to_string(*gives) + ", " + in_quotes(draft.item.id) + " is still " +
                                 with_worst(wide - *gives, wide + off - *gives) + " across, wider than the inside of " +
                                 in_quotes(vessel.item.id) + ", " + with_worst(bore, bore - bore_off),
                             "measure again how far it gives, and both widths");
    } else if (const auto* inner = draft.item.inside ? straight_round(draft.item.inside->shape) : nullptr) {
        const Length left = on_grid(inner->diameter) - on_grid(draft.item.inside->off.mm.front()) -
                            (wide + off - (bore - bore_off));
        if (left <= Length{}) {
            reading.problems.add(*draft.inside_place,
                                 "once it is pressed together, nothing is left of the inside of " +
                                     in_quotes(draft.item.id),
                                 "delete its 'inside', or measure again");
        }
    }
}

void check_pressed_pair(Reading& reading, const ItemDraft& draft, const ItemDraft& vessel)
{
    check_widths(reading, draft, vessel);
    const Length high = on_grid(height_of(draft.item.outside)), deep = on_grid(height_of(vessel.item.inside->shape));
    if (high > deep) {
        reading.problems.add(draft.outside->places.back(),
                             in_quotes(draft.item.id) + " is " + to_string(high) + " high, the inside of " +
                                 in_quotes(vessel.item.id) + " only " + to_string(deep) +
                                 ": beyond the rim it would spring open",
                             "name a deeper vessel, or delete 'press-fit'");
    }
}

/// What others say of a thing that is pressed together: nobody shuts it, and it goes nowhere else.
bool check_company(Reading& reading, const Drafts& drafts, const ItemDraft& draft)
{
    const std::string& id = draft.item.id;
    bool sound = true;
    for (const ItemDraft& lid : drafts) {
        if (draft.id_place && lid.closes && lid.closes->vessel == id) {
            reading.problems.add(lid.closes->vessel_place,
                                 in_quotes(id) + " is pressed together, and so has no lid that fits it",
                                 "delete 'closes' here, or 'press-fit' there");
            sound = false;
        }
    }
    const auto& goes_in = draft.carry.goes_in;
    if (goes_in && goes_in->id != draft.press->into->id) {
        reading.problems.add(goes_in->place,
                             in_quotes(id) + " is pressed into " + in_quotes(draft.press->into->id) +
                                 ", so it does not lie in " + in_quotes(goes_in->id) + " by itself",
                             "delete 'goes-in' or 'press-fit'");
        sound = false;
    }
    return sound;
}

} // namespace

void read_press(Reading& reading, Fields& item, ItemDraft& draft)
{
    const Node* node = item.find("press-fit");
    if (node == nullptr) {
        return;
    }
    Fields fields(reading, *node, "press-fit", press_fields);
    PressDraft press;
    press.place = item.entry("press-fit")->place;
    if (const Node* into = fields.need("into", "name the id of the vessel that it is pressed into")) {
        if (const auto id = read_text(reading, *into, "into")) {
            press.into = Named{*id, into->place};
        }
    }
    if (const Node* gives =
            fields.need("gives", "say by how much its diameter can be pressed together, such as 'gives: 3'")) {
        press.gives = read_length(reading, *gives, "gives", AtLeast::micrometre);
        press.gives_place = gives->place;
    }
    check_shape(reading, item, draft);
    draft.press = press;
}

void check_presses(Reading& reading, Drafts& drafts, IdIndex& ids)
{
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        ItemDraft& draft = drafts[i];
        if (!draft.press || !draft.press->into) {
            continue;
        }
        const Named& into = *draft.press->into;
        const Link vessel = ids.need(reading, into.id, into.place);
        if (!vessel) {
            continue;
        }
        if (*vessel == i) {
            reading.problems.add(into.place, in_quotes(into.id) + " is pressed into itself", "name another item");
            continue;
        }
        const bool sound = check_company(reading, drafts, draft);
        if (!check_vessel(reading, into, drafts[*vessel]) || !sound) {
            continue;
        }
        if (draft.outside && straight_round(draft.item.outside) != nullptr) {
            check_pressed_pair(reading, draft, drafts[*vessel]);
        }
        draft.item.press = PressFit{*vessel, draft.press->gives ? draft.press->gives->mm_down() : 0};
        draft.carry.goes_in = draft.carry.goes_in ? draft.carry.goes_in : into;
    }
}

} // namespace tuckwright::reading
