// SPDX-License-Identifier: GPL-3.0-or-later
#include "nesting/kit_scene.hpp"

#include <algorithm>
#include <cmath>

#include "nesting/company_of_kit.hpp"
#include "nesting/containment_graph.hpp"
#include "packing/leaning.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/stowage.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright::nesting {

using namespace packing;

namespace {

/// A plate needs a thickness to be a solid: a lid that adds nothing counts as this thin (mm).
constexpr double thinnest_plate = 2e-6;

Shape with_height(Shape shape, double height)
{
    std::visit([&](auto& s) { s.height = height; }, shape);
    return shape;
}

bool wider(const Shape& lid, const Shape& vessel)
{
    if (const auto* l = std::get_if<Cylinder>(&lid)) {
        const auto* v = std::get_if<Cylinder>(&vessel);
        return v == nullptr || l->diameter > v->diameter;
    }
    const auto& l = std::get<Box>(lid);
    const auto* v = std::get_if<Box>(&vessel);
    return v == nullptr || l.length > v->length || l.width > v->width;
}

/// Takes the clearance from the side walls; false where nothing is left.
bool narrowed(Shape& shape, double clearance)
{
    if (auto* c = std::get_if<Cylinder>(&shape)) {
        c->diameter -= 2 * clearance;
        return c->diameter > 0;
    }
    auto& b = std::get<Box>(shape);
    b.length -= 2 * clearance;
    b.width -= 2 * clearance;
    return b.length > 0 && b.width > 0;
}

/// The cavity less the clearance at its side walls; nothing where no room is left, be it that contents fill it.
std::optional<Hollow> hollow_of(const Item& item, double clearance)
{
    if (!item.inside || item.is_full()) {
        return std::nullopt;
    }
    const Cavity& cavity = *item.inside;
    Hollow hollow{cavity.shape,
                  cavity.floor - height_of(item.outside) / 2,
                  cavity.opens != Opening::closed && !cavity.neck,
                  cavity.opens == Opening::both,
                  clearance,
                  cavity.neck};
    if (const auto* c = std::get_if<Cylinder>(&hollow.shape); c != nullptr && c->foot != 0) {
        hollow.clearance = 0; // what goes into a tapering vessel has air all round until it is seated
        return hollow;
    }
    const bool has_room = narrowed(hollow.shape, clearance) && (!hollow.neck || narrowed(*hollow.neck, clearance));
    return has_room ? std::optional(hollow) : std::nullopt;
}

/// Whether further pieces make a difference which way up, or about its own axis, a body lies.
bool is_lopsided(const Body& body, std::size_t lid_pieces)
{
    return body.pieces.size() > 1 + lid_pieces;
}

std::vector<Form> forms_of(const Body& body, std::size_t lid_pieces)
{
    if (body.upright || body.pressed) {
        return {Form::standing};
    }
    if (is_lopsided(body, lid_pieces)) {
        return {Form::standing,    Form::on_end,       Form::on_side,
                Form::upside_down, Form::on_other_end, Form::on_other_side};
    }
    const Shape& shape = body.pieces.front().shape;
    const bool may_lean = rod_of(body).has_value();
    if (std::holds_alternative<Cylinder>(shape)) {
        return may_lean ? std::vector<Form>{Form::standing, Form::on_end, Form::leaning}
                        : std::vector<Form>{Form::standing, Form::on_end};
    }
    const auto& b = std::get<Box>(shape);
    const bool plain = !body.hollow && body.pieces.size() == 1;
    std::vector<Form> forms{Form::standing};
    if (!plain || b.length != b.height) {
        forms.push_back(Form::on_end);
    }
    if (!plain || (b.width != b.height && b.width != b.length)) {
        forms.push_back(Form::on_side);
    }
    if (may_lean) {
        forms.push_back(Form::leaning);
    }
    return forms;
}

/// A part of an item, its place told from `middle` mm above the item's bottom.
BodyPiece piece_of(const Part& part, double middle)
{
    const Form turned = part.axis == Axis::z   ? Form::standing
                        : part.axis == Axis::x ? Form::on_end
                                               : Form::on_side;
    return {part.shape, part.at.z - middle, part.at.x, part.at.y, turned};
}

Body body_of(const Kit& kit, const Item& item, const Item* lid)
{
    Body body;
    body.pieces.push_back({item.outside, 0});
    for (const Part& part : item.parts) {
        body.pieces.push_back(piece_of(part, height_of(item.outside) / 2));
    }
    const std::size_t own = body.pieces.size();
    body.hollow = hollow_of(item, kit.clearance);
    if (lid != nullptr) {
        body.pieces.push_back(lid_plate(*lid, item));
        if (const auto skirt = lid_skirt(*lid, item)) {
            body.pieces.push_back(*skirt);
        }
        if (body.hollow) {
            body.hollow->open_top = false;
            body.hollow->shape = lower_part(body.hollow->shape, height_of(body.hollow->shape) - lid_takes(*lid, item));
        }
    }
    if (item.press) { // its cell is without the clearance that it does not need
        body.pressed = true;
        body.held = true;
        const bool is_wider = narrowed(body.pieces.front().shape, kit.clearance);
        require(item.press->relaxed && is_wider, "what is pressed into a vessel has the width of its bore");
    }
    body.upright = item.upright || (lid != nullptr && lid->upright);
    body.forms = forms_of(body, body.pieces.size() - own);
    body.plan_is_round = std::all_of(body.pieces.begin(), body.pieces.end(), [](const BodyPiece& piece) {
        return std::holds_alternative<Cylinder>(piece.shape) && piece.x == 0 && piece.y == 0 &&
               piece.turned == Form::standing;
    });
    for (const BodyPiece& piece : body.pieces) {
        body.volume += volume_ml(piece.shape) * 1000;
    }
    return body;
}

/// Adds the other ways to stow the last body of the scene.
void add_others(Scene& scene, const Kit& kit, const Item& item, const Item* lid)
{
    scene.stowages.emplace_back();
    for (std::size_t form = 1; form <= item.forms.size(); ++form) {
        Body other = body_of(kit, in_form(item, form), lid);
        other.held = item.forms[form - 1].held;
        scene.stowages.back().push_back(static_cast<int>(scene.others.size()));
        scene.others.push_back(std::move(other));
    }
}

/// Whether a body that is pressed into a vessel is just as wide as a hollow, which has lost its clearance too.
bool fills(const Body& body, const Body& vessel)
{
    const auto* bore = vessel.hollow ? std::get_if<Cylinder>(&vessel.hollow->shape) : nullptr;
    return bore != nullptr && bore->diameter == std::get<Cylinder>(body.pieces.front().shape).diameter;
}

/// What is pressed into a vessel has no place but there.
void keep_pressed(KitScene& made, const Kit& kit)
{
    Scene& scene = made.scene;
    for (std::size_t k = 0; k < scene.bodies.size(); ++k) {
        const auto& press = kit.items[made.origins[k].self.item].press;
        if (!press) {
            continue;
        }
        std::vector<unsigned>& fits = scene.fits[k];
        std::vector<unsigned> kept(fits.size(), 0);
        for (std::size_t vessel = 0; vessel < scene.bodies.size(); ++vessel) {
            for (int way = 0; way < scene.ways(static_cast<int>(vessel)); ++way) {
                const std::size_t column = at(scene.row(static_cast<int>(vessel), way) + 1);
                if (made.origins[vessel].self.item == press->item &&
                    fills(scene.bodies[k], scene.stowed(static_cast<int>(vessel), way))) {
                    kept[column] = fits[column];
                }
            }
        }
        fits = std::move(kept);
    }
}

} // namespace

