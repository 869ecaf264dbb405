#include "cases/commands/trends.h"

#include "cases/files/output_file.h"
#include "cases/outputs/tables/trends_table.h"
#include "cases/progress/progress.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdlib>
#include <memory>
#include <set>

namespace gapstrain::cases {

namespace {

struct TrendsOptions {
  std::string only, csv;
  double refinement = 1.0;
};

std::string lower_case(std::string text) {
  for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return text;
}

// In its topic, source, statement or one of its models.
bool speaks_of(const models::Trend& trend, const std::string& word) {
  const std::string text =
      fmt::format("{} {} {} {}", trend.topic, trend.source, trend.statement, fmt::join(trend.models, " "));
  return lower_case(text).find(lower_case(word)) != std::string::npos;
}

std::vector<TrendRow> chosen_rows(const std::string& word) {
  std::vector<TrendRow> rows;
  std::set<std::string> topics;
  for (const auto& trend : models::published_trends()) {
    topics.insert(trend.topic);
    if (speaks_of(trend, word)) rows.push_back({&trend, {}});
  }
  if (rows.empty())
    throw OutputError(
        fmt::format("no published statement speaks of \"{}\"; topics are: {}", word, fmt::join(topics, ", ")));
  return rows;
}

std::size_t models_of(const std::vector<TrendRow>& rows) {
  std::set<std::string_view> models;
  for (const auto& row : rows) models.insert(row.trend->models.begin(), row.trend->models.end());
  return models.size();
}

Status run(const TrendsOptions& options) {
  auto rows = chosen_rows(options.only);
  if (!options.csv.empty()) refuse_unusable_file(options.csv, true, "--csv");
  const std::size_t count = models_of(rows);
  const double a_model = 3.0 * std::pow(options.refinement, 3);  // s, factoring above all
  Progress progress({{"model", a_model * static_cast<double>(count)}}, false);
  models::Benches benches(options.refinement, [&, number = std::size_t{0}](const std::string& model) mutable {
    progress.begin(fmt::format("model {} of {}, {}", number + 1, count, model));
    progress.reach(static_cast<double>(number++) / static_cast<double>(count));
  });
  std::vector<const models::Trend*> trends;
  for (const auto& row : rows) trends.push_back(row.trend);
  const auto findings = models::find_out(trends, benches);
  progress.end();
  for (std::size_t i = 0; i < rows.size(); ++i) rows[i].finding = findings[i];
  fmt::print("{}", trends_text(rows, options.refinement));
  if (!options.csv.empty()) write_file_whole(options.csv, trends_csv(rows));
  return Status::done;
}

}  // namespace

void add_trends(CLI::App& program, Job& job) {
  CLI::App* command = program.add_subcommand(
      "trends", "Rebuild published bench tests as models and say where they agree with the papers");
  const auto options = std::make_shared<TrendsOptions>();
  command->add_option("--only", options->only, "Statements whose topic, source, text or model has this word")
      ->type_name("WORD");
  command->add_option("--refinement", options->refinement, "Mesh: divides every element size; default 1")
      ->check(CLI::Range(0.25, 4.0))
      ->check([](const std::string& text) {  // which lets through what compares with nothing
        return std::isfinite(std::strtod(text.c_str(), nullptr))
                   ? std::string{}
                   : "found " + text + "; a number from 0.25 to 4 is wanted";
      })
      ->type_name("X");
  command->add_option("--csv", options->csv, "Write the table to this file too, a row per figure")
      ->type_name("FILE");
  command->footer(
      "A disagreement is a result, not a fault: exit status 0 whatever the verdicts; 1 a model does not hold;\n"
      "2 bad input.");
  command->callback([&job, options] { job = [options] { return run(*options); }; });
}

}  // namespace gapstrain::cases
