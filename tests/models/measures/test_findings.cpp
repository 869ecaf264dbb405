// Findings held against laws that do not depend on the mesh: a coarse one serves.
#include "models/layouts/ready_screws.h"
#include "models/measures/figures.h"
#include "models/measures/working_length.h"
#include "models/preparation/from_scratch.h"
#include "tests/models/constructs.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

namespace gapstrain {

namespace {

models::Construct coarse_tube() {
  models::Construct construct = tests::plated_tube();
  construct.mesh.refinement = 0.5;
  return construct;
}

const models::PlateStation& station_at(const models::LoadFindings& load, double along) {
  const auto& stations = load.plate.stations;
  return *std::min_element(stations.begin(), stations.end(), [&](const auto& one, const auto& other) {
    return std::abs(one.along.value() - along) < std::abs(other.along.value() - along);
  });
}

}  // namespace

TEST_CASE("across an empty gap the plate alone carries the load", "[models][findings]") {
  const auto findings = models::analyse(coarse_tube()).findings;
  const double eccentricity = 7.0 + 1.5 + 1.25;  // bone's axis to plate's middle
  const auto& axial = station_at(findings.loads[0], 56.0);
  CHECK(axial.normal.value() == Approx(-100.0).epsilon(1e-7));
  CHECK(axial.bending_flat.value() == Approx(100.0 * eccentricity).epsilon(1e-7));
  CHECK(std::abs(axial.bending_edge.value()) < 1e-3 * 975.0);
  const auto& bending = station_at(findings.loads[1], 56.0);
  CHECK(bending.bending_flat.value() == Approx(1000.0).epsilon(1e-7));
  CHECK(std::abs(bending.normal.value()) < 1e-5);
  const auto& torsion = station_at(findings.loads[2], 56.0);
  CHECK(torsion.torsion.value() == Approx(1000.0).epsilon(1e-7));
  // Beyond the outermost screws the plate is free.
  CHECK(std::abs(station_at(findings.loads[0], 2.0).normal.value()) < 1e-5);
  CHECK(std::abs(station_at(findings.loads[0], 111.0).bending_flat.value()) < 1e-3);
}

TEST_CASE("screws of a fragment carry the load between them", "[models][findings]") {
  const auto findings = models::analyse(coarse_tube()).findings;
  double shear = 0.0, axial = 0.0;
  for (const auto& screw : findings.loads[0].screws) {
    if (screw.hole < 6) continue;
    shear += screw.shear_x.value();
    axial += screw.axial.value();
  }
  CHECK(shear == Approx(100.0).epsilon(1e-6));
  CHECK(std::abs(axial) < 1e-4);
}

TEST_CASE("a sound solution passes its own checks", "[models][findings]") {
  const auto findings = models::analyse(coarse_tube()).findings;
  for (const auto& check : findings.trust.checks) {
    CAPTURE(check.name, check.value, check.limit);
    if (check.name.find("mesh error") == std::string::npos) CHECK(check.passed);
  }
}

// Bending moment and shear force across the gap are the same; the construct as a whole turns by other amounts.
TEST_CASE("the gap's motion does not depend on where the construct is held", "[models][findings]") {
  models::Construct construct = coarse_tube();
  models::LoadCase between = construct.loads[1], held = between;
  held.supports = models::cantilever();
  held.ball_distance = 0.0 * models::mm;
  construct.loads = {between, held};
  const auto loads = models::analyse(construct).findings.loads;
  for (std::size_t k = 0; k < loads[0].gap.edge.size(); ++k) {
    const auto &one = loads[0].gap.edge[k], &other = loads[1].gap.edge[k];
    CHECK(one.axial_motion.value() == Approx(other.axial_motion.value()).margin(1e-9));
    CHECK(one.motion_y.value() == Approx(other.motion_y.value()).margin(1e-9));
    CHECK(one.motion_z.value() == Approx(other.motion_z.value()).margin(1e-9));
  }
  CHECK(loads[0].gap.shear_strain->max == Approx(loads[1].gap.shear_strain->max).epsilon(1e-6));
}

TEST_CASE("a gap that closes under load touches, and has no strain there", "[models][findings]") {
  models::Construct construct = coarse_tube();
  only(construct.fractures).gap = 0.2 * models::mm;
  construct.loads.resize(1);
  const auto findings = models::analyse(construct).findings;
  const auto& load = findings.loads[0];
  CHECK(load.face.force.value() > 1.0);
  CHECK(load.gap.windows.closed > 0.0);
  CHECK_FALSE(load.gap.far.axial_strain);
  CHECK(load.gap.near.axial_strain);
  // The outer half of the wall touches first: at mid-cortex a little of the gap is left.
  CHECK(load.gap.far.axial_motion.value() > -0.2);
  CHECK(load.gap.far.axial_motion.value() < -0.185);
  for (const auto& check : findings.trust.checks)
    if (check.name.starts_with("contact")) CHECK(check.passed);
}

TEST_CASE("near and far cortex are the edge's own motion at 0 and 180 degrees", "[models][findings]") {
  const auto gap = models::analyse(coarse_tube()).findings.loads[1].gap;
  // Bending turns the fragments as wholes but for local give: axial motion is close to linear in the height.
  const double mean = 0.5 * (gap.near.axial_motion.value() + gap.far.axial_motion.value());
  REQUIRE(gap.axial_strain);
  CHECK(gap.axial_strain->mean * 3.0 == Approx(mean).epsilon(0.02));
  CHECK(gap.axial_strain->min == Approx(*gap.far.axial_strain).epsilon(0.01));
  CHECK(gap.axial_strain->max == Approx(*gap.near.axial_strain).epsilon(0.01));
  CHECK(gap.windows.bone + gap.windows.cartilage + gap.windows.granulation + gap.windows.none == Approx(1.0));
}

TEST_CASE("tissue in the gap stiffens the construct towards the unbroken bone's share", "[models][findings]") {
  models::Construct construct = coarse_tube();
  construct.loads.resize(1);
  double before = models::analyse(construct).findings.stiffness.axial.value();
  for (const double modulus : {1.0, 100.0, 10000.0}) {
    only(construct.fractures).tissue = models::Tissue{"tissue", modulus * models::mpa, 0.3, "made up"};
    const auto findings = models::analyse(construct).findings;
    CHECK(findings.stiffness.axial.value() > before);
    before = findings.stiffness.axial.value();
  }
  // Unbroken tube of 160 mm: EA/L = 9596.6 N/mm; plate and screws only add.
  CHECK(before > 0.8 * 9596.6);
}

TEST_CASE("a mirrored construct gives the mirrored answer", "[models][findings]") {
  models::Construct construct = coarse_tube();
  construct.loads.resize(1);
  construct.loads[0].ball_offset_y = 1.5 * models::mm;
  for (auto& screw : construct.screws) screw.tilt_across = 4.0 * models::degree;
  models::Construct mirrored = construct;
  mirrored.loads[0].ball_offset_y = -construct.loads[0].ball_offset_y;
  for (auto& screw : mirrored.screws) screw.tilt_across = -screw.tilt_across;
  const auto one = models::analyse(construct).findings, other = models::analyse(mirrored).findings;
  // The two meshes are not mirror images of each other, so they agree to the mesh's error only.
  const auto strain_at = [](const models::Findings& findings, double around) {
    const auto& edge = findings.loads[0].gap.edge;
    return std::min_element(edge.begin(), edge.end(),
                            [&](const auto& a, const auto& b) {
                              return std::abs(a.around.value() - around) < std::abs(b.around.value() - around);
                            })
        ->axial_strain.value();
  };
  constexpr double side = 1.5707963267948966;
  CHECK(one.loads[0].gap.far.axial_strain.value() ==
        Approx(other.loads[0].gap.far.axial_strain.value()).epsilon(0.01));
  CHECK(strain_at(one, side) == Approx(strain_at(other, 3.0 * side)).epsilon(0.02));
  CHECK(strain_at(one, 3.0 * side) == Approx(strain_at(other, side)).epsilon(0.02));
  CHECK(std::abs(strain_at(one, side) / strain_at(one, 3.0 * side) - 1.0) > 0.05);
  CHECK(station_at(one.loads[0], 56.0).bending_edge.value() ==
        Approx(-station_at(other.loads[0], 56.0).bending_edge.value()).epsilon(1e-6));
}

TEST_CASE("the construct's ratios follow their definitions", "[models][findings]") {
  const auto figures = models::measure_figures(tests::plated_tube());
  CHECK(figures.working_length.value() == Approx(33.0));
  CHECK(*figures.plate_span_ratio == Approx(112.0 / 3.0));
  // An oblique fracture is longer along the bone: over a tube 14 mm wide at 45 degrees by that width.
  auto oblique = tests::plated_tube();
  only(oblique.fractures).obliquity = 45.0 * models::degree;
  CHECK(*models::measure_figures(oblique).plate_span_ratio == Approx(112.0 / (3.0 + 14.0)));
  CHECK(figures.plate_screw_density == Approx(0.6));
  CHECK(figures.fragments.front().screws == 3);
  CHECK(figures.fragments.back().screws == 3);
  CHECK(figures.fragments.front().cortices == 6);
}

namespace {

std::vector<int> holes_of(const models::ScrewVariant& variant) {
  std::vector<int> result;
  for (const auto& screw : variant.screws) result.push_back(screw.hole);
  std::sort(result.begin(), result.end());
  return result;
}

// Both innermost screws are taken out again.
models::Construct without_innermost(models::Construct construct) {
  models::Step all, out;
  for (const auto& screw : construct.screws) all.insert.push_back(screw.label);
  out.remove = {"S4", "S7"};
  construct.steps = {all, out};
  return construct;
}

}  // namespace

TEST_CASE("working-length variants move both innermost screws to the next free hole", "[models][findings]") {
  const auto variants = models::working_length_variants(tests::plated_tube());
  REQUIRE(variants.size() == 2);
  CHECK(variants[0].further_out);
  CHECK(holes_of(variants[0]) == std::vector<int>{1, 2, 3, 8, 9, 10});
  CHECK_FALSE(variants[1].further_out);
  CHECK(holes_of(variants[1]) == std::vector<int>{1, 3, 5, 6, 8, 10});
}

TEST_CASE("working-length variants move the screws that the steps leave in place", "[models][findings]") {
  const auto construct = without_innermost(tests::plated_tube());
  CHECK(models::measure_figures(construct).working_length.value() == Approx(55.0));
  CHECK(models::measure_figures(construct).fragments.front().screws == 2);
  const auto variants = models::working_length_variants(construct);
  CHECK(holes_of(variants[0]) == std::vector<int>{1, 2, 4, 7, 9, 10});
  CHECK(holes_of(variants[1]) == std::vector<int>{1, 4, 5, 6, 7, 10});

  const auto effects = models::analyse(without_innermost(coarse_tube())).findings.loads[0].working_length_effect;
  REQUIRE(effects.size() == 2);
  CHECK(effects[0].working_length.value() == Approx(77.0));
  CHECK(effects[0].stiffness < -0.01);
  CHECK(effects[1].working_length.value() == Approx(11.0));
  CHECK(effects[1].stiffness > 0.01);
}

TEST_CASE("a shorter working length over an open gap is stiffer", "[models][findings]") {
  const auto load = models::analyse(coarse_tube()).findings.loads[0];
  REQUIRE(load.working_length_effect.size() == 2);
  CHECK(load.working_length_effect[0].stiffness < 0.0);
  CHECK(load.working_length_effect[1].stiffness > 0.0);
  CHECK(load.working_length_effect[1].gap_motion < 0.0);
}

TEST_CASE("at the default mesh the listed figures move by less than 2 percent on the next refinement",
          "[models][findings][mesh]") {
  models::Construct construct = tests::plated_tube();
  const auto figures = [&](double refinement) {
    construct.mesh.refinement = refinement;
    const auto findings = models::analyse(construct).findings;
    std::vector<double> all = {findings.stiffness.axial.value(), findings.stiffness.bending_y.value(),
                               findings.stiffness.bending_z.value(), findings.stiffness.torsion.value()};
    for (const auto& load : findings.loads) {
      const bool twists = load.load == "torsion";
      for (const auto& point : {load.gap.near, load.gap.far})
        all.push_back(twists ? point.shear_motion.value() : point.axial_motion.value());
      all.push_back(load.plate.peak.von_mises.value());
      for (const auto& screw : load.screws) all.push_back(screw.peak_bending_stress.value());
    }
    return all;
  };
  const auto at_default = figures(1.0), refined = figures(1.4);
  REQUIRE(at_default.size() == refined.size());
  for (std::size_t k = 0; k < refined.size(); ++k) {
    CAPTURE(k);
    CHECK(refined[k] == Approx(at_default[k]).epsilon(0.02));
  }
}

// Plate as a hinge between rigid fragments pinned at both ends: Pcr = (EI/w)(1/l1 + 1/l2), with l from pin to
// hinge. A stepped beam-column differs from it by up to 10 % for flexible plates (own beam-column solution); the
// holes soften the plate's EI by 17 % here, the screws' give lengthens w.
TEST_CASE("axial load buckles the construct near the hinge formula", "[models][findings]") {
  const auto load = models::analyse(coarse_tube()).findings.loads[0];
  REQUIRE(load.buckling_factor);
  const double hinge = 946900.0 / 33.0 * 2.0 / 84.0 / 100.0;
  CAPTURE(hinge, *load.buckling_factor);
  CHECK(*load.buckling_factor > 0.6 * hinge);
  CHECK(*load.buckling_factor < 1.3 * hinge);
}

}  // namespace gapstrain
