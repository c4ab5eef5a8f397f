// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/nesting_tree.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "report/words.hpp"

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

    std::string line(std::size_t i) const
    {
        const auto& item = bundle_.items[i];
        std::string text = full_name(bundle_, i);
        if (item.closes) {
            text += ", shut on it as its lid";
            if (!item.solids.empty()) { // only the plate that stands above the rim is the lid's own solid
                text += ", adds " + length_in_words(height_of(item.solids.front().shape));
            }
            for (const Band& band : bundle_.bands) {
                text += band.over == item.id ? ", held by " + (band.name.empty() ? band.id : band.name) : "";
            }
        } else {
            text += item.stowed.empty() ? "" : ", " + item.stowed;
            text += item.form.empty() ? "" : ", " + item.form;
            text += item.solids.empty() ? "" : ", " + size_in_words(item.solids.front().shape);
            const std::size_t parts = fixed_parts(i);
            text += parts == 0 ? "" : fmt::format(", with {} part{} fixed to it", parts, parts == 1 ? "" : "s");
        }
        if (!item.contents.empty()) {
            text += fmt::format(", holds {} of {}", weight_in_words(item.contents_g), item.contents);
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

} // namespace tuckwright::report
