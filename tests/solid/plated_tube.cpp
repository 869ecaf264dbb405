#include "tests/solid/plated_tube.h"

#include "models/layouts/ready_screws.h"
#include "models/preparation/from_scratch.h"
#include "tests/models/constructs.h"

#include <algorithm>
#include <cmath>

namespace gapstrain::tests {

namespace {

using models::Findings;
using models::LoadFindings;

const models::GapPoint& lateral(const LoadFindings& load) {
  return *std::min_element(load.gap.edge.begin(), load.gap.edge.end(), [](const auto& one, const auto& other) {
    constexpr double side = 1.5707963267948966;
    return std::abs(one.around.value() - side) < std::abs(other.around.value() - side);
  });
}

const models::PlateStation& station_at(const LoadFindings& load, double along) {
  const auto& stations = load.plate.stations;
  return *std::min_element(stations.begin(), stations.end(), [&](const auto& one, const auto& other) {
    return std::abs(one.along.value() - along) < std::abs(other.along.value() - along);
  });
}

struct ScrewReference {
  std::string label;  // on the distal side, as the reference gives them
  double fx, fz, my;  // axial and bending load: along the plate, along the axis, about the plate's width
};

struct TorsionReference {
  std::string label;
  double fy, mx, mz;
};

const models::ScrewFindings& screw(const LoadFindings& load, const std::string& label) {
  return *std::find_if(load.screws.begin(), load.screws.end(), [&](const auto& s) { return s.label == label; });
}

void compare_hole(std::vector<Comparison>& rows, const std::string& group, const LoadFindings& load,
                  double reference) {
  const auto& hole = load.plate.holes[5];  // the empty hole nearest the gap, distal side
  Comparison shell = compare(group, "peak at the empty hole by the gap, shell", "MPa", hole.peak.von_mises.value(),
                             reference, 0.0);
  shell.below = 0.02;
  shell.above = 0.13;
  rows.push_back(shell);
  rows.push_back(compare(group, "the same after the three-dimensional factors", "MPa", hole.peak_solid->value(),
                         reference, 0.04));
}

void compare_screws(std::vector<Comparison>& rows, const std::string& group, const LoadFindings& load,
                    const std::vector<ScrewReference>& references) {
  double force_x = 0.0, force_z = 0.0, moment = 0.0;
  for (const auto& r : references) {
    force_x = std::max(force_x, std::abs(r.fx));
    force_z = std::max(force_z, std::abs(r.fz));
    moment = std::max(moment, std::abs(r.my));
  }
  for (const auto& r : references) {
    const auto& ours = screw(load, r.label);
    rows.push_back(
        {group, r.label + " shear along the plate", "N", ours.shear_x.value(), r.fx, force_x, 0.06, 0.06});
    rows.push_back({group, r.label + " axial", "N", ours.axial.value(), r.fz, force_z, 0.06, 0.06});
    rows.push_back({group, r.label + " bending", "N mm", ours.bending_y.value(), r.my, moment, 0.06, 0.06});
  }
}

// A load in the plane of symmetry.
struct InPlaneReference {
  double near, far;    // axial motion, mm
  double top, bottom;  // surface stress at mid-span, MPa
  double hole;         // peak at the empty hole nearest the gap, MPa
  std::vector<ScrewReference> screws;
};

void compare_in_plane(std::vector<Comparison>& rows, const std::string& group, const LoadFindings& load,
                      const InPlaneReference& solid) {
  const auto& middle = station_at(load, 56.0);
  rows.push_back(
      compare(group, "axial motion, near cortex", "mm", load.gap.near.axial_motion.value(), solid.near, 0.02));
  rows.push_back(
      compare(group, "axial motion, far cortex", "mm", load.gap.far.axial_motion.value(), solid.far, 0.02));
  rows.push_back(
      compare(group, "surface stress at mid-span, top", "MPa", middle.surface_top.value(), solid.top, 0.02));
  rows.push_back(compare(group, "surface stress at mid-span, bottom", "MPa", middle.surface_bottom.value(),
                         solid.bottom, 0.02));
  compare_hole(rows, group, load, solid.hole);
  compare_screws(rows, group, load, solid.screws);
}

}  // namespace

std::vector<Comparison> compare_plated_tube() {
  const Findings findings = models::analyse(plated_tube()).findings;
  const auto& stiffness = findings.stiffness;
  std::vector<Comparison> rows;

  std::string group = "Plated tube, axial compression 100 N";
  rows.push_back(compare(group, "stiffness", "N/mm", stiffness.axial.value(), 278.428, 0.02));
  compare_in_plane(rows, group, findings.loads[0],
                   {-0.143036,
                    -0.559309,
                    108.8163,
                    -115.8598,
                    300.1633,
                    {{"S7", 104.4706, -64.18387, -238.5902},
                     {"S8", -14.5754, 67.29363, 37.42829},
                     {"S10", 10.10475, -3.109763, -11.23026}}});

  group = "Plated tube, bending 1000 N mm";
  rows.push_back(compare(group, "stiffness", "N mm/rad", stiffness.bending_y.value(), 24817.0, 0.02));
  compare_in_plane(rows, group, findings.loads[1],
                   {-0.144075,
                    -0.573155,
                    115.2361,
                    -115.2041,
                    291.2751,
                    {{"S7", 92.52076, -68.2941, -230.8188},
                     {"S8", -42.05744, 62.7411, 74.64892},
                     {"S10", -50.46332, 5.552996, 29.57091}}});

  const LoadFindings& torsion = findings.loads[2];
  group = "Plated tube, torsion 1000 N mm";
  rows.push_back(compare(group, "stiffness", "N mm/rad", stiffness.torsion.value(), 19366.0, 0.03));
  rows.push_back(
      compare(group, "transverse motion, near cortex", "mm", torsion.gap.near.motion_y.value(), 0.109405, 0.03));
  rows.push_back(
      compare(group, "transverse motion, far cortex", "mm", torsion.gap.far.motion_y.value(), 0.6441, 0.03));
  rows.push_back(compare(group, "motion towards the plate, lateral", "mm", lateral(torsion).motion_z.value(),
                         0.267271, 0.03));
  rows.push_back(compare(group, "surface shear at mid-span, top", "MPa",
                         station_at(torsion, 56.0).surface_shear_top.value(), -82.83486, 0.02));
  rows.push_back(compare(group, "surface shear at mid-span, bottom", "MPa",
                         station_at(torsion, 56.0).surface_shear_bottom.value(), 82.82914, 0.02));
  compare_hole(rows, group, torsion, 184.1599);
  for (const TorsionReference& r : {TorsionReference{"S7", -12.90134, -503.9251, -37.41156},
                                    TorsionReference{"S8", 15.01025, -298.6299, -34.03003},
                                    TorsionReference{"S10", -2.108915, -197.445, -24.07699}}) {
    const auto& ours = screw(torsion, r.label);
    rows.push_back(
        {group, r.label + " shear across the plate", "N", ours.shear_y.value(), r.fy, 15.01025, 0.12, 0.12});
    rows.push_back({group, r.label + " bending", "N mm", ours.bending_x.value(), r.mx, 503.9251, 0.06, 0.06});
    rows.push_back({group, r.label + " torsion", "N mm", ours.torsion.value(), r.mz, 37.41156, 0.12, 0.12});
  }
  return rows;
}

}  // namespace gapstrain::tests