BodyPiece lid_plate(const Item& lid, const Item& vessel)
{
    const double adds = std::max(lid.closes->adds, thinnest_plate);
    return {with_height(lid.outside, adds), (height_of(vessel.outside) + adds) / 2};
}

double lid_takes(const Item& lid, const Item& vessel)
{
    const double neck = vessel.inside && vessel.inside->neck ? height_of(*vessel.inside->neck) : 0;
    return std::max(0.0, lid.closes->intrudes - neck);
}

std::optional<BodyPiece> lid_skirt(const Item& lid, const Item& vessel)
{
    const double hangs = height_of(lid.outside) - lid.closes->adds;
    if (hangs <= lid.closes->intrudes || !wider(lid.outside, vessel.outside)) {
        return std::nullopt;
    }
    return BodyPiece{with_height(lid.outside, hangs), (height_of(vessel.outside) - hangs) / 2};
}

namespace {

double even_up(double mm) { return 2 * snap_up(mm / 2); }
double even_down(double mm) { return 2 * snap_down(mm / 2); }

template <class Round> void round_sides(Shape& shape, Round round)
{
    if (auto* c = std::get_if<Cylinder>(&shape)) {
        c->foot = c->foot == 0 ? 0 : round(c->foot);
        c->height = round(c->height); // a diameter may be odd: its middle is where the search puts it
    } else {
        auto& b = std::get<Box>(shape);
        b = {round(b.length), round(b.width), round(b.height)};
    }
}

void round_cavity(std::optional<Cavity>& cavity, double outer)
{
    if (!cavity) {
        return;
    }
    round_sides(cavity->shape, even_down);
    if (cavity->opens == Opening::both) {
        cavity->shape = with_height(cavity->shape, outer);
    }
    if (cavity->neck) {
        round_sides(*cavity->neck, even_down);
    }
    // The mouth of an open cavity stays in the top face; a closed one keeps its floor or sinks a nanometre.
    const double top = outer - height_of(cavity->shape) - (cavity->neck ? height_of(*cavity->neck) : 0);
    cavity->floor = cavity->opens == Opening::closed ? even_down(std::min(cavity->floor, top)) : top;
}

void round_parts(std::vector<Part>& parts)
{
    for (Part& part : parts) {
        round_sides(part.shape, even_up);
        part.at = {even_up(part.at.x), even_up(part.at.y), even_up(part.at.z)};
    }
}

} // namespace

