#include "cases/outputs/tables/trends_table.h"

#include "cases/cautions.h"
#include "cases/text/columns.h"
#include "cases/text/csv_cell.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace gapstrain::cases {

namespace {

using models::Agreement;
using models::Measure;
using Lines = std::vector<std::string>;

constexpr std::size_t table_width = 110;
constexpr std::array<std::size_t, 3> column_widths{33, 41, 32};  // two blanks between

const char* word(Agreement verdict) {
  switch (verdict) {
    case Agreement::agrees:
      return "agrees";
    case Agreement::hangs_on_guess:
      return "hangs on a guess";
    case Agreement::disagrees:
      return "disagrees";
    case Agreement::not_comparable:
      break;
  }
  return "not comparable";
}

const char* word(models::Evidence evidence) { return evidence == models::Evidence::seen ? "seen" : "from memory"; }

std::string criterion(const Measure& measure) {
  if (measure.least && measure.most) return fmt::format("{:g} to {:g}", *measure.least, *measure.most);
  if (measure.least) return fmt::format("at least {:g}", *measure.least);
  return measure.most ? fmt::format("at most {:g}", *measure.most) : "";
}

std::string sentence(const Measure& measure) {
  const std::string wanted = criterion(measure);
  if (wanted.empty()) return fmt::format("{}: {:.3g}", measure.name, measure.value);
  return fmt::format("{}: {:.3g} ({}{})", measure.name, measure.value, measure.holds() ? "" : "not ", wanted);
}

void append(Lines& lines, const Lines& more) { lines.insert(lines.end(), more.begin(), more.end()); }

void append_row(Lines& lines, const std::array<Lines, 3>& cells) {
  const std::size_t height = std::max({cells[0].size(), cells[1].size(), cells[2].size()});
  for (std::size_t i = 0; i < height; ++i) {
    std::string line;
    for (std::size_t k = 0; k < cells.size(); ++k)
      line += pad(i < cells[k].size() ? cells[k][i] : "", column_widths[k]) + "  ";
    line.erase(line.find_last_not_of(' ') + 1);
    lines.push_back(line);
  }
}

std::array<Lines, 3> cells_of(const TrendRow& row) {
  const models::Trend& trend = *row.trend;
  std::array<Lines, 3> cells;
  append(cells[0], wrap(trend.statement, column_widths[0], 0));
  append(cells[0], wrap(fmt::format("[{}; {}]", trend.source, word(trend.evidence)), column_widths[0], 0));
  for (const auto& set_up : row.finding.set_ups) {
    append(cells[1], wrap(fmt::format("{}:", set_up.set_up), column_widths[1], 0));
    for (const auto& measure : set_up.measures)
      append(cells[1], wrap("- " + sentence(measure), column_widths[1], 2));
  }
  if (!trend.models.empty())
    append(cells[1], wrap(fmt::format("[{}]", fmt::join(trend.models, "; ")), column_widths[1], 0));
  cells[2] = wrap(fmt::format("{}. {}", word(row.finding.verdict), row.finding.why), column_widths[2], 0);
  return cells;
}

// Under the columns, over the whole width.
void append_set_up(Lines& lines, const models::Trend& trend) {
  for (const auto& [heading, text] :
       {std::pair{"Known", &trend.known}, {"Guessed", &trend.guessed}, {"Held to", &trend.criterion}})
    if (!text->empty()) append(lines, wrap(fmt::format("  {}: {}", heading, *text), table_width, 4));
}

Lines models_used(const std::vector<TrendRow>& rows) {
  Lines lines;
  for (const auto& name : models::bench_model_names()) {
    const bool is_used = std::any_of(rows.begin(), rows.end(), [&](const TrendRow& row) {
      const auto& used = row.trend->models;
      return std::find(used.begin(), used.end(), name) != used.end();
    });
    if (is_used)
      append(lines, wrap(fmt::format("{}: {}", name, models::bench_model(name, 1.0).dimensions), table_width, 2));
  }
  return lines;
}

std::string cell(const std::optional<double>& number) { return number ? fmt::format("{:.9g}", *number) : ""; }

}  // namespace

std::string trends_text(const std::vector<TrendRow>& rows, double refinement) {
  Lines lines;
  append_row(lines, {Lines{"Published"}, Lines{"Our model (and the criterion)"}, Lines{"Verdict"}});
  std::string topic;
  for (const auto& row : rows) {
    lines.emplace_back();
    if (row.trend->topic != topic) {
      topic = row.trend->topic;
      const std::string heading = fmt::format("-- {} ", topic);
      lines.push_back(heading + std::string(table_width - columns(heading), '-'));
    }
    append_row(lines, cells_of(row));
    append_set_up(lines, *row.trend);
  }
  const auto count = [&](Agreement verdict) {
    return std::count_if(rows.begin(), rows.end(),
                         [&](const auto& row) { return row.finding.verdict == verdict; });
  };
  lines.emplace_back();
  append(lines, wrap(fmt::format(
                         "{} agree, {} hang on a guess, {} disagree, {} not comparable, at mesh refinement {:g}. "
                         "What a paper leaves open is tried in more ways than one, chosen beforehand: a statement "
                         "agrees when it holds in all of them, hangs on a guess when it holds in some, disagrees "
                         "when it holds in none. Criteria were written down before the models were run and not "
                         "changed afterwards; nothing was tuned to these papers. \"Seen\": in a public copy of "
                         "the source's abstract, table or figure caption; \"from memory\": quoted without it.",
                         count(Agreement::agrees), count(Agreement::hangs_on_guess), count(Agreement::disagrees),
                         count(Agreement::not_comparable), refinement),
                     table_width, 0));
  lines.emplace_back();
  append(lines, wrap("The models: dimensions that are not said to be known are invented, of the class the papers "
                     "name. Lengths in mm. Stiffness is load over the motion of the bone's ends along it.",
                     table_width, 0));
  append(lines, models_used(rows));
  lines.emplace_back();
  append(lines, Lines(cautions.begin(), cautions.end()));
  return fmt::format("{}\n", fmt::join(lines, "\n"));
}

std::string trends_csv(const std::vector<TrendRow>& rows) {
  std::string table =
      "topic,statement,source,evidence,known,guessed,criterion,models,set-up,measure,value,least,most,holds,"
      "verdict,why\r\n";
  for (const auto& [trend, finding] : rows) {
    const std::string before = fmt::format(
        "{},{},{},{},{},{},{},{}", csv_cell(trend->topic), csv_cell(trend->statement), csv_cell(trend->source),
        word(trend->evidence), csv_cell(trend->known), csv_cell(trend->guessed), csv_cell(trend->criterion),
        csv_cell(fmt::format("{}", fmt::join(trend->models, "; "))));
    const std::string after = fmt::format("{},{}", word(finding.verdict), csv_cell(finding.why));
    for (const auto& set_up : finding.set_ups)
      for (const auto& measure : set_up.measures)
        table +=
            fmt::format("{},{},{},{},{},{},{},{}\r\n", before, csv_cell(set_up.set_up), csv_cell(measure.name),
                        cell(std::optional(measure.value)), cell(measure.least), cell(measure.most),
                        !measure.is_bounded() ? ""
                        : measure.holds()     ? "yes"
                                              : "no",
                        after);
    if (finding.set_ups.empty()) table += fmt::format("{},,,,,,,{}\r\n", before, after);
  }
  return table;
}

}  // namespace gapstrain::cases
