// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/card.hpp"

#include <fmt/chrono.h>
#include <fmt/format.h>

#include <chrono>
#include <cstdlib>

#include "cli/answer.hpp"
#include "cli/exit_code.hpp"
#include "cli/input_text.hpp"
#include "cli/interrupt.hpp"
#include "cli/messages.hpp"
#include "cli/output_file.hpp"
#include "cli/process.hpp"
#include "report/words.hpp"
#include "tuckwright/chains.hpp"
#include "tuckwright/check_code.hpp"
#include "tuckwright/report.hpp"

namespace tuckwright::cli
{

namespace
{

/// What is wrong besides the kit.
std::vector<Problem> problems_of(const CardCommand& options)
{
    std::vector<Problem> problems;
    if (options.html.empty() && options.pdf.empty()) {
        problems.push_back({"tuckwright", 0, 0, "nowhere to write the card",
                            "add --pdf FILE for printing, --html FILE for reading, or both"});
    }
    check_outputs({options.html, options.pdf, options.json}, options.file, problems);
    return problems;
}

/// Today, or the day that SOURCE_DATE_EPOCH tells, by which builds that can be repeated tell theirs.
std::string today()
{
    const char* epoch = std::getenv("SOURCE_DATE_EPOCH");
    char* end = nullptr;
    const long long told = epoch == nullptr ? 0 : std::strtoll(epoch, &end, 10);
    const bool is_told = epoch != nullptr && end != epoch && *end == '\0' && told >= 0;
    const std::time_t now = is_told ? static_cast<std::time_t>(told)
                                    : std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
    return fmt::format("{:%Y-%m-%d}", is_told ? fmt::gmtime(now) : fmt::localtime(now));
}

/// Writes to a file or to standard output, and tells of what goes wrong.
bool write(const std::string& path, const std::string& bytes)
{
    if (path.empty()) {
        return true;
    }
    if (path == dash) {
        return print(bytes);
    }
    const auto problem = write_file(path, bytes);
    if (problem) {
        tell({*problem});
    }
    return !problem;
}

std::string told(const CardCommand& options, const Bundle& bundle)
{
    const std::string code = check_code(bundle);
    std::string text =
        report::wrapped("", fmt::format("{}: {}", bundle.kit, report::envelope_in_words(outer_envelope(bundle)))) +
        "The card's code is " + code + ". Written:\n";
    for (const std::string& path : {options.pdf, options.html, options.json}) { // not wrapped, so that it can be copied
        text += path.empty() ? "" : "  " + report::printable(path) + "\n";
    }
    return text + (options.json.empty() ? ""
                                        : "To confirm the card: tuckwright verify " + report::printable(options.json) +
                                              " --code " + code + "\n");
}

bool write_card(const CardCommand& options, const Bundle& bundle)
{
    CardOptions card{options.paper, options.date.empty() ? today() : options.date, std::nullopt};
    if (!options.without_picture && !options.html.empty()) {
        card.picture = PictureExtras{std::nullopt, chains(bundle)};
    }
    const std::string html = options.html.empty() ? "" : card_html(bundle, card);
    const std::string pdf = options.pdf.empty() ? "" : card_pdf(bundle, card);
    return write(options.json, options.json.empty() ? "" : to_json(bundle)) && write(options.html, html) &&
           write(options.pdf, pdf) &&
           (options.html == dash || options.pdf == dash || options.json == dash || say(told(options, bundle)));
}

} // namespace

int card(const CardCommand& options)
{
    require_memory_for_drawing();
    const auto& stop = watch_for_interrupts();
    const Packed result = packed(options, problems_of(options), stop);
    if (result.outcome != done) {
        return result.outcome;
    }
    if (!has_bundle(result.bundle.status)) {
        tell({{options.file, 0, 0, fmt::format("there is no bundle to make a card of: {}", to_string(result.bundle.status)),
               "'tuckwright pack' tells why"}});
        return stop ? interrupted : no_bundle;
    }
    if (!write_card(options, result.bundle)) {
        return wrong_input;
    }
    return stop ? interrupted : done;
}

} // namespace tuckwright::cli