Kit on_even_grid(Kit kit)
{
    kit.clearance = snap_up(kit.clearance);
    for (Item& item : kit.items) {
        round_sides(item.outside, even_up);
        round_cavity(item.inside, height_of(item.outside));
        round_parts(item.parts);
        for (Stowage& form : item.forms) {
            round_sides(form.outside, even_up);
            round_cavity(form.inside, height_of(form.outside));
            round_parts(form.parts);
        }
        if (item.closes) {
            item.closes->adds = even_up(item.closes->adds);
            item.closes->intrudes = even_up(item.closes->intrudes);
        }
    }
    return kit;
}

std::vector<Copy> lids(const Kit& kit)
{
    std::vector<Copy> found;
    for (std::size_t item = 0; item < kit.items.size(); ++item) {
        for (int copy = 1; kit.items[item].closes && copy <= kit.items[item].count; ++copy) {
            found.push_back({item, copy});
        }
    }
    return found;
}

std::vector<std::vector<bool>> lid_choices(const Kit& kit)
{
    const std::vector<Copy> all = lids(kit);
    std::vector<std::vector<bool>> choices{std::vector<bool>(all.size(), true)};
    std::vector<std::size_t> may_be_loose;
    const auto is_held = [&](const std::string& lid) {
        return std::any_of(kit.bands.begin(), kit.bands.end(), [&](const Band& band) { return band.over == lid; }) ||
               std::any_of(kit.rules.begin(), kit.rules.end(),
                           [&](const CarryRule& rule) { return rule.keep == Keep::shut && rule.first == lid; });
    };
    for (std::size_t k = 0; k < all.size(); ++k) {
        const Item& lid = kit.items[all[k].item];
        if (!kit.items[lid.closes->item].is_full() && !is_held(lid.id)) {
            may_be_loose.push_back(k);
        }
    }
    constexpr std::size_t most_singles = 6;
    for (std::size_t k = 0; k < may_be_loose.size() && may_be_loose.size() > 1 && k < most_singles; ++k) {
        choices.push_back(choices.front());
        choices.back()[may_be_loose[k]] = false;
    }
    if (!may_be_loose.empty()) {
        choices.push_back(choices.front());
        for (const std::size_t k : may_be_loose) {
            choices.back()[k] = false;
        }
    }
    return choices;
}

EnvelopeLimits envelope_limits(const Kit& kit)
{
    EnvelopeLimits limits;
    const BundleRule& rule = kit.bundle;
    const double wall = kit.bag ? kit.bag->thickness : 0;
    limits.radius = rule.diameter ? *rule.diameter / 2 - wall : limits.radius;
    limits.half_length = rule.length ? *rule.length / 2 - wall : limits.half_length;
    limits.half_width = rule.width ? *rule.width / 2 - wall : limits.half_width;
    limits.height = rule.height ? *rule.height - 2 * wall : limits.height;
    limits.height = kit.bag ? std::min(limits.height, kit.bag->length) : limits.height;
    return limits;
}

KitScene kit_scene(const Kit& kit, const std::vector<bool>& shut)
{
    const std::vector<Copy> all_lids = lids(kit);
    require(shut.size() == all_lids.size(), "every lid is told to be shut or loose");
    const auto lid_of = [&](Copy vessel) -> std::optional<Copy> {
        for (std::size_t k = 0; k < all_lids.size(); ++k) {
            if (shut[k] && all_lids[k].copy == vessel.copy && kit.items[all_lids[k].item].closes->item == vessel.item) {
                return all_lids[k];
            }
        }
        return std::nullopt;
    };
    KitScene made;
    std::size_t lid = 0;
    double total = 0;
    for (std::size_t item = 0; item < kit.items.size(); ++item) {
        for (int copy = 1; copy <= kit.items[item].count; ++copy) {
            if (kit.items[item].closes && shut[lid++]) {
                continue; // moves with its vessel
            }
            const Copy self{item, copy};
            const auto its_lid = lid_of(self);
            made.origins.push_back({self, its_lid});
            const Item* lid_item = its_lid ? &kit.items[its_lid->item] : nullptr;
            made.scene.bodies.push_back(body_of(kit, kit.items[item], lid_item));
            add_others(made.scene, kit, kit.items[item], lid_item);
            total += made.scene.bodies.back().volume;
        }
    }
    double longest = 0; // a needle's volume says little about the steps that it needs
    for (const Body& body : made.scene.bodies) {
        for (const Form form : body.forms) {
            const Reach reach = vertical_reach(body, form);
            longest = std::max(longest, reach.below + reach.above);
        }
    }
    made.scene.size = std::max(std::cbrt(total / static_cast<double>(made.scene.bodies.size())), 0.1 * longest);
    made.scene.fits = containment_graph(made.scene, kit).fit_table();
    keep_pressed(made, kit);
    made.scene.company = company_of(kit, made.origins);
    for (auto* bodies : {&made.scene.bodies, &made.scene.others}) {
        std::for_each(bodies->begin(), bodies->end(), [](Body& body) { tabulate(body); });
    }
    return made;
}

} // namespace tuckwright::nesting
