// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. In a circle smaller than the best so far discs overlap whatever their places; of all places those with the
// least sum of squared overlaps mostly lead to the smallest circle. Runs start anywhere and hop: two discs of about the
// same size are swapped, or one is put where there is room, all are pushed apart, and what overlaps less is kept. Discs
// that differ do so in a circle a few per cent too small at first, where hops lead farther. Each run ends in one that is
// only slightly too small, which tells apart what is nearly as good, and, if that looks well, with the circle's radius
// as one more variable, held up by what overlaps.
#include "packing/discs.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "packing/descent.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright::packing {

namespace {

using Vector = std::vector<double>;

/// The squares of all overlaps of discs and of what stands out of the circle, by places: all x, then all y; then, if it
/// is `free`, the circle's radius, on which a spring draws with a constant `pull`.
class DiscEnergy {
public:
    explicit DiscEnergy(const Vector& radii) : radii_(radii) {}

    double radius = 0;
    bool free = false;
    double pull = 0;

    double operator()(const Vector& places, Vector& gradient)
    {
        const std::size_t n = radii_.size();
        const double *x = places.data(), *y = x + n;
        double *gx = gradient.data(), *gy = gx + n;
        const double around = free ? places[2 * n] : radius;
        std::fill(gradient.begin(), gradient.end(), 0.0);
        double sum = 0, outward = 0;
        for (std::size_t i = 0; i < n; ++i) {
            const double far = around - radii_[i], square = x[i] * x[i] + y[i] * y[i];
            if (far < 0 || square > far * far) {
                const double distance = std::sqrt(square), out = distance - far;
                const double force = 2 * out / std::max(distance, tiny);
                sum += out * out;
                outward += 2 * out;
                gx[i] += force * x[i];
                gy[i] += force * y[i];
            }
            for (std::size_t j = i + 1; j < n; ++j) {
                const double dx = x[j] - x[i], dy = y[j] - y[i], apart = radii_[i] + radii_[j];
                const double between = dx * dx + dy * dy;
                if (between < apart * apart) {
                    const double distance = std::sqrt(between), depth = apart - distance;
                    const double force = 2 * depth / std::max(distance, tiny);
                    sum += depth * depth;
                    gx[i] += force * dx, gy[i] += force * dy;
                    gx[j] -= force * dx, gy[j] -= force * dy;
                }
            }
        }
        pairs_ += n * n / 2 + 16 * n + 64; // and what the descent does with them
        if (free) {
            gradient[2 * n] = pull - outward;
            sum += pull * around;
        }
        return sum;
    }

    /// Overlap of one disc with all others and the circle, were it there; gives up above `enough`.
    double overlap_at(std::size_t disc, double x, double y, const Vector& places, double enough)
    {
        const std::size_t n = radii_.size();
        const double out = std::sqrt(x * x + y * y) + radii_[disc] - radius;
        double sum = out > 0 ? out * out : 0;
        for (std::size_t j = 0; j < n && sum < enough; ++j) {
            const double dx = x - places[j], dy = y - places[n + j], apart = radii_[disc] + radii_[j];
            const double between = dx * dx + dy * dy;
            if (j != disc && between < apart * apart) {
                const double depth = apart - std::sqrt(between);
                sum += depth * depth;
            }
        }
        pairs_ += n;
        return sum;
    }

    std::uint64_t work() const { return pairs_ / 32; }

private:
    static constexpr double tiny = 1e-300;
    const Vector& radii_;
    std::uint64_t pairs_ = 0;
};

class DiscSearch {
public:
    DiscSearch(const Vector& radii, Random& random, const DiscEffort& effort)
        : radii_(radii), n_(radii.size()), random_(random), effort_(effort), by_size_(n_), rank_(n_), energy_(radii),
          descent_(energy_, 2 * n_), free_descent_(energy_, 2 * n_ + 1), smallest_(effort.below)
    {
        std::iota(by_size_.begin(), by_size_.end(), std::size_t{0});
        std::stable_sort(by_size_.begin(), by_size_.end(), [&](std::size_t a, std::size_t b) { return radii[a] < radii[b]; });
        for (std::size_t k = 0; k < n_; ++k) {
            rank_[by_size_[k]] = k;
        }
        differ_ = radii_[by_size_.front()] < radii_[by_size_.back()];
        typical_ = radii_[by_size_[n_ / 2]];
    }

    DiscsFound run()
    {
        constexpr double dense = 0.8; // of the circle's area, for a first guess
        double area = 0;
        for (const double radius : radii_) {
            area += radius * radius;
        }
        const double guess = std::max(std::sqrt(area / dense), radii_[by_size_.back()]);
        while (!is_over()) {
            one_run(best_ ? smallest_ : std::min(smallest_, guess));
        }
        return {std::move(best_), energy_.work()};
    }

private:
    static constexpr int patience = 100, last_patience = 60; // hops in vain
    static constexpr double first_shortage = 0.04, last_shortage = 0.002;

    bool is_over() const { return energy_.work() >= effort_.work || (effort_.stop && effort_.stop()); }

    void one_run(double around)
    {
        energy_.radius = around * (1 - (differ_ ? first_shortage : last_shortage));
        Vector places = anywhere();
        double overlap = hop(places, patience);
        if (differ_) {
            energy_.radius = around * (1 - last_shortage);
            overlap = hop(places, last_patience);
        }
        constexpr double worth_a_look = 1.5; // times the least overlap in the same circle
        if (around != compared_ || overlap < worth_a_look * least_overlap_) {
            least_overlap_ = around != compared_ ? overlap : std::min(overlap, least_overlap_);
            compared_ = around;
            offer(places, around);
        }
    }

