// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/thread_table.hpp"

#include <algorithm>
#include <fmt/format.h>

#include "bench/figures.hpp"
#include "tuckwright/report.hpp"

namespace tuckwright::bench {

namespace {

double quotient(const ThreadRow& row) { return row.one.seconds / row.two.seconds; }

} // namespace

ThreadRow with_one_and_two(const Case& what, RunOptions options)
{
    options.seconds = 0;
    const auto with = [&](unsigned threads) {
        options.threads = threads;
        return answer_to(what.kit, options);
    };
    const Answer one = with(1), two = with(2);
    options.threads = 1;
    ThreadRow row{row_of(what, options, one), {}, to_json(one.bundle) == to_json(two.bundle)};
    options.threads = 2;
    row.two = row_of(what, options, two);
    return row;
}

std::string thread_head()
{
    return fmt::format("{:<20} {:>13} {:>10} {:>12} {:>12} {:>9}\n", "case", "ours", "same bytes", "s, 1 thread",
                       "s, 2 threads", "quotient");
}

std::string thread_line(const ThreadRow& row)
{
    return fmt::format("{:<20} {:>13} {:>10} {:>12.2f} {:>12.2f} {:>9.2f}\n", row.one.what.name,
                       row.one.ours ? fmt::format("{:.6f}", *row.one.ours) : "-", row.same_bytes ? "yes" : "NO",
                       row.one.seconds, row.two.seconds, quotient(row));
}

std::string thread_summary(const std::vector<ThreadRow>& rows)
{
    std::vector<double> quotients;
    for (const ThreadRow& row : rows) {
        quotients.push_back(quotient(row));
    }
    const bool same = std::all_of(rows.begin(), rows.end(), [](const ThreadRow& row) { return row.same_bytes; });
    return fmt::format(
        "{}; the steps per second of two threads are {:.2f} times those of one (median; least {:.2f}).\n",
        same ? "The same bytes in all cases" : "NOT the same bytes in all cases", median(quotients),
        *std::min_element(quotients.begin(), quotients.end()));
}

} // namespace tuckwright::bench
