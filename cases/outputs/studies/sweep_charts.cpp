#include "cases/outputs/studies/sweep_charts.h"

#include "cases/figures/figure_words.h"
#include "cases/figures/worst_of_loads.h"
#include "cases/files/file_names.h"
#include "cases/outputs/sentences/state_lines.h"
#include "cases/outputs/studies/limit_on_chart.h"
#include "cases/study/sweep_table.h"
#include "models/statistics/effects.h"
#include "models/statistics/sobol_indices.h"
#include "models/statistics/statistics.h"
#include "viz/study/study_pictures.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

namespace gapstrain::cases {

namespace fs = std::filesystem;

namespace {

constexpr double nothing = std::numeric_limits<double>::quiet_NaN();

std::vector<double> as_list(const Eigen::VectorXd& values) {
  return {values.data(), values.data() + values.size()};
}

class SweepCharts {
 public:
  SweepCharts(const PictureStyle& style, const fs::path& folder, const StudyFile& study)
      : study_(study),
        table_(folder, study),
        factors_(table_.variables()),
        charts_(folder / "charts"),
        display_(picture_frame(style, study.name, study.base.file,
                               short_alarms_of(state_of_case(study.base.construct)))) {
    fs::create_directories(charts_);
  }

  void draw() {
    for (const auto& chart : study_.charts) draw_chart(chart);
    for (const auto& finding : asked_findings(study_)) {
      const Eigen::VectorXd values = table_.finding(finding);
      if (models::drop_missing(values).outcomes.size() == 0) continue;
      draw_map(finding, values);
      draw_effects(finding, values);
      draw_swings(finding, values);
      draw_indices(finding, values);
      draw_histogram(finding, values);
    }
  }

 private:
  std::string worst() const {
    return fmt::format("{} constructs, each under {}", study_.rows(),
                       worst_of_loads(study_.base.construct.loads.size()));
  }
  fs::path file(const std::string& kind, const std::string& finding) const {
    return display_.file(charts_ / fmt::format("{}_{}", kind, finding));
  }
  bool is_sampled() const { return !std::holds_alternative<Grid>(study_.design); }

  std::vector<viz::Limit> limits_of(const std::string& finding) const {
    std::vector<viz::Limit> limits;
    for (const auto& limit : study_.limits)
      if (limit.finding == finding) limits.push_back(limit_on_chart(finding, limit.least, limit.most));
    return limits;
  }

  // One curve a value of the series; where several rows share a place their mean, with a band from least to most.
  std::vector<viz::StudyCurve> curves_of(const Chart& chart, const std::string& finding) const {
    const Eigen::VectorXd x = table_.named(chart.x) * axis_of(study_, chart.x).scale;
    const Eigen::VectorXd y = table_.finding(finding) * words_of(finding).scale;
    std::vector<SweepTable::Level> levels{{0.0, ""}};
    Eigen::VectorXd of_row = Eigen::VectorXd::Zero(x.size());
    std::string series;
    if (chart.series) {
      const std::size_t index = table_.variable_index(*chart.series);
      of_row = table_.variable(index);
      series = *chart.series;
      if (const auto known = table_.levels(index); !known.empty()) levels = known;
      if (!study_.variables[index].unit.empty())
        for (auto& level : levels) level.text += " " + study_.variables[index].unit;
    }
    std::vector<viz::StudyCurve> curves;
    for (const auto& level : levels) {
      std::map<double, std::vector<double>> at;
      for (Eigen::Index row = 0; row < x.size(); ++row)
        if (of_row(row) == level.value && std::isfinite(x(row)) && std::isfinite(y(row)))
          at[x(row)].push_back(y(row));
      viz::StudyCurve curve;
      curve.name = level.text.empty() ? words_of(finding).axis : fmt::format("{} {}", series, level.text);
      bool is_band = false;
      for (const auto& [place, all] : at) {
        double sum = 0.0;
        for (const double value : all) sum += value;
        curve.x.push_back(place);
        curve.y.push_back(sum / static_cast<double>(all.size()));
        curve.low.push_back(*std::min_element(all.begin(), all.end()));
        curve.high.push_back(*std::max_element(all.begin(), all.end()));
        is_band = is_band || all.size() > 1;
      }
      if (!is_band) curve.low = curve.high = {};
      curves.push_back(std::move(curve));
    }
    return curves;
  }

  void draw_chart(const Chart& chart) const {
    viz::CurveChart picture;
    picture.words = {"Over " + axis_of(study_, chart.x).name, worst()};
    picture.x = {axis_of(study_, chart.x).name, false};
    std::string name = chart.x;
    for (const auto& finding : chart.y) {
      if (picture.panels.size() == 3) break;
      picture.panels.push_back({{words_of(finding).axis, false}, curves_of(chart, finding), limits_of(finding)});
      name += "_" + finding;
    }
    viz::draw_curves(display_, picture, display_.file(charts_ / file_stem(name)));
  }

