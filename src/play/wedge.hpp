// SPDX-License-Identifier: GPL-3.0-or-later
/// Which of the things that touch one another may bear the walls.
#pragma once
#include <cstddef>
#include <vector>

namespace tuckwright::play {

/// Bodies and what they touch: one another, or the walls (`outer_wall` in the place of a body).
class Wedge {
public:
    explicit Wedge(std::size_t bodies) : beside_(bodies), walled_(bodies, false), aslant_(bodies, false) {}

    /// Two that touch on a way from wall to wall, and whether they do so aslant.
    void add(std::size_t first, std::size_t second, bool aslant);
    /// Two that touch.
    void touch(std::size_t first, std::size_t second);

    /// Whether something is pushed aside, so that what it touches there has a part in it.
    bool gives_way() const { return slants_; }
    /// What is pushed aside, and all that touches that, and so on.
    std::vector<std::size_t> touched() const;
    /// Whether a body reaches the walls whichever other body is taken away. What hangs on one neighbour alone, as what lies
    /// in a vessel does, bears nothing. Complexity: that of the contacts, times the bodies.
    bool bears(std::size_t body) const;

private:
    std::vector<std::size_t> reached(std::vector<std::size_t> from, std::size_t but) const;

    std::vector<std::vector<std::size_t>> beside_;
    std::vector<bool> walled_, aslant_;
    bool slants_ = false;
};

} // namespace tuckwright::play
