// SPDX-License-Identifier: GPL-3.0-or-later
#include <deque>

#include "proof/apart.hpp"
#include "proof/forest.hpp"
#include "proof/rules.hpp"
#include "tuckwright/tolerance.hpp"

namespace tuckwright::proof {

namespace {

constexpr double same_weight = 1 + 1e-12;

class LoadCheck {
public:
    LoadCheck(const Scene& scene, Findings& findings)
        : scene_(scene), findings_(findings), drop_(nanometres(tolerance::rest_drop))
    {
    }

    void run()
    {
        for (std::size_t item = 0; item < scene_.size() && !findings_.full(); ++item) {
            const PlacedItem& it = scene_.bundle().items[item];
            if (it.nothing_on_top || it.bears_g) {
                judge(item, it);
            }
        }
    }

private:
    using Set = std::vector<bool>;

    void judge(std::size_t item, const PlacedItem& it)
    {
        const Set load = load_on(item);
        double grams = 0;
        std::string names;
        for (std::size_t upper = 0; upper < scene_.size(); ++upper) {
            if (load[upper]) {
                grams += scene_.bundle().items[upper].weight_g + scene_.bundle().items[upper].contents_g;
                names += (names.empty() ? "" : ", ") + named(scene_.bundle(), upper);
            }
        }
        if (it.nothing_on_top && !names.empty()) {
            findings_.add("load", "nothing may lie on " + named(scene_.bundle(), item) +
                                      ", but these are not proved to lie off it: " + names);
        } else if (it.bears_g && !(grams <= *it.bears_g * same_weight)) {
            findings_.add("load", named(scene_.bundle(), item) + " bears " + in_grams(*it.bears_g) + ", but " +
                                      in_grams(grams) + " may lie on it: " + names);
        }
    }

    static std::string in_grams(double grams)
    {
        std::string text = std::to_string(grams);
        text.erase(text.find_last_not_of('0') + 1);
        return (text.back() == '.' ? text.substr(0, text.size() - 1) : text) + " g";
    }

    /// The vessel on which a row of shut lids ends.
    std::size_t vessel(std::size_t item) const
    {
        while (scene_.bundle().items[item].closes) {
            item = *scene_.bundle().items[item].closes;
        }
        return item;
    }

    /// Whether the item is the other, or hangs on it.
    bool belongs(std::size_t item, std::size_t other) const
    {
        for (std::optional<std::size_t> at = item; at; at = hangs_on(scene_.bundle().items[*at])) {
            if (*at == other) {
                return true;
            }
        }
        return false;
    }

    /// All that may press on the item, its shut lid or what it holds.
    Set load_on(std::size_t item) const
    {
        const std::size_t base = vessel(item);
        Set load(scene_.size(), false), known(scene_.size(), false);
        std::deque<std::size_t> below;
        const auto take = [&](std::size_t whole, Set* into) {
            for (std::size_t part = 0; part < scene_.size(); ++part) {
                if (!known[part] && belongs(part, whole)) {
                    known[part] = true;
                    below.push_back(part);
                    if (into != nullptr) {
                        (*into)[part] = true;
                    }
                }
            }
        };
        take(base, nullptr);
        while (!below.empty()) {
            const std::size_t lower = below.front();
            below.pop_front();
            for (std::size_t upper = 0; upper < scene_.size(); ++upper) {
                const std::size_t whole = vessel(upper);
                const bool one_in_the_other = belongs(lower, whole) || belongs(upper, vessel(lower));
                if (!known[upper] && !belongs(base, whole) && !one_in_the_other && presses(upper, lower)) {
                    take(whole, &load);
                }
            }
        }
        return load;
    }

    /// Whether it is not proved that a small drop leaves the two apart.
    bool presses(std::size_t upper, std::size_t lower) const
    {
        const auto &falling = scene_.solids(upper), &standing = scene_.solids(lower);
        for (std::size_t i = 0; i < falling.size(); ++i) {
            const Piece lowered = moved(falling[i], {0, 0, -drop_});
            for (std::size_t j = 0; j < standing.size(); ++j) {
                if (!part(lowered, standing[j], scene_.normals(upper, i, lower, j)).proved) {
                    return true;
                }
            }
        }
        return false;
    }

    const Scene& scene_;
    Findings& findings_;
    Rational drop_;
};

} // namespace

void check_loads(const Scene& scene, Findings& findings) { LoadCheck(scene, findings).run(); }

} // namespace tuckwright::proof