  void draw_map(const std::string& finding, const Eigen::VectorXd& values) const {
    if (is_sampled() || study_.variables.size() != 2) return;
    const auto x = table_.levels(0), y = table_.levels(1);
    if (!study_.variables[0].is_numeric() || !study_.variables[1].is_numeric() || x.size() < 2 || y.size() < 2)
      return;
    viz::MapChart picture;
    picture.words = {words_of(finding).axis, worst()};
    picture.x = {axis_of(study_, study_.variables[0].name).name, false};
    picture.y = {axis_of(study_, study_.variables[1].name).name, false};
    for (const auto& level : x) picture.x_values.push_back(level.value);
    for (const auto& level : y) picture.y_values.push_back(level.value);
    // The first variable varies slowest.
    picture.outcomes = Eigen::Map<const Eigen::MatrixXd>(values.data(), static_cast<Eigen::Index>(y.size()),
                                                         static_cast<Eigen::Index>(x.size())) *
                       words_of(finding).scale;
    picture.outcome = words_of(finding).axis;
    viz::draw_map(display_, picture, file("map", finding));
  }

  void draw_effects(const std::string& finding, const Eigen::VectorXd& values) const {
    if (is_sampled() || study_.variables.size() < 2) return;
    viz::EffectsChart picture;
    picture.words = {"Main effects", worst() + "; means over all other variables"};
    picture.y = {words_of(finding).axis, false};
    const double scale = words_of(finding).scale;
    picture.mean = models::drop_missing(values).outcomes.mean() * scale;
    for (std::size_t k = 0; k < study_.variables.size(); ++k) {
      const auto levels = table_.levels(k);
      std::vector<double> numbers;
      for (const auto& level : levels) numbers.push_back(level.value);
      const auto means = models::means_at_levels(factors_.col(static_cast<Eigen::Index>(k)), values, numbers);
      viz::Factor factor{axis_of(study_, study_.variables[k].name).name, {}};
      for (std::size_t level = 0; level < means.size(); ++level)
        factor.levels.push_back(
            {levels[level].text, {means[level].mean.value_or(nothing) * scale, nothing, nothing}});
      picture.factors.push_back(std::move(factor));
    }
    viz::draw_effects(display_, picture, file("main_effects", finding));
  }

  void draw_swings(const std::string& finding, const Eigen::VectorXd& values) const {
    if (study_.variables.size() < 2) return;
    const double scale = words_of(finding).scale;
    viz::SwingChart picture;
    picture.words = {"Swings", worst() + "; means where a variable is lowest and highest"};
    picture.outcome = {words_of(finding).axis, false};
    picture.base = models::drop_missing(values).outcomes.mean() * scale;
    picture.base_name = "mean of all";
    for (const auto& swing : models::tornado(factors_, values).swings)
      picture.swings.push_back(
          {axis_of(study_, study_.variables[static_cast<std::size_t>(swing.factor)].name).name,
           swing.at_low * scale, swing.at_high * scale});
    viz::draw_swings(display_, picture, file("swings", finding));
  }

  void draw_indices(const std::string& finding, const Eigen::VectorXd& values) const {
    if (!std::holds_alternative<models::SaltelliDesign>(study_.design)) return;
    const auto indices = models::sobol_indices(values, static_cast<Eigen::Index>(study_.variables.size()), 1);
    viz::BarChart picture;
    picture.words = {"Sobol' indices of " + words_of(finding).axis,
                     "shares of its variance; lines: 95 % of bootstrap samples"};
    picture.value = {"share of the variance", false};
    picture.series = {"first order", "total"};
    for (std::size_t k = 0; k < indices.factors.size(); ++k) {
      const auto& [first, total] = indices.factors[k];
      picture.rows.push_back({study_.variables[k].name,
                              {{first.value, first.low, first.high}, {total.value, total.low, total.high}}});
    }
    viz::draw_bars(display_, picture, file("sobol_indices", finding));
  }

  void draw_histogram(const std::string& finding, const Eigen::VectorXd& values) const {
    if (!is_sampled() || std::holds_alternative<models::SaltelliDesign>(study_.design)) return;
    const double scale = words_of(finding).scale;
    viz::HistogramChart picture;
    picture.words = {"Spread", worst()};
    picture.value = {words_of(finding).axis, false};
    picture.values = as_list(values * scale);
    const auto marks = models::percentiles(values, {0.05, 0.5, 0.95});
    const char* names[] = {"5 %", "median", "95 %"};
    for (std::size_t k = 0; k < marks.values.size(); ++k)
      picture.marked.push_back({names[k], marks.values[k] * scale});
    picture.limits = limits_of(finding);
    viz::draw_histogram(display_, picture, file("spread", finding));
  }

  const StudyFile& study_;
  SweepTable table_;
  Eigen::MatrixXd factors_;  // all variables, a column each
  fs::path charts_;
  viz::Display display_;
};

}  // namespace

void draw_sweep_charts(const PictureStyle& style, const fs::path& folder, const StudyFile& study) {
  SweepCharts(style, folder, study).draw();
}

}  // namespace gapstrain::cases