    Vector anywhere()
    {
        Vector places(2 * n_);
        for (std::size_t disc = 0; disc < n_; ++disc) {
            const auto [x, y] = within_circle(disc);
            places[disc] = x;
            places[n_ + disc] = y;
        }
        return places;
    }

    std::array<double, 2> within_circle(std::size_t disc)
    {
        const auto [c, s] = random_.direction();
        const double far = std::sqrt(random_.unit()) * std::max(0.0, energy_.radius - radii_[disc]);
        return {far * c, far * s};
    }

    double push_apart(Vector& places)
    {
        DescentOptions options;
        options.iterations = 100;
        options.enough = 1e-14 * typical_ * typical_;
        options.longest = 0.8 * typical_;
        options.slow = 0.97;
        options.patience = 4;
        return descent_.run(places, options);
    }

    /// Hops until so many in a row gain nothing; returns the overlap in the end.
    double hop(Vector& places, int most_in_vain)
    {
        const double none = 1e-13 * typical_ * typical_ * static_cast<double>(n_);
        double overlap = push_apart(places);
        for (int in_vain = 0; in_vain < most_in_vain && overlap > none && !is_over(); ++in_vain) {
            trial_ = places;
            if (differ_ && random_.chance(0.6)) {
                swap_two(trial_);
            } else {
                put_elsewhere(trial_);
            }
            const double next = push_apart(trial_);
            if (next < overlap * (1 - 1e-9)) {
                overlap = next;
                places.swap(trial_);
                in_vain = -1;
            }
        }
        return overlap;
    }

    /// Swaps two discs that are neighbours by size, or nearly so.
    void swap_two(Vector& places)
    {
        const std::size_t disc = random_.below(n_);
        std::size_t steps = 1;
        while (steps < n_ && random_.chance(0.5)) {
            ++steps;
        }
        const std::size_t rank = rank_[disc];
        const bool up = random_.chance(0.5) ? rank + steps < n_ : rank < steps;
        const std::size_t other = by_size_[up ? std::min(rank + steps, n_ - 1) : rank - std::min(steps, rank)];
        std::swap(places[disc], places[other]);
        std::swap(places[n_ + disc], places[n_ + other]);
    }

    /// Puts a disc, often one that overlaps much, at the best of a few places.
    void put_elsewhere(Vector& places)
    {
        constexpr int samples = 20, few = 3;
        std::size_t disc = random_.below(n_);
        if (random_.chance(0.5)) {
            double most = -1;
            for (int draw = 0; draw < few; ++draw) {
                const std::size_t one = random_.below(n_);
                const double overlap = energy_.overlap_at(one, places[one], places[n_ + one], places, 1e300);
                if (overlap > most) {
                    most = overlap;
                    disc = one;
                }
            }
        }
        double least = 1e300;
        std::array<double, 2> best{};
        for (int sample = 0; sample < samples; ++sample) {
            const auto at = within_circle(disc);
            const double overlap = energy_.overlap_at(disc, at[0], at[1], places, least);
            if (overlap < least) {
                least = overlap;
                best = at;
            }
        }
        places[disc] = best[0];
        places[n_ + disc] = best[1];
    }

    /// Lets the circle shrink as far as the discs let it and keeps what is smaller than any before.
    void offer(Vector places, double around)
    {
        places.push_back(around);
        energy_.free = true;
        energy_.pull = 1e-3 * around;
        DescentOptions options;
        options.iterations = 300;
        options.enough = -1e300;
        options.longest = 0.2 * typical_;
        options.slow = 1 - 1e-12;
        options.patience = 4;
        for (int weaker = 0; weaker < 9; ++weaker) { // what still overlaps is in proportion to the pull
            free_descent_.run(places, options);
            energy_.pull *= 0.05;
        }
        energy_.free = false;
        if (const DiscPlaces found = set_apart(places); found.radius < smallest_ * (1 - 1e-9)) {
            smallest_ = found.radius;
            best_ = found;
        }
    }

    /// Scales all up until nothing overlaps.
    DiscPlaces set_apart(const Vector& places) const
    {
        double scale = 1;
        for (std::size_t i = 0; i < n_; ++i) {
            for (std::size_t j = 0; j < i; ++j) {
                const double distance = std::hypot(places[i] - places[j], places[n_ + i] - places[n_ + j]);
                scale = std::max(scale, (radii_[i] + radii_[j]) / std::max(distance, 1e-12 * typical_));
            }
        }
        DiscPlaces found;
        for (std::size_t i = 0; i < n_; ++i) {
            found.x.push_back(scale * places[i]);
            found.y.push_back(scale * places[n_ + i]);
            found.radius = std::max(found.radius, std::hypot(found.x[i], found.y[i]) + radii_[i]);
        }
        return found;
    }

    const Vector& radii_;
    std::size_t n_;
    Random& random_;
    const DiscEffort& effort_;
    std::vector<std::size_t> by_size_, rank_;
    DiscEnergy energy_;
    Descent<DiscEnergy> descent_, free_descent_;
    bool differ_ = false;
    double typical_ = 1;
    Vector trial_;
    double smallest_;
    double compared_ = 0, least_overlap_ = 1e300; ///< in the end of runs about this circle
    std::optional<DiscPlaces> best_;
};

} // namespace

DiscsFound discs_in_circle(const std::vector<double>& radii, Random& random, const DiscEffort& effort)
{
    require(!radii.empty() && *std::min_element(radii.begin(), radii.end()) > 0, "discs have radii");
    return DiscSearch(radii, random, effort).run();
}

} // namespace tuckwright::packing
