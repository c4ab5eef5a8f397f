// SPDX-License-Identifier: GPL-3.0-or-later
/// The few colours of the pictures. Each fill is far lighter than the ink, those that lie side by side differ in lightness
/// too, and nothing is told by colour alone: lines, hatches and labels say the same.
#pragma once
#include <array>

#include "tuckwright/canvas.hpp"

namespace tuckwright::drawing::palette {

inline constexpr Color paper{1, 1, 1};
inline constexpr Color ink{0.10, 0.10, 0.12};       ///< lines, letters
inline constexpr Color faint{0.45, 0.46, 0.48};     ///< dimensions, what is cut away
inline constexpr Color wall{0.27, 0.32, 0.38};      ///< a vessel's wall where it is cut
inline constexpr Color inside{0.97, 0.95, 0.89};    ///< a vessel seen from within
inline constexpr Color glass{0.55, 0.62, 0.68};     ///< a vessel's near side, which is see-through
inline constexpr Color contents{0.93, 0.90, 0.82};  ///< what fills a vessel
inline constexpr Color band{0.93, 0.86, 0.74};      ///< straps, with stitches, and the bag's wall where it is cut
inline constexpr Color placed_now{1.0, 0.72, 0.28}; ///< the item of the step, hatched besides

/// A colour as the web writes it: 0xRRGGBB.
constexpr Color rgb(unsigned code)
{
    const auto part = [code](unsigned shift) { return ((code >> shift) & 0xFFU) / 255.0; };
    return {part(16), part(8), part(0)};
}

/// The picture on a screen. Things that hold others are neutral, the rest take the hues in turn, in an order in which
/// neighbours in the list differ for people who do not tell red from green. Source of the hues: Okabe and Ito 2008, Color
/// universal design; from memory, and made paler or darker here.
struct Screen {
    Color paper, ink, faint, vessel, room, mark, band;
    std::array<Color, 8> hues;
};
inline constexpr Screen light{rgb(0xf7f4ec),
                              rgb(0x2b2a27),
                              rgb(0x8d887c),
                              rgb(0xcfc9ba),
                              rgb(0x0b7a5c),
                              rgb(0xa13d00),
                              rgb(0x8a5a1c),
                              {rgb(0x7fb8de), rgb(0xe6b455), rgb(0x67b59b), rgb(0xd99676), rgb(0xc79cb9), rgb(0xe3dc83),
                               rgb(0x6f93bd), rgb(0xb7ab8f)}};
inline constexpr Screen dark{rgb(0x211f1c),
                             rgb(0xece7db),
                             rgb(0x8f897c),
                             rgb(0x6f6a5f),
                             rgb(0x58c9a5),
                             rgb(0xff9c5b),
                             rgb(0xd9b380),
                             {rgb(0x4b8fbb), rgb(0xb98926), rgb(0x3c8a70), rgb(0xb06a48), rgb(0x96688a), rgb(0xa9a24a),
                              rgb(0x4c6f9c), rgb(0x857a5e)}};

/// What has its place already, by turns.
inline constexpr std::array<Color, 3> placed{{{0.79, 0.87, 0.94}, {0.67, 0.75, 0.69}, {0.83, 0.77, 0.85}}};

} // namespace tuckwright::drawing::palette
