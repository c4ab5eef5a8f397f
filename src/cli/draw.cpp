// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/draw.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <filesystem>
#include <optional>
#include <set>
#include <utility>

#include "cli/exit_code.hpp"
#include "cli/input_text.hpp"
#include "cli/interrupt.hpp"
#include "cli/messages.hpp"
#include "cli/output_file.hpp"
#include "cli/packed.hpp"
#include "cli/process.hpp"
#include "cli/verify.hpp"
#include "report/words.hpp"
#include "tuckwright/drawing.hpp"
#include "tuckwright/report.hpp"

namespace tuckwright::cli {

namespace {

namespace fs = std::filesystem;

constexpr double dots_per_inch = 200;

/// What is given by one name on the command line.
struct Source {
    std::string path, name;
    std::string stem; ///< what its pictures' names start with
    KitOrBundle what;
};

std::string stem_of(const std::string& path, std::set<std::string>& used)
{
    const std::string stem = path == dash ? "kit" : fs::path(path).stem().string();
    std::string unused = stem;
    for (int k = 2; !used.insert(unused).second; ++k) {
        unused = fmt::format("{}-{}", stem, k);
    }
    return unused;
}

/// What is wrong with the folder.
std::optional<Problem> cannot_use(const std::string& folder)
{
    std::error_code error;
    if (fs::is_directory(folder, error)) {
        return cannot_write((fs::path(folder) / "picture").string(), "");
    }
    if (fs::exists(folder, error)) {
        return Problem{folder, 0, 0, "is a file, not a folder", "name a folder for the pictures"};
    }
    fs::path bare = folder; // without a slash at its end
    return cannot_write((bare.has_filename() ? bare : bare.parent_path()).string(), "");
}

std::vector<Source> sources_of(const DrawOptions& options, std::vector<Problem>& problems)
{
    std::vector<Source> sources;
    std::set<std::string> stems;
    bool input_is_taken = false;
    for (const std::string& path : options.files) {
        const std::string name = path == dash ? standard_input : path;
        if (path == dash && std::exchange(input_is_taken, true)) {
            problems.push_back({name, 0, 0, "is named twice", "name it once"});
            continue;
        }
        auto what = kit_or_bundle(path, options.chosen, options.way_back);
        if (!what) {
            problems.insert(problems.end(), what.problems().begin(), what.problems().end());
            continue;
        }
        check_worst_case(what, options.worst_case, name, problems);
        sources.push_back({path, name, stem_of(path, stems), *std::move(what)});
    }
    if (const auto problem = cannot_use(options.folder)) {
        problems.push_back(*problem);
    }
    return sources;
}

/// Writes the pictures of a bundle, and tells of them, or of what is wrong.
bool write_pictures(const DrawOptions& options, const Source& source, const Bundle& bundle)
{
    std::error_code error;
    fs::create_directory(options.folder, error); // what is wrong with it shows when the first picture is written
    const Canvas pages = step_pictures(bundle);
    const auto write = [&](const std::string& ending, const std::string& bytes) {
        const auto problem = write_file((fs::path(options.folder) / (source.stem + ending)).string(), bytes);
        if (problem) {
            tell({*problem});
        }
        return !problem;
    };
    bool written = true;
    if (options.format == PictureFormat::pdf) {
        written = write(".pdf", pages.pdf({bundle.kit, ""}));
    }
    for (std::size_t page = 0; page < pages.pages() && options.format != PictureFormat::pdf && written; ++page) {
        const std::string step = page + 1 == pages.pages() ? "packed" : fmt::format("step-{:02}", page + 1);
        written = options.format == PictureFormat::svg
                      ? write("-" + step + ".svg", pages.svg(page, "p", step_title(bundle, page)))
                      : write("-" + step + ".png", pages.png(page, dots_per_inch));
    }
    if (!written) {
        return false;
    }
    const std::string start = (fs::path(options.folder) / source.stem).string();
    const std::string where =
        options.format == PictureFormat::pdf
            ? fmt::format("{} pages in {}.pdf", pages.pages(), start)
            : fmt::format("{} pictures, {}-step-01 to {}-packed", pages.pages(), start, source.stem);
    return say(report::wrapped(
        "", fmt::format("{}: {}; {}", bundle.kit, report::envelope_in_words(outer_envelope(bundle)), where)));
}

} // namespace

int draw(const DrawOptions& options)
{
    std::vector<Problem> problems;
    const auto sources = sources_of(options, problems);
    if (!problems.empty()) {
        tell(problems);
        return wrong_input;
    }
    for (const Source& source : sources) {
        if (source.what.saved) {
            if (const int outcome = prove(*source.what.saved, source.name).outcome; outcome != done) {
                return outcome;
            }
        }
    }
    require_memory_for_drawing();
    const auto& stop = watch_for_interrupts();
    int outcome = done;
    for (const Source& source : sources) {
        const Bundle bundle = packed(source.what, source.name, options.worst_case, options.search, stop).bundle;
        if (has_bundle(bundle.status)) {
            if (!write_pictures(options, source, bundle)) {
                return wrong_input;
            }
        } else {
            say(text_report(bundle));
            outcome = no_bundle;
        }
        if (stop) {
            return interrupted;
        }
    }
    return outcome;
}

} // namespace tuckwright::cli
