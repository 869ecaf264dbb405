#include "cases/outputs/studies/layout_report.h"

#include "cases/cautions.h"
#include "cases/figures/figure_words.h"
#include "cases/figures/outcome_table.h"
#include "cases/figures/worst_of_loads.h"
#include "cases/files/read_table.h"
#include "cases/outputs/studies/limit_on_chart.h"
#include "cases/text/columns.h"
#include "models/statistics/ranking.h"
#include "viz/study/study_pictures.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

namespace gapstrain::cases {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t best_count = 10;

using Column = std::vector<double>;

Column read_figure(const fs::path& folder, const std::string& figure) {
  return read_numbers(folder / StudyFolder::final_name, {figure_column(figure)}).front();
}

// To three digits: less is no difference between constructs, and would decide nothing but by chance.
double rounded_to_three_digits(double value) {
  if (value == 0.0 || !std::isfinite(value)) return value;
  const double step = std::pow(10.0, std::floor(std::log10(std::abs(value))) - 2.0);
  return std::round(value / step) * step;
}

// Lower is better.
Column read_wish(const fs::path& folder, const models::FigureWish& wish) {
  Column column = read_figure(folder, wish.figure);
  for (double& value : column)
    value = wish.most ? -rounded_to_three_digits(value) : rounded_to_three_digits(value);
  return column;
}

std::string wish_text(const models::FigureWish& wish) {
  std::string name = wish.figure;
  std::replace(name.begin(), name.end(), '_', ' ');
  return (wish.most ? "most " : "least ") + name;
}

std::string limit_text(const models::FigureLimit& limit) {
  std::string name = limit.figure;
  std::replace(name.begin(), name.end(), '_', ' ');
  if (limit.least && limit.most)
    return fmt::format("{} from {} to {}", name, with_unit(limit.figure, *limit.least),
                       with_unit(limit.figure, *limit.most));
  return limit.least ? fmt::format("{} at least {}", name, with_unit(limit.figure, *limit.least))
                     : fmt::format("{} at most {}", name, with_unit(limit.figure, *limit.most));
}

// Rows that have a result and keep all limits.
std::vector<char> kept_rows(const fs::path& folder, const models::LayoutRules& rules,
                            const std::vector<std::string>& states) {
  std::vector<char> kept;
  for (const auto& state : states) kept.push_back(state == "ok");
  for (const auto& limit : rules.limits) {
    constexpr double unbounded = std::numeric_limits<double>::infinity();
    const auto inside = models::keeps(read_figure(folder, limit.figure), limit.least.value_or(-unbounded),
                                      limit.most.value_or(unbounded));
    for (std::size_t row = 0; row < kept.size(); ++row) kept[row] = kept[row] != 0 && inside[row] != 0;
  }
  return kept;
}

// Figures worth a column beside each layout. That margins fail stands there as a word.
std::vector<std::string> shown_figures(const models::LayoutRules& rules) {
  constexpr std::size_t most = 5;
  std::vector<std::string> figures{"margin", "rules_broken"};
  const auto add = [&](const std::string& figure) {
    if (figure != "margins_failing" && std::find(figures.begin(), figures.end(), figure) == figures.end())
      figures.push_back(figure);
  };
  for (const auto& wish : rules.rank_by) add(wish.figure);
  for (const auto& wish : rules.front) add(wish.figure);
  for (const auto& limit : rules.limits) add(limit.figure);
  add("working_length");
  figures.resize(std::min(figures.size(), most));
  return figures;
}

// How many of those within the limits hold, and of these break no rule.
std::string standing_text(const LayoutReport& report, const Column& margin, const Column& broken) {
  if (report.kept == 0) return "";
  std::size_t hold = 0, unbroken = 0, fail = 0;
  for (std::size_t row = 0; row < broken.size(); ++row) {
    if (report.keeps[row] == 0) continue;
    if (report.fails[row] != 0) ++fail;
    if (!(margin[row] >= 1.0)) continue;
    ++hold;
    if (broken[row] == 0.0) ++unbroken;
  }
  if (hold + fail == 0) return "Whether they hold is not known: the metals have no strengths\n";
  if (hold == 0) return "NO layout holds: of each a part of plate or screws FAILS; the best of these follow\n";
  return fmt::format(
      "{} hold (every margin of plate and screws at least 1), {} of them break{} no rule of the trade\n", hold,
      unbroken, unbroken == 1 ? "s" : "");
}

std::string table_of(const fs::path& folder, const models::LayoutRules& rules, const LayoutTitle& title,
                     const LayoutReport& report, const std::vector<std::string>& holes) {
  const auto figures = shown_figures(rules);
  std::vector<Column> columns;
  for (const auto& figure : figures) columns.push_back(read_figure(folder, figure));
  std::string text = fmt::format("{:>6} {}", "", pad("holes with a screw", 32));
  for (const auto& figure : figures) {
    std::string name = figure;
    std::replace(name.begin(), name.end(), '_', ' ');
    text += fmt::format(" {:>10}", clip(name, 10));
  }
  text += '\n';
  const auto line = [&](const std::string& rank, std::size_t row) {
    text += fmt::format("{:>6} {}", rank, pad(clip(holes[row], 32), 32));
    for (std::size_t k = 0; k < figures.size(); ++k)
      text += fmt::format(" {:>10}", with_unit(figures[k], columns[k][row]));
    text += report.fails[row] != 0 ? " FAILS\n" : "\n";
  };
  for (std::size_t k = 0; k < report.best.size(); ++k) line(fmt::format("{}", k + 1), report.best[k]);
  if (title.own) line("yours", *title.own);
  return text;
}

viz::NamedAxis axis_of(const std::string& figure) { return {words_of(figure).axis, false}; }

Column scaled(Column column, const std::string& figure) {
  for (double& value : column) value *= words_of(figure).scale;
  return column;
}

std::vector<double> pick(const Column& column, const std::vector<std::size_t>& rows) {
  std::vector<double> picked;
  for (const std::size_t row : rows) picked.push_back(column[row]);
  return picked;
}

std::vector<viz::Limit> limits_of(const models::LayoutRules& rules, const std::string& figure) {
  std::vector<viz::Limit> limits;
  for (const auto& limit : rules.limits)
    if (limit.figure == figure) limits.push_back(limit_on_chart(figure, limit.least, limit.most));
  return limits;
}

void draw_layouts(const viz::Display& display, const fs::path& folder, const models::LayoutRules& rules,
                  const LayoutTitle& title, const LayoutReport& report, const std::string& x_figure,
                  const std::string& y_figure, bool with_front, const fs::path& file) {
  const Column x = scaled(read_figure(folder, x_figure), x_figure);
  const Column y = scaled(read_figure(folder, y_figure), y_figure);
  std::vector<std::size_t> inside, outside;
  for (std::size_t row = 0; row < x.size(); ++row) (report.keeps[row] != 0 ? inside : outside).push_back(row);

  viz::ScatterChart chart;
  chart.words = {fmt::format("{} layouts", x.size()),
                 fmt::format("each under {}", worst_of_loads(title.loads.size()))};
  chart.x = axis_of(x_figure);
  chart.y = axis_of(y_figure);
  if (!outside.empty())
    chart.clouds.push_back({rules.limits.empty() ? "not to be trusted" : "outside the limits", pick(x, outside),
                            pick(y, outside),
                            rules.limits.empty() ? viz::Meaning::not_trusted : viz::Meaning::fails});
  if (!inside.empty())
    chart.clouds.push_back({rules.limits.empty() ? "layouts" : "within the limits", pick(x, inside),
                            pick(y, inside),
                            rules.limits.empty() ? std::nullopt : std::optional(viz::Meaning::holds)});
  if (with_front)
    chart.front = viz::Front{"none is better in both", pick(x, report.front), pick(y, report.front), true};
  const auto mark = [&](const std::string& name, std::size_t row) {
    chart.marked.push_back({name + (report.fails[row] != 0 ? ", FAILS" : ""), x[row], y[row]});
  };
  if (!report.best.empty()) mark("best by rank", report.best[0]);
  if (title.own) mark("your layout", *title.own);
  chart.x_limits = limits_of(rules, x_figure);
  chart.y_limits = limits_of(rules, y_figure);
  viz::draw_scatter(display, chart, file);
}

}  // namespace

