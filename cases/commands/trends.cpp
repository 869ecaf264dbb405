#include "cases/commands/trends.h"

#include "cases/outputs/output_target.h"
#include "cases/outputs/trends_table.h"
#include "viz/replace_file.h"

#include <fmt/format.h>
#include <unistd.h>
#include <CLI/CLI.hpp>

#include <algorithm>
#include <cctype>
#include <chrono>
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

// Before the long work. Creates nothing.
void check_csv(const std::filesystem::path& csv) {
  if (csv.empty()) return;
  if (std::filesystem::is_directory(csv))
    throw OutputError(fmt::format("\"{}\" is a folder; --csv takes the name of a file", csv.string()));
  if (const auto folder = csv.parent_path(); !folder.empty() && !std::filesystem::is_directory(folder))
    throw OutputError(
        fmt::format("there is no folder \"{}\" to write \"{}\" into", folder.string(), csv.string()));
}

// Each model with its time on stderr, where somebody is looking.
std::function<void(const std::string&)> make_progress(const std::vector<TrendRow>& rows) {
  if (isatty(STDERR_FILENO) == 0) return {};
  std::set<std::string_view> models;
  for (const auto& row : rows) models.insert(row.trend->models.begin(), row.trend->models.end());
  return [start = std::chrono::steady_clock::now(), count = models.size(),
          number = std::size_t{0}](const std::string& model) mutable {
    const std::chrono::duration<double> passed = std::chrono::steady_clock::now() - start;
    fmt::print(stderr, "{:6.1f} s  model {} of {}: {}\n", passed.count(), ++number, count, model);
  };
}

Status run(const TrendsOptions& options) {
  auto rows = chosen_rows(options.only);
  check_csv(options.csv);
  models::Benches benches(options.refinement, make_progress(rows));
  std::vector<const models::Trend*> trends;
  for (const auto& row : rows) trends.push_back(row.trend);
  const auto findings = models::find_out(trends, benches);
  for (std::size_t i = 0; i < rows.size(); ++i) rows[i].finding = findings[i];
  fmt::print("{}", trends_text(rows, options.refinement));
  if (options.csv.empty()) return Status::done;
  try {
    viz::replace_file(options.csv, trends_csv(rows));
  } catch (const std::filesystem::filesystem_error& error) {
    throw OutputError(error.what());
  }
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
      ->type_name("X");
  command->add_option("--csv", options->csv, "Write the table to this file too, a row per figure")
      ->type_name("FILE");
  command->footer(
      "A disagreement is a result, not a fault: exit status 0 whatever the verdicts; 1 a model does not hold;\n"
      "2 bad input.");
  command->callback([&job, options] { job = [options] { return run(*options); }; });
}

}  // namespace gapstrain::cases
