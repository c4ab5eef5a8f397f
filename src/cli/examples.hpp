// SPDX-License-Identifier: GPL-3.0-or-later
/// Examples of all commands, for --help and the manual page.
#pragma once

namespace tuckwright::cli
{

inline constexpr const char* examples = R"(Examples:
  tuckwright new porridge.yaml                          start a kit file, with comments
  tuckwright new porridge.yaml --ask                    make it of your answers to some questions
  tuckwright pack porridge.yaml                         print the smallest bundle and how to pack it
  tuckwright pack porridge.yaml --json bundle.json      and save it with its proof
  tuckwright pack porridge.yaml --json - | jq .bundle   the saved form to standard output, alone
  tuckwright pack porridge.yaml --effort thorough --seed 7
  tuckwright pack porridge.yaml --units us              the answer in inches and ounces
  tuckwright compare soup.yaml tea.yaml                 which packs smaller, which is lighter
  tuckwright fill things.yaml --into pot                what goes into the pot, and why the rest does not
  tuckwright size porridge.yaml                         what sets the size, and what would make it smaller
  tuckwright verify bundle.json                         prove a saved bundle anew
  tuckwright verify bundle.json --kit porridge.yaml     and that it is a bundle of this kit
  tuckwright provision moor.yaml                        the fuel and food that its trip takes, with the working
  tuckwright room bundle.json                           tell what else would go into it
  tuckwright card porridge.yaml --pdf card.pdf          a card to print and fold into the lid
  tuckwright look porridge.yaml --html porridge.html    a picture to turn, for any browser
  tuckwright draw porridge.yaml --out pictures          draw how it is packed, step by step
  tuckwright back weir.yaml                             does it go back together, and what goes elsewhere then
  tuckwright shelf things.csv --yaml things.yaml        keep the things of a table in one file for many kits
  tuckwright completion bash                            what a shell needs to complete commands and options
  tuckwright manual | man -l -                          the manual page

Exit status: 0 done; 1 it does not fit, was not found, or is refused; 2 the input is wrong;
3 a bug of tuckwright; 130 interrupted, with the best bundle so far written.)";

} // namespace tuckwright::cli