LayoutReport report_layouts(const fs::path& folder, const models::Construct& construct, const LayoutTitle& title) {
  const models::LayoutRules& rules = *construct.layouts;
  const fs::path table = folder / StudyFolder::final_name;
  const auto states = read_texts(table, "state");
  const auto holes = read_texts(table, "holes");
  LayoutReport report;
  report.keeps = kept_rows(folder, rules, states);
  const auto& kept = report.keeps;
  report.kept = static_cast<std::size_t>(std::count(kept.begin(), kept.end(), 1));
  const Column margin = read_figure(folder, "margin");
  for (const double least : margin) report.fails.push_back(least < 1.0 ? 1 : 0);
  report.states = count_states(folder, construct);

  std::vector<Column> keys;
  for (const auto& wish : rules.rank_by) keys.push_back(read_wish(folder, wish));
  report.best = models::best_rows(kept, keys, best_count);
  std::erase_if(report.best, [&](std::size_t row) { return states[row] != "ok"; });
  report.front = models::pareto_front(kept, read_wish(folder, rules.front[0]), read_wish(folder, rules.front[1]));

  std::string& text = report.text;
  for (const auto& alarm : alarms_of(report.states)) text += alarm + '\n';
  text += fmt::format("{}: {} layouts, each under {}\n", title.name, states.size(),
                      worst_of_loads(title.loads.size()));
  if (report.states.failed + report.states.doubtful > 0)
    text += "Rows that are not to be trusted are not ranked.\n";
  std::vector<std::string> wanted;
  for (const auto& limit : rules.limits) wanted.push_back(limit_text(limit));
  if (!wanted.empty())
    text += report.kept == 0
                ? fmt::format("NO layout keeps the limits ({}); the best of the others follow\n",
                              fmt::join(wanted, "; "))
                : fmt::format("{} layouts keep the limits: {}\n", report.kept, fmt::join(wanted, "; "));
  text += standing_text(report, margin, read_figure(folder, "rules_broken"));
  std::vector<std::string> order;
  for (const auto& wish : rules.rank_by) order.push_back(wish_text(wish));
  text +=
      fmt::format("\nBest by {}:\n{}", fmt::join(order, ", then "), table_of(folder, rules, title, report, holes));
  if (!title.own) text += "Your own layout is not among the admissible ones.\n";
  text += fmt::format("\n{} on the Pareto front of {} and {}: front.csv\n",
                      report.front.size() == 1 ? "One layout" : fmt::format("{} layouts", report.front.size()),
                      wish_text(rules.front[0]), wish_text(rules.front[1]));
  for (const auto& reason : title.left_out) text += fmt::format("Left out: {}\n", reason);
  text += fmt::format("\n{}\n", fmt::join(cautions, "\n"));
  return report;
}

void draw_layout_charts(const viz::Display& display, const fs::path& folder, const models::LayoutRules& rules,
                        const LayoutTitle& title, const LayoutReport& report) {
  const fs::path charts = folder / "charts";
  fs::create_directories(charts);
  draw_layouts(display, folder, rules, title, report, "working_length", "peak_stress", false,
               display.file(charts / "peak_stress_over_working_length"));
  draw_layouts(display, folder, rules, title, report, "working_length", "gap_strain", false,
               display.file(charts / "gap_strain_over_working_length"));
  draw_layouts(display, folder, rules, title, report, rules.front[0].figure, rules.front[1].figure, true,
               display.file(charts / "front"));
}

}  // namespace gapstrain::cases
