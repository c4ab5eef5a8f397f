// SPDX-License-Identifier: GPL-3.0-or-later
/// The benchmark: published problems and generated kits, solved as a user's kit is, and what they should come to.
#include <CLI/CLI.hpp>

#include <algorithm>
#include <cstdio>
#include <exception>
#include <filesystem>
#include <fmt/format.h>
#include <fstream>
#include <map>
#include <set>
#include <stdexcept>

#include "bench/machine.hpp"
#include "bench/options.hpp"
#include "bench/record.hpp"
#include "bench/suites.hpp"
#include "bench/table.hpp"
#include "bench/thread_table.hpp"

namespace tuckwright::bench {

namespace {

void add_options(CLI::App& app, Options& options)
{
    static const std::map<std::string, Effort> efforts{
        {"quick", Effort::quick}, {"normal", Effort::normal}, {"thorough", Effort::thorough}};
    static const std::set<std::string> names{"circles", "radii", "boxes", "rings", "kits", "growth", "threads"};
    app.add_option("--suite", options.suites, "circles, radii, boxes, rings, kits, growth, threads (default: all)")
        ->check(CLI::IsMember(names));
    app.add_option("--case", options.part, "only cases whose name has this text in it");
    app.add_option("--effort", options.run.effort, "quick, normal (the default) or thorough")
        ->transform(CLI::CheckedTransformer(efforts))
        ->type_name("WORD");
    app.add_option("--threads", options.run.threads, "how many to use (default: as many as the machine has)");
    app.add_option("--seed", options.run.seed, "of the search (default 1)");
    app.add_option("--seconds", options.run.seconds, "stop each case after so long (growth: 60 unless given)")
        ->check(CLI::PositiveNumber);
    app.add_option("--again", options.again_seconds,
                   "run what misses its aim again at thorough effort, so many seconds at most; marked *");
    app.add_option("--csv", options.csv, "write all figures to this file");
    app.add_flag("--peer", options.peer, "let Gecode (minizinc) work on the same problems, 100 times as long as ours");
    app.add_option("--peer-seconds", options.peer_seconds, "at most so long for each (default 60)");
    app.add_option("--bests", options.bests, "stored bests of generated kits (default: those of the sources)");
    app.add_option("--kits", options.kits,
                   "write the kit files into this folder, for 'tuckwright pack', and solve nothing");
    app.add_option(
        "--record", options.record,
        "search generated kits for --seconds of processor time each (default 600); bring this file of stored bests up to date");
}

std::vector<Suite> chosen(const Options& options)
{
    const auto bests = read_stored_bests(options.bests);
    if (!bests) {
        throw std::runtime_error(to_string(bests.problems().front()));
    }
    std::vector<Suite> suites{equal_circles(), circles_of_radii(), classic_boxes(), rings(),
                              kits(*bests),    growth(),           threads()};
    std::erase_if(suites, [&](const Suite& suite) {
        return !options.suites.empty() &&
               std::find(options.suites.begin(), options.suites.end(), suite.name) == options.suites.end();
    });
    for (Suite& suite : suites) {
        std::erase_if(suite.cases, [&](const Case& one) { return one.name.find(options.part) == std::string::npos; });
    }
    std::erase_if(suites, [](const Suite& suite) { return suite.cases.empty(); });
    return suites;
}

/// The CSV, line by line, so that an interrupted run leaves what it has measured.
class Csv {
public:
    explicit Csv(const std::string& path)
    {
        if (!path.empty()) {
            file_.open(path);
            if (!(file_ << csv_head() << std::flush)) {
                throw std::runtime_error(path + ": cannot be written");
            }
        }
    }
    void add(const Row& row)
    {
        if (file_.is_open()) {
            file_ << csv_line(row, machine()) << std::flush;
        }
    }

private:
    std::ofstream file_;
};

void print(const std::string& text)
{
    std::fputs(text.c_str(), stdout);
    std::fflush(stdout);
}

void run_suite(const Suite& suite, const Options& options, bool with_peer, Csv& csv)
{
    RunOptions how = options.run;
    if (suite.name == "growth") { // their own final volume is what counts, and it should be a good one
        how.effort = Effort::thorough;
        how.seconds = options.seconds_given ? how.seconds : 60;
    }
    const auto sources = sources_of(suite);
    print(fmt::format("\n{}: {}; {} effort{}\n{}{}", suite.name, suite.title, to_string(how.effort),
                      how.seconds > 0 ? fmt::format(", {:g} s at most", how.seconds) : "", legend(sources),
                      table_head()));
    std::vector<Row> rows;
    for (const Case& one : suite.cases) {
        Row row = run(one, how);
        print(table_line(row, sources));
        row.peer = with_peer ? peer_row(row, options.peer_seconds) : std::nullopt;
        csv.add(row);
        const bool missed = !meets_aim(row).value_or(true);
        rows.push_back(std::move(row));
        if (missed && options.again_seconds > 0) {
            RunOptions more = how;
            more.effort = Effort::thorough;
            more.seconds = options.again_seconds;
            rows.push_back(run(one, more));
            rows.back().again = true;
            print(table_line(rows.back(), sources));
            csv.add(rows.back());
        }
    }
    print(summary(rows));
    print(peer_table(rows));
    print(suite.name == "growth" ? growth_line(rows) : "");
}

void run_threads(const Suite& suite, const Options& options, Csv& csv)
{
    print(
        fmt::format("\n{}: {}; {} effort\n{}", suite.name, suite.title, to_string(options.run.effort), thread_head()));
    std::vector<ThreadRow> rows;
    for (const Case& one : suite.cases) {
        rows.push_back(with_one_and_two(one, options.run));
        print(thread_line(rows.back()));
        csv.add(rows.back().one);
        csv.add(rows.back().two);
    }
    print(thread_summary(rows));
}

int record_kits(const Options& options)
{
    std::vector<Case> cases;
    for (const Suite& suite : chosen(options)) {
        if (suite.name == "kits" || (suite.name == "growth" && !options.suites.empty())) {
            cases.insert(cases.end(), suite.cases.begin(), suite.cases.end());
        }
    }
    const double seconds = options.seconds_given ? options.run.seconds : 600;
    return record(cases, options.record, seconds, options.run.threads) ? 0 : 1;
}

int write_kits(const Options& options)
{
    std::filesystem::create_directories(options.kits);
    for (const Suite& suite : chosen(options)) {
        for (const Case& one : suite.cases) {
            const auto path = std::filesystem::path(options.kits) / (one.name + ".yaml");
            std::ofstream file(path);
            if (!(file << one.kit << std::flush)) {
                throw std::runtime_error(path.string() + ": cannot be written");
            }
        }
    }
    return 0;
}

int benchmark(const Options& options)
{
    print(fmt::format("{}\n{}\n", machine(), build()));
    const bool with_peer = options.peer && has_peer();
    if (options.peer && !with_peer) {
        print("Peer: none, for minizinc and fzn-gecode are not both installed (apt-get install minizinc).\n");
    }
    Csv csv(options.csv);
    for (const Suite& suite : chosen(options)) {
        if (suite.name == "threads") {
            run_threads(suite, options, csv);
        } else {
            run_suite(suite, options, with_peer, csv);
        }
    }
    return 0;
}

int run_program(int argc, char** argv)
{
    CLI::App app(
        "Solves published problems and generated kits as a user's kit is solved, and compares the answers with "
        "the best that is known.",
        "tuckwright_bench");
    Options options;
    options.bests = TUCKWRIGHT_SOURCE_DIR "/tests/bench/stored_bests.csv";
    add_options(app, options);
    CLI11_PARSE(app, argc, argv);
    options.seconds_given = app.count("--seconds") > 0;
    if (!options.kits.empty()) {
        return write_kits(options);
    }
    return options.record.empty() ? benchmark(options) : record_kits(options);
}

} // namespace

} // namespace tuckwright::bench

int main(int argc, char** argv)
{
    try {
        return tuckwright::bench::run_program(argc, argv);
    } catch (const std::exception& error) {
        std::fprintf(stderr, "tuckwright_bench: %s\n", error.what());
        return 1;
    }
}
