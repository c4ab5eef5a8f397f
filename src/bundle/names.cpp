// SPDX-License-Identifier: GPL-3.0-or-later
// What people call an item, and how they would say that it lies.
#include <algorithm>
#include <cmath>

#include "tuckwright/bundle.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/geometry.hpp"

namespace tuckwright {

namespace {

constexpr double upright_cosine = 0.9995; ///< within two degrees
constexpr double level_cosine = 0.03;
constexpr double thin_disc = 0.45;    ///< height over diameter below which a cylinder lies flat,
constexpr double thin_vessel = 0.25;  ///< and a vessel to be filled, which people see as standing longer
constexpr double thin_wall_share = 0.75; ///< of a sleeve's width that is open, from which it is thought of as a wall
constexpr double same_length = 1e-6;  ///< mm
constexpr double tipped_over = -1e-9; ///< cosine from which a sleeve counts as standing on its head

std::string name_before_comma(const PlacedItem& item)
{
    const std::string name = item.name.substr(0, item.name.find(','));
    return name.empty() ? item.id : name;
}

/// Small letters, and blanks for - and _: what is the same to a reader.
std::string plain(std::string text)
{
    for (char& c : text) {
        c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c == '-' || c == '_' ? ' ' : c;
    }
    return text;
}

/// The id in brackets, where different items share a name and it is not the name itself.
std::string id_if_shared(const Bundle& bundle, const PlacedItem& item)
{
    const std::string name = name_before_comma(item);
    const bool shared = std::any_of(bundle.items.begin(), bundle.items.end(), [&](const PlacedItem& other) {
        return other.id != item.id && name_before_comma(other) == name;
    });
    return shared && name != item.id ? " (" + item.id + ")" : "";
}

bool has_copies(const Bundle& bundle, const PlacedItem& item)
{
    return std::any_of(bundle.items.begin(), bundle.items.end(),
                       [&](const PlacedItem& other) { return other.id == item.id && other.copy != item.copy; });
}

Vec3 axis(const Pose& pose, std::size_t k)
{
    const Matrix3 m = rotation_matrix(pose.turn);
    return {m[0][k], m[1][k], m[2][k]};
}

Vec3 upright_of_container(const Bundle& bundle, const PlacedItem& item)
{
    if (!item.in) {
        return {0, 0, 1};
    }
    const auto& cavities = bundle.items[item.in->item].cavities;
    require(item.in->cavity < cavities.size(), "a container's cavity is one of its own");
    const PlacedCavity& cavity = cavities[item.in->cavity];
    const Vec3 up = axis(cavity.pose, 2);
    return cavity.opens == Opening::both && up.z < tipped_over ? -1.0 * up : up; // a sleeve has no top of its own
}

/// Whether something is fixed to it nearer to one end than to the other.
bool has_uneven_parts(const PlacedItem& item)
{
    const Pose& body = item.solids.front().pose;
    return std::any_of(item.solids.begin() + 1, item.solids.end(), [&](const Solid& part) {
        return std::abs(dot(axis(body, 2), part.pose.center - body.center)) > same_length;
    });
}

/// Whether it matters which end of the item's own axis is up.
bool has_top(const Bundle& bundle, std::size_t item)
{
    const PlacedItem& it = bundle.items[item];
    return it.upright || has_uneven_parts(it) ||
           std::any_of(it.cavities.begin(), it.cavities.end(),
                       [](const PlacedCavity& cavity) { return cavity.opens != Opening::both; }) ||
           std::any_of(bundle.items.begin(), bundle.items.end(),
                       [&](const PlacedItem& other) { return other.closes == item; });
}

/// A cup, a pot, a windscreen: open at the top, with a lid that is another item, or a sleeve with a thin wall; not a roll
/// of tape, nor a tin that is shut by itself.
bool is_to_be_filled(const Bundle& bundle, std::size_t item)
{
    const PlacedItem& it = bundle.items[item];
    const auto is_open = [&](const PlacedCavity& cavity) {
        const auto* bore = std::get_if<Cylinder>(&cavity.shape);
        const auto* body = std::get_if<Cylinder>(&it.solids.front().shape);
        const bool thin_wall = bore == nullptr || body == nullptr || bore->diameter > thin_wall_share * body->diameter;
        return cavity.opens == Opening::top || (cavity.opens == Opening::both && thin_wall);
    };
    return std::any_of(it.cavities.begin(), it.cavities.end(), is_open) ||
           std::any_of(bundle.items.begin(), bundle.items.end(),
                       [&](const PlacedItem& other) { return other.closes == item; });
}

std::string posture_of_cylinder(const Cylinder& cylinder, double cosine, bool topped, bool to_be_filled)
{
    const bool thin = cylinder.height < (to_be_filled ? thin_vessel : thin_disc) * cylinder.diameter;
    if (std::abs(cosine) <= level_cosine) {
        return thin ? "on its edge" : "lying";
    }
    if (std::abs(cosine) < upright_cosine) {
        return "leaning";
    }
    return topped && cosine < 0 ? "upside down" : thin ? "flat" : "standing";
}

/// Named after the edge that points up. Where a box has a top, it is more telling that this is up, or down.
std::string posture_of_box(const Box& box, const std::array<double, 3>& cosines, bool topped)
{
    const std::array<double, 3> edges{box.length, box.width, box.height};
    const auto upward =
        std::find_if(cosines.begin(), cosines.end(), [](double cosine) { return std::abs(cosine) >= upright_cosine; });
    if (upward == cosines.end()) {
        return "leaning";
    }
    const auto up = static_cast<std::size_t>(upward - cosines.begin());
    const auto [shortest, longest] = std::minmax_element(edges.begin(), edges.end());
    const bool is_shortest = edges[up] < *shortest + same_length;
    const bool cube = *longest < *shortest + same_length;
    if (topped && up == 2) {
        return *upward < 0 ? "upside down" : is_shortest && !cube ? "flat" : "standing";
    }
    if (cube) {
        return topped ? "lying" : "standing";
    }
    if (is_shortest) {
        return topped ? "lying" : "flat";
    }
    const auto longer =
        std::count_if(edges.begin(), edges.end(), [&](double e) { return e > edges[up] + same_length; });
    const auto alike =
        std::count_if(edges.begin(), edges.end(), [&](double e) { return std::abs(e - edges[up]) <= same_length; });
    return longer > 0 || alike > 1 ? "on its edge" : "on its end"; // a square board is never on its end
}

} // namespace

std::string spoken_name(const Bundle& bundle, std::size_t item)
{
    require(item < bundle.items.size(), "an item's index is below the number of items");
    const PlacedItem& it = bundle.items[item];
    const std::string copy = has_copies(bundle, it) ? " " + std::to_string(it.copy) : "";
    return name_before_comma(it) + copy + id_if_shared(bundle, it);
}

std::string common_name(const Bundle& bundle, const std::string& id)
{
    const auto found =
        std::find_if(bundle.items.begin(), bundle.items.end(), [&](const PlacedItem& item) { return item.id == id; });
    return found == bundle.items.end() ? id : name_before_comma(*found) + id_if_shared(bundle, *found);
}

std::string full_name(const Bundle& bundle, std::size_t item)
{
    require(item < bundle.items.size(), "an item's index is below the number of items");
    const PlacedItem& it = bundle.items[item];
    std::string name = name_before_comma(it);
    const std::string rest = it.name.size() > name.size() && !it.name.empty() ? it.name.substr(name.size()) : "";
    const std::string id = plain(it.name.empty() ? it.id : it.name) == plain(it.id) ? "" : " (" + it.id + ")";
    name += has_copies(bundle, it) ? " " + std::to_string(it.copy) : "";
    return name + rest + id;
}

std::string lid_band_step(const Bundle& bundle, const Band& band)
{
    const std::string own = band.name.substr(0, band.name.find(','));
    const std::string start = "Put " + (own.empty() ? band.id : own) + " over ";
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        const auto& closes = bundle.items[item].closes;
        if (bundle.items[item].id == band.over && closes && *closes < bundle.items.size()) {
            return start + spoken_name(bundle, item) + " and under " + spoken_name(bundle, *closes) + ".";
        }
    }
    return start + band.over + " and under what it closes.";
}

std::string posture(const Bundle& bundle, std::size_t item)
{
    require(item < bundle.items.size(), "an item's index is below the number of items");
    const PlacedItem& it = bundle.items[item];
    require(!it.solids.empty(), "an item has a solid");
    const Solid& body = it.solids.front();
    const Vec3 up = upright_of_container(bundle, it);
    const std::array<double, 3> cosines{dot(axis(body.pose, 0), up), dot(axis(body.pose, 1), up),
                                        dot(axis(body.pose, 2), up)};
    const bool topped = has_top(bundle, item);
    if (const auto* cylinder = std::get_if<Cylinder>(&body.shape)) {
        return posture_of_cylinder(*cylinder, cosines[2], topped, is_to_be_filled(bundle, item));
    }
    return posture_of_box(std::get<Box>(body.shape), cosines, topped);
}

} // namespace tuckwright
