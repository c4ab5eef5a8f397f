// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/nesting_tree.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "report/words.hpp"
#include "tuckwright/geometry.hpp"

namespace tuckwright::report {

namespace {

constexpr std::size_t deepest_shown = 20; // further down the indent stays, so that text still fits

class Tree {
public:
    explicit Tree(const Bundle& bundle) : bundle_(bundle), below_(bundle.items.size())
    {
        for (std::size_t i = 0; i < bundle.items.size(); ++i) {
            const auto& item = bundle.items[i];
            if (item.closes && *item.closes < below_.size()) {
                below_[*item.closes].push_back(i);
            } else if (item.in && item.in->item < below_.size()) {
                below_[item.in->item].push_back(i);
            } else {
                roots_.push_back(i);
            }
        }
    }

    std::string text() const
    {
        std::string result;
        for (const auto root : roots_) {
            add(result, root, 1);
        }
        return result;
    }

    std::string about(std::size_t i) const
    {
        const std::string text = how_it_lies(i);
        return text.empty() ? text : text.substr(2);
    }

private:
    /// Solids of an item besides its body; the skirt of a lid that is shut on it is none of its own.
    std::size_t fixed_parts(std::size_t i) const
    {
        const auto& solids = bundle_.items[i].solids;
        if (solids.size() < 2) {
            return 0;
        }
        for (const auto& lid : bundle_.items) {
            if (lid.closes == i && !lid.solids.empty() && is_as_wide(solids.back().shape, lid.solids.front().shape)) {
                return solids.size() - 2;
            }
        }
        return solids.size() - 1;
    }

    static bool is_as_wide(const Shape& a, const Shape& b)
    {
        if (a.index() != b.index()) {
            return false;
        }
        const auto* c = std::get_if<Cylinder>(&a);
        return c != nullptr ? c->diameter == std::get<Cylinder>(b).diameter
                            : std::get<Box>(a).length == std::get<Box>(b).length &&
                                  std::get<Box>(a).width == std::get<Box>(b).width;
    }

    /// The box round an item's first solids, along its own axes.
    std::string over_all(std::size_t i, std::size_t parts) const
    {
        const auto& solids = bundle_.items[i].solids;
        const Matrix3 m = rotation_matrix(solids.front().pose.turn);
        Box box{};
        for (std::size_t k = 0; k < 3; ++k) {
            const Vec3 axis{m[0][k], m[1][k], m[2][k]};
            double low = 1e9, high = -1e9;
            for (std::size_t part = 0; part <= parts; ++part) {
                const Hull hull = hull_of(solids[part]);
                low = std::min(low, -support(hull, -1.0 * axis));
                high = std::max(high, support(hull, axis));
            }
            (k == 0 ? box.length : k == 1 ? box.width : box.height) = high - low;
        }
        return size_in_words(box);
    }

    /// ", sticks out 7 mm" for what is higher than the open vessel in which it lies.
    std::string standing_out(std::size_t i) const
    {
        constexpr double noticeable = 0.5; // mm
        const auto& item = bundle_.items[i];
        if (!item.in || item.in->item >= bundle_.items.size()) {
            return "";
        }
        const auto& cavities = bundle_.items[item.in->item].cavities;
        if (item.in->cavity >= cavities.size() || cavities[item.in->cavity].opens == Opening::closed) {
            return "";
        }
        const PlacedCavity& cavity = cavities[item.in->cavity];
        const Matrix3 m = rotation_matrix(cavity.pose.turn);
        const Vec3 up{m[0][2], m[1][2], m[2][2]};
        const double rim = dot(up, cavity.pose.center) + height_of(cavity.shape) / 2;
        double high = -1e9;
        for (const Solid& solid : item.solids) {
            high = std::max(high, support(hull_of(solid), up));
        }
        return high < rim + noticeable ? "" : ", sticks out " + length_in_words(high - rim);
    }

    std::string line(std::size_t i) const { return full_name(bundle_, i) + how_it_lies(i); }

    /// The line without the name, from the comma on.
    std::string how_it_lies(std::size_t i) const
    {
        const auto& item = bundle_.items[i];
        std::string text;
        if (item.closes) {
            text += ", shut on it as its lid";
            if (!item.solids.empty()) { // only the plate that stands above the rim is the lid's own solid
                text += ", " + width_in_words(item.solids.front().shape) + ", adds " +
                        length_in_words(height_of(item.solids.front().shape));
            }
            for (const Band& band : bundle_.bands) {
                text += band.over == item.id ? ", held by " + (band.name.empty() ? band.id : band.name) : "";
            }
        } else {
            text += item.stowed.empty() ? "" : ", " + in_answer_units(item.stowed, bundle_);
            text += item.form.empty() ? "" : ", " + item.form;
            text += item.solids.empty() ? "" : ", " + size_in_words(item.solids.front().shape);
            const std::size_t parts = fixed_parts(i);
            text += parts == 0 ? ""
                               : fmt::format(", with {} part{} fixed to it, {} over all", parts, parts == 1 ? "" : "s",
                                             over_all(i, parts));
            text += standing_out(i);
        }
        if (!item.contents.empty()) {
            text += item.contents_g > 0
                        ? fmt::format(", holds {} of {}", weight_in_words(item.contents_g), item.contents)
                        : fmt::format(", empty of {}", item.contents);
        }
        return text;
    }

    void add(std::string& result, std::size_t i, std::size_t depth) const
    {
        result += wrapped(std::string(2 * std::min(depth, deepest_shown), ' '), line(i));
        for (const auto child : below_[i]) {
            add(result, child, depth + 1);
        }
    }

    const Bundle& bundle_;
    std::vector<std::vector<std::size_t>> below_;
    std::vector<std::size_t> roots_;
};

} // namespace

std::string nesting_tree(const Bundle& bundle) { return Tree(bundle).text(); }

std::string thing_in_words(const Bundle& bundle, std::size_t item) { return Tree(bundle).about(item); }

} // namespace tuckwright::report
