// Charts of studies: numbers and words of many constructs, as PNG files. White ground, legible at A5,
// colour-blind-safe, apart in black and white. Values that are no numbers are left out, which the subtitle says;
// so are those not above zero on a logarithmic axis. Without any value the sheet says so. Each file is written
// beside its target and renamed.
// @throw std::filesystem::filesystem_error with the path when a file cannot be written.
// @throw std::invalid_argument when lists that belong together differ in length.
#pragma once

#include "viz/drawing/colour.h"
#include "viz/drawing/display.h"

#include <Eigen/Core>

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace gapstrain::viz {

struct ChartWords {
  std::string title, subtitle;
};

struct NamedAxis {
  std::string name;  // with its unit: "working length, mm"
  bool logarithmic = false;
  // Of a logarithmic y axis of curves: the value that decides. At most three decades below and two above it are
  // shown, which the subtitle says.
  std::optional<double> decisive = std::nullopt;
};

// A shaded band, or a line where both ends are equal; an infinite end is the axis' own. Its value is written
// behind its name. One that lies far beyond the values does not stretch the axis, but is named at its edge.
struct Limit {
  std::string name;
  double low = 0.0, high = 0.0;
};

struct PointCloud {
  std::string name;
  std::vector<double> x, y;
  std::optional<Meaning> meaning{};  // without: one more series
};

// The best points, joined in the given order, as steps that fall or rise at the next point if wanted.
struct Front {
  std::string name;
  std::vector<double> x, y;
  bool steps = false;
};

struct MarkedPoint {
  std::string name;
  double x = 0.0, y = 0.0;
};

struct ScatterChart {
  ChartWords words;
  NamedAxis x, y;
  std::vector<PointCloud> clouds;  // at most eight are drawn
  std::optional<Front> front;
  std::vector<MarkedPoint> marked;  // large, named with a leader
  std::vector<Limit> x_limits, y_limits;
};
// Up to 1e5 points, smaller and more translucent the more they are.
void draw_scatter(const Display&, const ScatterChart& chart, const std::filesystem::path& file);

struct StudyCurve {
  std::string name;
  std::vector<double> x, y;       // x rising
  std::vector<double> low, high;  // a band round the curve, or empty
};

struct CurvePanel {
  NamedAxis y;
  std::vector<StudyCurve> curves;  // at most eight are drawn; the same place in two panels is the same style
  std::vector<Limit> limits;
};

struct CurveChart {
  ChartWords words;
  NamedAxis x;
  std::vector<CurvePanel> panels;  // from the top down, one to three
};
// @throw std::invalid_argument with no or more than three panels.
void draw_curves(const Display&, const CurveChart& chart, const std::filesystem::path& file);

struct MapChart {
  ChartWords words;
  NamedAxis x, y;                          // levels stand at equal distances in the given order
  std::vector<double> x_values, y_values;  // of columns from the left and rows from below
  Eigen::MatrixXd outcomes;                // a row for each of y_values, a column for each of x_values
  std::string outcome;                     // with its unit
};
// Outcome of two factors as colour, as a number too where there is room; hatched where there is none.
void draw_map(const Display&, const MapChart& chart, const std::filesystem::path& file);

struct Swing {
  std::string name;                    // of the factor
  double at_low = 0.0, at_high = 0.0;  // outcome with the factor at its low and at its high level
};

struct SwingChart {
  ChartWords words;
  NamedAxis outcome;
  double base = 0.0;  // outcome from which the factors move
  std::string base_name = "every factor in the middle";
  std::vector<Swing> swings;
};
// Sorted by their width, the widest on top; at most twenty.
void draw_swings(const Display&, const SwingChart& chart, const std::filesystem::path& file);

// A value with its interval; without where low and high are no numbers.
struct Estimate {
  double value = 0.0, low = 0.0, high = 0.0;
};

struct BarRow {
  std::string name;
  std::vector<Estimate> bars;  // one for each of the chart's series
};

struct BarChart {
  ChartWords words;
  NamedAxis value;
  std::vector<std::string> series;  // one to four
  std::vector<BarRow> rows;         // from the top down; the first twenty are drawn
};
// @throw std::invalid_argument also with no or more than four series.
void draw_bars(const Display&, const BarChart& chart, const std::filesystem::path& file);

struct MarkedValue {
  std::string name;
  double value = 0.0;
};

struct HistogramChart {
  ChartWords words;
  NamedAxis value;
  std::vector<double> values;
  std::vector<MarkedValue> marked;  // percentiles for instance
  std::vector<Limit> limits;        // on the axis of the values
};
// Share of the values in classes of round width near the rule of Freedman & Diaconis 1981 (Z.
// Wahrscheinlichkeitstheorie verw. Gebiete 57:453), at most sixty; on a logarithmic axis of equal ratios.
void draw_histogram(const Display&, const HistogramChart& chart, const std::filesystem::path& file);

struct Factor {
  struct Level {
    std::string text;
    Estimate mean;
  };
  std::string name;
  std::vector<Level> levels;
};

struct EffectsChart {
  ChartWords words;
  NamedAxis y;
  double mean = 0.0;  // over all, drawn as a line; none where it is no number
  std::vector<Factor> factors;
};
// Mean outcome at each level, a small panel a factor on one common axis; of more than eight factors those whose
// means differ most.
void draw_effects(const Display&, const EffectsChart& chart, const std::filesystem::path& file);

}  // namespace gapstrain::viz
