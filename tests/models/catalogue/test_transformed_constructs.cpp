// A construct seen in a mirror, from its other end, at another size and on a finer mesh has the same figures: all
// of the catalogue but lives (stress to the power of some 12), and what an analysis says of faces, bone and
// buckling besides. Meshes are no mirror images of each other, so each difference is also one of two meshes.
#include "models/assembly/insertion.h"
#include "models/catalogue/analysed_outcome.h"
#include "models/catalogue/assessed_figures.h"
#include "models/measures/analyse.h"
#include "models/preparation/prepare_bodies.h"
#include "tests/models/catalogue/transformed.h"
#include "tests/models/constructs.h"
#include "tests/models/measures/compression_constructs.h"

#include <fmt/format.h>

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <string>
#include <vector>

namespace gapstrain {

using namespace models;  // NOLINT: this file is nothing but figures

namespace {

constexpr double allowed = 0.02;
constexpr double missing = -1e300;

// Open and bridged, nothing about it even: tapered and bowed both ways, tilted screws, an oblique gap, loads off
// the axis.
Construct bridged() {
  Construct construct = tests::plated_tube();
  construct.name = "bridged";
  Bone& bone = construct.bone;
  bone.stations = {{15.0 * mm, 15.0 * mm, 12.0 * mm, 2.0 * mm, 0.0 * mm, 0.0 * mm},
                   {75.0 * mm, 13.0 * mm, 11.0 * mm, 2.2 * mm, 0.8 * mm, 2.0 * mm},
                   {140.0 * mm, 14.0 * mm, 12.5 * mm, 1.8 * mm, 0.0 * mm, 0.0 * mm}};
  bone.cortex.transverse_modulus = 0.7 * bone.cortex.longitudinal_modulus;
  bone.cortex.yield_strain = 0.008;
  only(construct.plates).material = find_metal("stainless-steel-cold-worked").value();
  for (std::size_t k = 0; k < construct.screws.size(); ++k) {
    Screw& screw = construct.screws[k];
    screw.material = only(construct.plates).material;
    screw.tilt_across = (k % 2 == 0 ? 3.0 : -2.0) * degree;
    screw.tilt_along = (k % 3 == 0 ? 2.0 : 0.0) * degree;
  }
  only(construct.fractures).position = 78.0 * mm;
  only(construct.fractures).gap = 4.0 * mm;
  only(construct.fractures).obliquity = 15.0 * degree;
  only(construct.fractures).direction = 50.0 * degree;
  construct.loads[0].ball_offset_y = 1.2 * mm;
  construct.loads[1].bending_z = 400.0 * newton_mm;
  return construct;
}

// The faces meet at rest, and nothing presses them.
Construct reduced() {
  Construct construct = bridged();
  construct.name = "reduced";
  only(construct.fractures).gap = 0.0 * mm;
  only(construct.fractures).obliquity = 0.0 * degree;
  construct.loads[2].axial_compression = 80.0 * newton;
  return construct;
}

// By a compression screw, cortical screws all through, the plate on the bone.
Construct pressed(FrictionLaw friction) {
  Construct construct = tests::pressed_tube();
  construct.name = friction == FrictionLaw::none ? "pressed" : "pressed, with friction";
  construct.contact.friction = friction;
  construct.mesh.refinement = 1.0;
  construct.bone.cortex.yield_strain = 0.008;
  construct.loads[0].ball_offset_y = 0.8 * mm;
  return construct;
}

// Indicative ones are shown and held to nothing: what follows the mesh by its nature. Of a face that touches in
// part, strain is largest next to what touches, where the gap goes to nothing. A bone's strain at its screws is
// that of bonded ports. What bends or twists hardly buckles: the factor hangs on the little that presses.
enum class Kind { figure, indicative };

struct Entry {
  double value = 0.0;  // at the size that it was before it was scaled
  double scale = 0.0;  // what a difference is a share of
  Kind kind = Kind::figure;
};
using Figures = std::map<std::string, Entry>;  // of each load by itself

int power_of_length(FigureUnit unit) {
  switch (unit) {
    case FigureUnit::length:
    case FigureUnit::axial_stiffness:
      return 1;
    case FigureUnit::force:
      return 2;
    case FigureUnit::angular_stiffness:
      return 3;
    default:
      return 0;
  }
}

// Signed figures pass through nothing: they are held against what they are part of.
double group_of(const LoadOutcome& load, FigureUnit unit) {
  if (unit == FigureUnit::length) return std::max(load.largest_motion.value(), 1e-3);  // a micrometre is nothing
  if (unit == FigureUnit::strain)
    return std::max(load.gap_strain().value_or(0.0), load.shear_strain.value_or(0.0));
  if (unit == FigureUnit::force) return std::max({load.screw_pull, load.across, load.plate_pressure}).value();
  return 0.0;
}

bool is_left_out(const std::string& name) {
  return name.ends_with("_life") || name.find("_life_") != std::string::npos || name == "margins_failing" ||
         name == "rules_broken" || name.starts_with("breaks_");
}

Figures figures_of(const Construct& construct, double size) {
  const Assembly assembly = assemble(construct, construct.screws);
  const Findings findings = analyse(assembly, {}, Extent::verdict).findings;
  const auto margins = collect_margins(construct, findings).margins;
  const Outcome outcome = outcome_of(findings, construct, margins, review(construct));
  Figures all;
  const auto add = [&](const std::string& name, FigureUnit unit, std::optional<double> value, double group = 0.0,
                       Kind kind = Kind::figure) {
    const double by = std::pow(size, -power_of_length(unit));
    all[name] =
        value ? Entry{*value * by, std::max(std::abs(*value), group) * by, kind} : Entry{missing, 1.0, kind};
  };
  for (const auto& each : construct_figures())
    if (!is_left_out(each.name)) add(each.name, each.unit, each.read(outcome));
  const std::optional<Race> none;
  for (const auto& each : assessed_figures())
    if (!is_left_out(each.name)) add(each.name, each.unit, each.read({outcome, findings, margins, none, {}}));
  for (std::size_t l = 0; l < outcome.loads.size(); ++l) {
    const LoadFindings& load = findings.loads[l];
    const std::string of = " @" + load.load;
    const bool touches_in_part = load.gap.windows.closed > 0.0;
    for (const auto& each : load_figures()) {
      const bool is_share = each.name == "gap_closed";  // of the whole edge
      const bool is_strain = each.unit == FigureUnit::strain;
      add(each.name + of, each.unit, each.read(outcome.loads[l]),
          is_share ? 1.0 : group_of(outcome.loads[l], each.unit),
          is_strain && touches_in_part ? Kind::indicative : Kind::figure);
    }
    const double pressure = load.face.force.value() > 0.0 ? std::max(load.face.near, load.face.far).value() : 0.0;
    add("face pressure near" + of, FigureUnit::stress, load.face.near.value(), pressure);
    add("face pressure far" + of, FigureUnit::stress, load.face.far.value(), pressure);
    add("face pressure peak" + of, FigureUnit::stress, load.face.peak.value());
    add("bone strain" + of, FigureUnit::strain, load.bone.peak_strain);
    add("bone strain at screws" + of, FigureUnit::strain, load.bone.peak_strain_at_screws, 0.0, Kind::indicative);
    add("buckling factor" + of, FigureUnit::ratio, load.buckling_factor, 0.0,
        construct.loads[l].axial_compression.value() > 0.0 ? Kind::figure : Kind::indicative);
  }
  return all;
}

std::string name_of(const std::string& entry) { return entry.substr(0, entry.find(" @")); }

struct Worst {
  double share = 0.0;
  std::string where;
};
struct Row {
  Kind kind = Kind::figure;
  std::map<std::string, Worst> worst;  // a change
};
using Table = std::map<std::string, Row>;  // a figure

// A figure that is small beside its largest of any load is held against a tenth of that: what a load hardly brings
// about says nothing of the figure.
void note(const Figures& one, const Figures& other, const std::string& change, const std::string& construct,
          Table& table) {
  REQUIRE(one.size() == other.size());
  std::map<std::string, double> largest;
  for (const auto& [entry, figure] : one)
    if (figure.value != missing)
      largest[name_of(entry)] = std::max(largest[name_of(entry)], std::abs(figure.value));
  for (const auto& [entry, figure] : one) {
    const Entry& changed = other.at(entry);
    const bool indicative = figure.kind == Kind::indicative || changed.kind == Kind::indicative;
    Row& row = table[name_of(entry) + (indicative ? " (indicative)" : "")];
    row.kind = indicative ? Kind::indicative : Kind::figure;
    Worst& worst = row.worst[change];
    const double scale = std::max(figure.scale, 0.1 * largest[name_of(entry)]);
    double share = std::abs(changed.value - figure.value);
    if (share > 0.0) share /= scale;
    if (std::isnan(share) || share > worst.share)
      worst = {share, fmt::format("{}, {}: {:.6g} for {:.6g}", construct, entry, changed.value, figure.value)};
  }
}

struct Change {
  std::string name;
  double size = 1.0;
  std::function<Construct(const Construct&)> of;
};

std::vector<Change> changes() {
  return {{"mirror", 1.0, tests::mirrored},
          {"reverse", 1.0, tests::reversed},
          {"scale", 1.7, [](const Construct& c) { return tests::scaled(c, 1.7); }},
          {"refine", 1.0, [](const Construct& c) { return tests::refined(c, 1.4); }}};
}

void print(const std::string& title, const Table& table) {
  fmt::print("\n{}, per cent\n| figure |", title);
  for (const auto& change : changes()) fmt::print(" {} |", change.name);
  fmt::print("\n| --- | --- | --- | --- | --- |\n");
  for (const auto& [figure, row] : table) {
    fmt::print("| {} |", figure);
    for (const auto& change : changes()) {
      const auto found = row.worst.find(change.name);
      fmt::print(" {} |", found == row.worst.end() ? "" : fmt::format("{:.2f}", 100.0 * found->second.share));
    }
    fmt::print("\n");
  }
  for (const auto& [figure, row] : table)
    for (const auto& [change, worst] : row.worst)
      if (!(worst.share <= allowed)) fmt::print("{}: {:.2f} %, {}\n", change, 100.0 * worst.share, worst.where);
}

Table differences(const std::vector<Construct>& constructs) {
  Table table;
  for (const auto& construct : constructs) {
    const Figures figures = figures_of(construct, 1.0);
    for (const auto& change : changes())
      note(figures, figures_of(change.of(construct), change.size), change.name, construct.name, table);
  }
  return table;
}

// What does not keep to 2 %, by how much it was measured to, and why.
struct Miss {
  std::string figure, change;
  double at_most;
};

void hold(const Table& table, const std::vector<std::string>& changes_held, const std::vector<Miss>& misses) {
  for (const auto& [figure, row] : table)
    for (const auto& [change, worst] : row.worst) {
      if (row.kind == Kind::indicative ||
          std::find(changes_held.begin(), changes_held.end(), change) == changes_held.end())
        continue;
      const auto known = std::find_if(misses.begin(), misses.end(), [&](const Miss& miss) {
        return miss.figure == figure && miss.change == change;
      });
      CAPTURE(figure, change, worst.where);
      CHECK(worst.share <= (known == misses.end() ? allowed : known->at_most));
    }
}

}  // namespace

// A face that touches in part is told by 24 places round it, of which the edge's mesh knows 36: what share
// touches, the highest pressure and the tangent that the buckling factor goes by change a place at a time.
TEST_CASE("mirrored, reversed, scaled and on a finer mesh a construct has the same figures to 2 percent",
          "[models][findings][transformed]") {
  const Table table = differences({bridged(), reduced(), pressed(FrictionLaw::none)});
  print("Bridged, reduced, pressed without friction", table);
  hold(table, {"mirror", "reverse", "scale", "refine"},
       {{"face pressure near", "refine", 0.03},
        {"face pressure peak", "refine", 0.03},
        {"gap_closed", "refine", 0.03},
        {"buckling factor", "refine", 0.05},
        {"bending_stiffness_flat", "refine", 0.06},
        {"bone strain", "refine", 0.03},
        {"margin_bone", "refine", 0.025}});
}

// With friction the way counts. The proximal end lies on the table while the construct is made and hands hold the
// distal one, so its other end first is another way; and hands are as stiff beside a large bone as beside a small
// one. The plate rubs on the bone at more places on a finer mesh.
TEST_CASE("with friction, mirrored and on a finer mesh a pressed construct has the same figures to 2 percent",
          "[models][findings][transformed]") {
  const Table table = differences({pressed(FrictionLaw::coulomb)});
  print("Pressed with friction", table);
  hold(table, {"mirror", "refine"},
       {{"face pressure near", "refine", 0.03},
        {"face pressure peak", "refine", 0.03},
        {"gap_closed", "refine", 0.07},
        {"buckling factor", "refine", 0.10},
        {"bending_stiffness_flat", "refine", 0.16},
        {"torsional_stiffness", "refine", 0.06},
        {"peak_stress", "refine", 0.04},
        {"plate_to_yield", "refine", 0.04},
        {"margin_plate_yield", "refine", 0.025}});
}

}  // namespace gapstrain
