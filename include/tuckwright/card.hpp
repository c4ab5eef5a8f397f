// SPDX-License-Identifier: GPL-3.0-or-later
/// The card: a page or two to print and fold into the lid, from which a friend can pack the bundle.
#pragma once
#include <optional>
#include <string>

#include "tuckwright/bundle.hpp"
#include "tuckwright/turning_picture.hpp"

namespace tuckwright {

enum class Paper { a4, letter };

struct CardOptions {
    Paper paper = Paper::a4;
    std::string date;                     ///< as it is to be printed; empty: none
    std::optional<PictureExtras> picture; ///< on the HTML page: the picture to turn, with these, where the build has it
};

/// The card as a PDF: what it is and how large, what to lay ready, a drawing and a sentence for each step, what comes out
/// first, cautions, and a code by which verify knows the saved bundle. Drawings shrink, down to where they can still be
/// read, so that it takes two pages at most.
/// Requires: a bundle to which check() has no objection. Ensures: the same bundle and options, the same bytes where the
/// same fonts are installed.
std::string card_pdf(const Bundle& bundle, const CardOptions& options);

/// The same as one HTML page, which needs no other file and asks for none; printed, it is as the PDF, but for the breaks
/// between pages.
std::string card_html(const Bundle& bundle, const CardOptions& options);

} // namespace tuckwright
