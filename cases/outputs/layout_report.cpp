#include "cases/outputs/layout_report.h"

#include "cases/cautions.h"
#include "cases/outputs/columns.h"
#include "cases/outputs/figure_words.h"
#include "cases/outputs/limit_on_chart.h"
#include "cases/outputs/outcome_table.h"
#include "cases/outputs/read_table.h"
#include "cases/outputs/worst_of_loads.h"
#include "models/studies/ranking.h"
#include "viz/study_pictures.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

namespace gapstrain::cases {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t best_count = 10;
constexpr double infinity = std::numeric_limits<double>::infinity();

using Column = std::vector<double>;

Column read_figure(const fs::path& folder, const std::string& figure) {
  return read_numbers(folder / StudyFolder::final_name, {figure_column(figure)}).front();
}

// To three digits: less is no difference between constructs, and would decide nothing but by chance.
double three_digits(double value) {
  if (value == 0.0 || !std::isfinite(value)) return value;
  const double step = std::pow(10.0, std::floor(std::log10(std::abs(value))) - 2.0);
  return std::round(value / step) * step;
}

// Lower is better.
Column read_wish(const fs::path& folder, const models::FigureWish& wish) {
  Column column = read_figure(folder, wish.figure);
  for (double& value : column) value = wish.most ? -three_digits(value) : three_digits(value);
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
    const auto inside = models::keeps(read_figure(folder, limit.figure), limit.least.value_or(-infinity),
                                      limit.most.value_or(infinity));
    for (std::size_t row = 0; row < kept.size(); ++row) kept[row] = kept[row] != 0 && inside[row] != 0;
  }
  return kept;
}

// Figures worth a column beside each layout.
std::vector<std::string> shown_figures(const models::LayoutRules& rules) {
  std::vector<std::string> figures{"working_length", "peak_stress", "gap_strain"};
  const auto add = [&](const std::string& figure) {
    if (std::find(figures.begin(), figures.end(), figure) == figures.end()) figures.push_back(figure);
  };
  for (const auto& wish : rules.rank_by) add(wish.figure);
  for (const auto& wish : rules.front) add(wish.figure);
  for (const auto& limit : rules.limits) add(limit.figure);
  if (figures.size() > 5) figures.resize(5);
  return figures;
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
    text += fmt::format(" {:>16}", clip(name, 16));
  }
  text += '\n';
  const auto line = [&](const std::string& rank, std::size_t row) {
    text += fmt::format("{:>6} {}", rank, pad(clip(holes[row], 32), 32));
    for (std::size_t k = 0; k < figures.size(); ++k)
      text += fmt::format(" {:>16}", with_unit(figures[k], columns[k][row]));
    text += '\n';
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
                  const std::string& y_figure, bool with_front, const fs::path& png) {
  const Column x = scaled(read_figure(folder, x_figure), x_figure);
  const Column y = scaled(read_figure(folder, y_figure), y_figure);
  std::vector<std::size_t> inside, outside;
  for (std::size_t row = 0; row < x.size(); ++row) (report.keeps[row] != 0 ? inside : outside).push_back(row);

  viz::ScatterChart chart;
  chart.words = {title.name,
                 fmt::format("{} layouts, each under {}", x.size(), worst_of_loads(title.loads.size()))};
  chart.x = axis_of(x_figure);
  chart.y = axis_of(y_figure);
  if (!outside.empty())
    chart.clouds.push_back(
        {rules.limits.empty() ? "doubtful" : "outside the limits", pick(x, outside), pick(y, outside)});
  if (!inside.empty())
    chart.clouds.push_back(
        {rules.limits.empty() ? "layouts" : "within the limits", pick(x, inside), pick(y, inside)});
  if (with_front)
    chart.front = viz::Front{"none is better in both", pick(x, report.front), pick(y, report.front), true};
  if (!report.best.empty()) chart.marked.push_back({"best by rank", x[report.best[0]], y[report.best[0]]});
  if (title.own) chart.marked.push_back({"your layout", x[*title.own], y[*title.own]});
  chart.x_limits = limits_of(rules, x_figure);
  chart.y_limits = limits_of(rules, y_figure);
  viz::draw_scatter(display, chart, png);
}

}  // namespace

LayoutReport report_layouts(const fs::path& folder, const models::LayoutRules& rules, const LayoutTitle& title) {
  const fs::path table = folder / StudyFolder::final_name;
  const auto states = read_texts(table, "state");
  const auto holes = read_texts(table, "holes");
  LayoutReport report;
  report.keeps = kept_rows(folder, rules, states);
  const auto& kept = report.keeps;
  report.kept = static_cast<std::size_t>(std::count(kept.begin(), kept.end(), 1));
  report.failed = static_cast<std::size_t>(std::count(states.begin(), states.end(), "failed"));
  report.doubtful = static_cast<std::size_t>(std::count(states.begin(), states.end(), "doubtful"));

  std::vector<Column> keys;
  for (const auto& wish : rules.rank_by) keys.push_back(read_wish(folder, wish));
  report.best = models::best_rows(kept, keys, best_count);
  std::erase_if(report.best, [&](std::size_t row) { return states[row] != "ok"; });
  report.front = models::pareto_front(kept, read_wish(folder, rules.front[0]), read_wish(folder, rules.front[1]));

  std::string& text = report.text;
  text = fmt::format("{}: {} layouts, each under {}\n", title.name, states.size(),
                     worst_of_loads(title.loads.size()));
  if (report.failed + report.doubtful > 0)
    text += fmt::format(
        "Not to be trusted, and not ranked: {} that fail a check of their own, {} without a result; "
        "rows.csv says why\n",
        report.doubtful, report.failed);
  std::vector<std::string> wanted;
  for (const auto& limit : rules.limits) wanted.push_back(limit_text(limit));
  if (!wanted.empty())
    text += report.kept == 0
                ? fmt::format("NO layout keeps the limits ({}); the best of the others follow\n",
                              fmt::join(wanted, "; "))
                : fmt::format("{} layouts keep the limits: {}\n", report.kept, fmt::join(wanted, "; "));
  std::vector<std::string> order;
  for (const auto& wish : rules.rank_by) order.push_back(wish_text(wish));
  text +=
      fmt::format("\nBest by {}:\n{}", fmt::join(order, ", then "), table_of(folder, rules, title, report, holes));
  if (!title.own) text += "Your own layout is not among the admissible ones.\n";
  text += fmt::format("\n{} that no other betters in both {} and {}: front.csv\n",
                      report.front.size() == 1 ? "One layout" : fmt::format("{} layouts", report.front.size()),
                      wish_text(rules.front[0]), wish_text(rules.front[1]));
  for (const auto& reason : title.left_out) text += fmt::format("Left out: {}\n", reason);
  text += fmt::format("\n{}\n", fmt::join(cautions, "\n"));
  return report;
}

void draw_layout_charts(const fs::path& folder, const models::LayoutRules& rules, const LayoutTitle& title,
                        const LayoutReport& report) {
  const viz::Display display;
  const fs::path charts = folder / "charts";
  fs::create_directories(charts);
  draw_layouts(display, folder, rules, title, report, "working_length", "peak_stress", false,
               charts / "peak_stress_over_working_length.png");
  draw_layouts(display, folder, rules, title, report, "working_length", "gap_strain", false,
               charts / "gap_strain_over_working_length.png");
  draw_layouts(display, folder, rules, title, report, rules.front[0].figure, rules.front[1].figure, true,
               charts / "front.png");
}

}  // namespace gapstrain::cases
