#include "cases/outputs/studies/sweep_report.h"

#include "cases/cautions.h"
#include "cases/figures/figure_words.h"
#include "cases/figures/worst_of_loads.h"
#include "cases/study/sweep_table.h"
#include "cases/text/columns.h"
#include "models/statistics/effects.h"
#include "models/statistics/sobol_indices.h"
#include "models/statistics/statistics.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace gapstrain::cases {

namespace {

bool is_sampled_at_random(const StudyFile& study) {
  const auto* design = std::get_if<models::Design>(&study.design);
  return design != nullptr && design->kind() == models::DesignKind::random;
}

std::string spread_text(const std::string& finding, const Eigen::VectorXd& values) {
  const auto spread = models::percentiles(values, {0.0, 0.05, 0.5, 0.95, 1.0});
  if (spread.values.empty()) return fmt::format("{}: no row has one\n", finding);
  const auto text = [&](std::size_t k) { return with_unit(finding, spread.values[k]); };
  std::string missing;
  if (spread.missing > 0) missing = fmt::format("; {} rows have none", spread.missing);
  return fmt::format("{}: median {}, 5 to 95 %: {} to {}, least {}, most {}{}\n", finding, text(2), text(1),
                     text(3), text(0), text(4), missing);
}

// The share of rows that a limit's finding leaves, with its confidence interval where rows are a random sample.
std::string limit_text(const StudyFile& study, const Limit& limit, const Eigen::VectorXd& values) {
  constexpr double unbounded = std::numeric_limits<double>::infinity();
  const double least = limit.least.value_or(-unbounded), most = limit.most.value_or(unbounded);
  if (models::drop_missing(values).outcomes.size() == 0) return "";
  const auto missed = models::share_where(values, [&](double value) { return value < least || value > most; });
  std::string bounds;
  if (limit.least) bounds += " below " + with_unit(limit.finding, *limit.least);
  if (limit.most) bounds += (bounds.empty() ? " above " : " or above ") + with_unit(limit.finding, *limit.most);
  std::string interval;
  if (is_sampled_at_random(study))
    interval = fmt::format(" (95 % confidence: {:.2g} to {:.2g} %)", 100 * missed.low, 100 * missed.high);
  return fmt::format("  {:.3g} % of {} rows are{}{}\n", 100 * missed.share, missed.counted, bounds, interval);
}

// The mean at each value of a variable that is no number: such values have no order.
std::string level_text(const SweepTable& table, std::size_t index, const std::string& name,
                       const std::string& finding, const Eigen::VectorXd& values) {
  const Eigen::VectorXd places = table.variable(index);
  std::string text = fmt::format("  {} mean at each value:", pad(name, 22));
  const char* comma = "";
  for (const auto& level : table.levels(index)) {
    const Eigen::VectorXd here =
        (places.array() == level.value).select(values, Eigen::VectorXd::Constant(values.size(), std::nan("")));
    const auto kept = models::drop_missing(here).outcomes;
    text += fmt::format("{} \"{}\" {}", comma, level.text,
                        kept.size() > 0 ? with_unit(finding, kept.mean()) : std::string("none"));
    comma = ",";
  }
  return text + '\n';
}

std::string swing_text(const StudyFile& study, const SweepTable& table, const Eigen::MatrixXd& factors,
                       const std::string& finding, const Eigen::VectorXd& values) {
  const auto tornado = models::tornado(factors, values);
  std::string text;
  for (const auto& swing : tornado.swings) {
    const auto index = static_cast<std::size_t>(swing.factor);
    const Variable& variable = study.variables[index];
    if (!variable.is_numeric()) {
      text += level_text(table, index, variable.name, finding, values);
      continue;
    }
    std::string rank;
    if (swing.rank_correlation) rank = fmt::format(", rank correlation {:+.2f}", *swing.rank_correlation);
    text += fmt::format("  {} from lowest to highest: {} to {}{}\n", pad(variable.name, 22),
                        with_unit(finding, swing.at_low), with_unit(finding, swing.at_high), rank);
  }
  return text;
}

std::string index_text(const StudyFile& study, const Eigen::VectorXd& values) {
  const auto count = static_cast<Eigen::Index>(study.variables.size());
  const auto indices = models::sobol_indices(values, count, 1);
  std::string text =
      fmt::format("  Sobol' indices from {} base points ({} left out):\n", indices.base_points, indices.missing);
  if (indices.factors.empty()) return text + "    none: the finding does not vary\n";
  for (std::size_t k = 0; k < indices.factors.size(); ++k) {
    const auto& [first, total] = indices.factors[k];
    text += fmt::format("    {} first order {:6.3f} ({:.3f} to {:.3f}), total {:6.3f} ({:.3f} to {:.3f})\n",
                        pad(study.variables[k].name, 22), first.value, first.low, first.high, total.value,
                        total.low, total.high);
  }
  return text;
}

}  // namespace

SweepReport report_sweep(const std::filesystem::path& folder, const StudyFile& study) {
  const SweepTable table(folder, study);
  const Eigen::MatrixXd factors = table.variables();
  SweepReport report;
  report.states = count_states(folder, study.base.construct);
  for (const auto& alarm : alarms_of(report.states)) report.text += alarm + '\n';
  report.text += fmt::format("{}: {} constructs, each under {}\n", study.name, report.states.rows,
                             worst_of_loads(study.base.construct.loads.size()));
  if (report.states.doubtful > 0) report.text += "Rows that fail a check of their own are in the figures below.\n";
  for (const auto& finding : asked_findings(study)) {
    const Eigen::VectorXd values = table.finding(finding);
    report.text += '\n' + spread_text(finding, values);
    if (models::drop_missing(values).outcomes.size() == 0) continue;
    for (const auto& limit : study.limits)
      if (limit.finding == finding) report.text += limit_text(study, limit, values);
    report.text += swing_text(study, table, factors, finding, values);
    if (std::holds_alternative<models::SaltelliDesign>(study.design)) report.text += index_text(study, values);
  }
  report.text += fmt::format("\n{}\n", fmt::join(cautions, "\n"));
  return report;
}

}  // namespace gapstrain::cases
