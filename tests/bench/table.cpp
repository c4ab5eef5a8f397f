// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/table.hpp"

#include <algorithm>
#include <fmt/format.h>

#include "bench/figures.hpp"

namespace tuckwright::bench {

namespace {

constexpr const char* none = "-";

std::string figure(const std::optional<double>& value, int decimals)
{
    return value ? fmt::format("{:.{}f}", *value, decimals) : none;
}

/// Shares are small: as many decimals as tell a grid's from none.
std::string per_cent(const std::optional<double>& share)
{
    if (!share) {
        return none;
    }
    const std::string text = fmt::format("{:.4f}", 100 * *share);
    return text == "-0.0000" ? "0.0000" : text;
}

std::string seconds(const std::optional<double>& value)
{
    return value ? fmt::format("{:.{}f}", *value, *value < 10 ? 3 : 1) : none;
}

std::string name_of(const Row& row) { return row.what.name + (row.again ? " *" : ""); }

std::string source_mark(const Row& row, const std::vector<std::string>& sources)
{
    const auto found = std::find(sources.begin(), sources.end(), row.what.source);
    return found == sources.end() ? "" : fmt::format("[{}]", found - sources.begin() + 1);
}

std::vector<std::string> groups_of(const std::vector<Row>& rows)
{
    std::vector<std::string> groups;
    for (const Row& row : rows) {
        if (std::find(groups.begin(), groups.end(), row.what.group) == groups.end()) {
            groups.push_back(row.what.group);
        }
    }
    return groups;
}

/// The rows of a group, of a case that was run again the last one.
std::vector<const Row*> counted(const std::vector<Row>& rows, const std::string& group)
{
    std::vector<const Row*> last;
    for (const Row& row : rows) {
        if (row.what.group != group) {
            continue;
        }
        if (!last.empty() && last.back()->what.name == row.what.name) {
            last.back() = &row;
        } else {
            last.push_back(&row);
        }
    }
    return last;
}

struct Spreads {
    std::string median = none, worst = none;
};

template <class Value> Spreads spread_of(const std::vector<const Row*>& rows, const Value& value, int decimals)
{
    std::vector<double> values;
    for (const Row* row : rows) {
        if (const std::optional<double> one = value(*row)) {
            values.push_back(*one);
        }
    }
    if (values.empty()) {
        return {};
    }
    return {fmt::format("{:.{}f}", median(values), decimals),
            fmt::format("{:.{}f}", *std::max_element(values.begin(), values.end()), decimals)};
}

std::string summary_line(const std::string& group, const std::vector<const Row*>& rows)
{
    const auto per_cent_of = [](const std::optional<double>& share) {
        return share ? std::optional<double>(100 * *share) : std::nullopt;
    };
    const Spreads above = spread_of(
        rows, [&](const Row& row) { return per_cent_of(row.above); }, 4);
    const Spreads to_1 = spread_of(
        rows, [](const Row& row) { return row.to_1; }, 3);
    const Spreads all = spread_of(
        rows, [](const Row& row) { return std::optional<double>(row.seconds); }, 2);
    const Spreads gap = spread_of(
        rows, [&](const Row& row) { return per_cent_of(row.gap); }, 2);
    std::size_t found = 0, best = 0, aims = 0, met = 0;
    for (const Row* row : rows) {
        found += row->ours ? 1U : 0U;
        best += row->status == Status::proved_best ? 1U : 0U;
        aims += row->what.aim ? 1U : 0U;
        met += meets_aim(*row).value_or(false) ? 1U : 0U;
    }
    return fmt::format("{:<13} {:>5} {:>5} | {:>9} {:>9} | {:>8} {:>8} | {:>8} {:>8} | {:>7} {:>7} | {:>4} {:>7}\n",
                       group, rows.size(), found, above.median, above.worst, to_1.median, to_1.worst, all.median,
                       all.worst, gap.median, gap.worst, best, aims > 0 ? fmt::format("{}/{}", met, aims) : none);
}

/// A field of the CSV; machines have commas in their names.
std::string quoted(const std::string& text)
{
    std::string field = "\"";
    for (const char c : text) {
        field += c == '"' ? "\"\"" : std::string(1, c);
    }
    return field + "\"";
}

std::string plain(const std::optional<double>& value) { return value ? fmt::format("{:.9g}", *value) : ""; }

} // namespace

std::string table_head()
{
    return fmt::format("{:<18} {:>13} {:<4} {:>13} {:>9} {:>4} {:>7} {:>7} {:>7} {:>7} {:>8} {}\n", "case",
                       "best known", "", "ours", "% above", "aim", "s, 10 %", "s, 1 %", "s,0.1 %", "s, all", "gap %",
                       "status");
}

std::string table_line(const Row& row, const std::vector<std::string>& sources)
{
    const auto aim = meets_aim(row);
    return fmt::format("{:<18} {:>13} {:<4} {:>13} {:>9} {:>4} {:>7} {:>7} {:>7} {:>7} {:>8} {}\n", name_of(row),
                       figure(row.what.best, 6), source_mark(row, sources), figure(row.ours, 6), per_cent(row.above),
                       aim ? (*aim ? "met" : "no") : none, seconds(row.to_10), seconds(row.to_1), seconds(row.to_01),
                       seconds(row.seconds), row.gap ? fmt::format("{:.2f}", 100 * *row.gap) : none,
                       to_string(row.status));
}

std::vector<std::string> sources_of(const Suite& suite)
{
    std::vector<std::string> sources;
    for (const Case& one : suite.cases) {
        if (!one.source.empty() && std::find(sources.begin(), sources.end(), one.source) == sources.end()) {
            sources.push_back(one.source);
        }
    }
    return sources;
}

std::string legend(const std::vector<std::string>& sources)
{
    std::string text;
    for (std::size_t k = 0; k < sources.size(); ++k) {
        text += fmt::format("  [{}] {}\n", k + 1, sources[k]);
    }
    return text;
}

std::string summary(const std::vector<Row>& rows)
{
    std::string text = fmt::format(
        "{:<13} {:>5} {:>5} | {:^19} | {:^17} | {:^17} | {:^15} | {:>4} {:>7}\n"
        "{:<13} {:>5} {:>5} | {:>9} {:>9} | {:>8} {:>8} | {:>8} {:>8} | {:>7} {:>7} | {:>4} {:>7}\n",
        "", "", "", "% above best known", "s to within 1 %", "s in all", "gap %", "", "", "", "cases", "found",
        "median", "worst", "median", "worst", "median", "worst", "median", "worst", "best", "aim met");
    const auto groups = groups_of(rows);
    std::vector<const Row*> all;
    for (const std::string& group : groups) {
        const auto of_group = counted(rows, group);
        text += summary_line(group, of_group);
        all.insert(all.end(), of_group.begin(), of_group.end());
    }
    return groups.size() > 1 ? text + summary_line("all", all) : text;
}

std::string peer_table(const std::vector<Row>& rows)
{
    std::string text;
    for (const Row& row : rows) {
        if (!row.peer) {
            continue;
        }
        const PeerRow& peer = *row.peer;
        std::string verdict = "the peer finds nothing";
        std::string sooner = none;
        if (peer.seconds && peer.ours_seconds) {
            sooner = fmt::format("{:.1f}", *peer.seconds / std::max(*peer.ours_seconds, 1e-6));
            verdict = row.ours && *row.ours < *peer.figure * (1 - 1e-5) ? "ours is better" : "the same";
        } else if (peer.seconds) {
            verdict = row.ours ? "the peer is better" : "only the peer finds it";
        } else if (!row.ours) {
            verdict = "neither finds it";
        }
        text += fmt::format("{:<18} {:>9} {:>9} {:>9} {:>9} {:>10} {:>10}  {}{}\n", name_of(row), per_cent(row.above),
                            per_cent(peer.above), seconds(peer.given), seconds(peer.seconds),
                            seconds(peer.ours_seconds), sooner, verdict, peer.finished ? ", which it proves" : "");
    }
    return text.empty()
               ? text
               : fmt::format("Peer: Gecode by MiniZinc, one core for each of two models; seconds without "
                             "translation.\n{:<18} {:>9} {:>9} {:>9} {:>9} {:>10} {:>10}  {}\n",
                             "case", "ours, %", "peer's, %", "s given", "its s", "ours to it", "x sooner", "") +
                     text;
}

std::string growth_line(const std::vector<Row>& rows)
{
    std::vector<std::pair<double, double>> points;
    for (const Row& row : rows) {
        if (row.to_10 && *row.to_10 > 0) {
            points.emplace_back(row.what.items, *row.to_10);
        }
    }
    const auto exponent = points.empty() ? std::nullopt : fitted_exponent(points);
    return exponent
               ? fmt::format("Time to within 10 % of the final volume grows as n^{:.2f} (least squares on logarithms, "
                             "{} of {} cases).\n",
                             *exponent, points.size(), rows.size())
               : "No exponent: fewer than two numbers of items.\n";
}

std::string csv_head()
{
    return "suite,case,best_known,unit,source,ours,ratio,s_to_1pct,s_to_0.1pct,s_total,lower_bound,gap,status,effort,"
           "threads,machine,s_to_10pct,items,seconds_limit,aim_met,peer,peer_s,ours_s_to_peer\n";
}

std::string csv_line(const Row& row, const std::string& machine)
{
    const auto ratio = row.above ? std::optional<double>(1 + *row.above) : std::nullopt;
    const auto aim = meets_aim(row);
    const PeerRow peer = row.peer.value_or(PeerRow());
    return fmt::format("{},{},{},{},{},{},{},{},{},{:.6f},{:.9g},{},{},{},{},{},{},{},{:g},{},{},{},{}\n",
                       row.what.suite, row.what.name, plain(row.what.best), row.what.unit, quoted(row.what.source),
                       plain(row.ours), plain(ratio), plain(row.to_1), plain(row.to_01), row.seconds, row.bound,
                       plain(row.gap), to_string(row.status), to_string(row.options.effort), row.threads,
                       quoted(machine), plain(row.to_10), row.what.items, row.options.seconds,
                       aim ? (*aim ? "yes" : "no") : "", plain(peer.figure), plain(peer.seconds),
                       plain(peer.ours_seconds));
}

} // namespace tuckwright::bench
