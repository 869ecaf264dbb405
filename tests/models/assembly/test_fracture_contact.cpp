// The fracture's faces as a joint that bears no tension: two halves of a tube, the plate clear of the bone and
// unused.
#include "models/measures/compression.h"
#include "models/measures/face_pressure.h"
#include "models/measures/solve.h"
#include "models/preparation/prepare_bodies.h"
#include "tests/models/constructs.h"

#include <Eigen/Cholesky>

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace gapstrain {

namespace {

constexpr double outer_radius = 7.0, inner_radius = 4.5;

models::Construct tube_halves() {
  tests::TubeSizes sizes;
  sizes.outer = 2.0 * outer_radius;
  sizes.inner = 2.0 * inner_radius;
  sizes.gap = 0.0;
  sizes.standoff = 6.0;
  models::Construct construct = tests::plated_tube(sizes);
  construct.contact.bone_on_bone = 0.45;
  return construct;
}

// Both halves on the table, no screw in.
models::ConstructState lay_out(const models::Assembly& assembly) {
  models::Procedure procedure;
  procedure.steps = {models::ProcedureStep{}};
  return models::carry_out(assembly, procedure).back();
}

// A tube of any ellipse, cut square; the plate clear of it.
models::Construct elliptic_halves(double width_y, double width_z, double wall) {
  models::Construct construct = tube_halves();
  models::BoneStation& station = construct.bone.stations.front();
  station.width_mediolateral = width_y * models::mm;
  station.width_craniocaudal = width_z * models::mm;
  station.cortex = wall * models::mm;
  construct.loads.resize(1);
  construct.loads[0] = {};
  construct.loads[0].axial_compression = 100.0 * models::newton;
  return construct;
}

// Of the wall between two ellipses' offsets, for pressure by beam theory: the middle curve with its wall, by
// steps.
struct Section {
  double area = 0.0, inertia = 0.0;  // about y
};
Section section_of(double width_y, double width_z, double wall) {
  constexpr int steps = 20000;
  const double a = 0.5 * width_y, b = 0.5 * width_z;
  Section section;
  for (int k = 0; k < steps; ++k) {
    const double t = 2.0 * std::numbers::pi * (k + 0.5) / steps;
    const double speed = std::hypot(a * std::cos(t), b * std::sin(t));  // of (a sin t, b cos t)
    const double normal_z = a * std::cos(t) / speed, curvature = a * b / (speed * speed * speed);
    constexpr int layers = 40;
    for (int l = 0; l < layers; ++l) {
      const double depth = wall * (l + 0.5) / layers;
      const double part = speed * (1.0 - curvature * depth) * wall / layers * 2.0 * std::numbers::pi / steps;
      const double z = b * std::cos(t) - depth * normal_z;
      section.area += part;
      section.inertia += part * z * z;
    }
  }
  return section;
}

// Straight line through the pressures of the touching spots, by area: where it is zero (z).
double neutral_axis(const models::Assembly& assembly, const models::FaceFindings& face) {
  const double middle = 0.5 * (outer_radius + inner_radius), wall = outer_radius - inner_radius;
  Eigen::Matrix2d normal = Eigen::Matrix2d::Zero();
  Eigen::Vector2d right = Eigen::Vector2d::Zero();
  for (std::size_t k = 0; k < face.points.size(); ++k) {
    const auto& point = face.points[k];
    if (point.pressure.value() <= 0.0) continue;
    const double radius = middle + (point.outer ? 0.5 : -0.5) * wall / std::sqrt(3.0);
    const Eigen::Vector2d row(1.0, radius * std::cos(point.around.value()));
    normal += assembly.face[k].area * row * row.transpose();
    right += assembly.face[k].area * point.pressure.value() * row;
  }
  const Eigen::Vector2d line = normal.ldlt().solve(right);
  return -line(0) / line(1);
}

// Resultant's distance from the centre when a ring bears no tension and pressure is zero below z0: moments of the
// pressed part, by strips. Pressure on sections that bear no tension: Roark's Formulas for Stress and Strain,
// chapter on columns, "eccentric loading; prisms without tension" (principle; from memory).
double eccentricity_for(double z0) {
  constexpr int strips = 20000;
  double force = 0.0, moment = 0.0;
  for (int k = 0; k < strips; ++k) {
    const double z = -outer_radius + 2.0 * outer_radius * (k + 0.5) / strips;
    if (z < z0) continue;
    const double out = std::sqrt(outer_radius * outer_radius - z * z);
    const double in = std::abs(z) < inner_radius ? std::sqrt(inner_radius * inner_radius - z * z) : 0.0;
    force += (out - in) * (z - z0);
    moment += (out - in) * (z - z0) * z;
  }
  return moment / force;
}

double neutral_axis_for(double eccentricity) {
  double low = -50.0 * outer_radius, high = 0.5 * outer_radius;
  for (int k = 0; k < 80; ++k) {
    const double middle = 0.5 * (low + high);
    (eccentricity_for(middle) < eccentricity ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

}  // namespace

TEST_CASE("a tube's joint touches all over while the force stays in the kern, and partly beyond",
          "[models][contact]") {
  // Kern of a ring: (Ro^2 + Ri^2) / (4 Ro), any handbook of strength of materials.
  const double kern = (outer_radius * outer_radius + inner_radius * inner_radius) / (4.0 * outer_radius);
  models::Construct construct = tube_halves();
  construct.loads.resize(1);
  construct.loads.insert(construct.loads.end(), 3, construct.loads[0]);
  const std::array<double, 4> shares = {0.5, 0.97, 1.3, 1.8};
  for (std::size_t l = 0; l < 4; ++l) construct.loads[l].ball_offset_z = shares[l] * kern * models::mm;
  const auto assembly = models::assemble(construct, construct.screws);
  const auto made = lay_out(assembly);
  for (std::size_t l = 0; l < 4; ++l) {
    CAPTURE(shares[l]);
    const auto face = models::measure_face(assembly, models::solve_load(assembly, made, assembly.loads[l]));
    CHECK(face.force.value() == Approx(100.0).epsilon(1e-6));
    if (shares[l] < 1.0)
      CHECK(face.touching == Approx(1.0));
    else
      CHECK(face.touching < 0.95);
    if (shares[l] < 0.9) continue;  // the line meets zero far outside the section
    const double found = neutral_axis(assembly, face), expected = neutral_axis_for(shares[l] * kern);
    CAPTURE(found, expected);
    CHECK(std::abs(found - expected) < 0.02 * 2.0 * outer_radius);
  }
}

// The patch test of contact: with equal areas for the inner and the outer half of the wall, outer spots read 12 %
// too much and inner ones as much too little. A shell's wall does not widen as it is pressed, so that round the
// canal it widens by nu e r / (r + z) instead of nu e, and bears nu^2 / (1 - nu^2) z / r more at the depth z of a
// spot. What is left is the mesh's: at the default mesh 0.4 to 0.7 % between inner and outer spots, and up to 2.4
// % at a single one (1 % was wanted).
TEST_CASE("even compression presses every spot of a cut tube alike", "[models][contact]") {
  struct Tube {
    double y, z, wall, contraction;
  };
  for (const auto& [y, z, wall, contraction] :
       {Tube{14.0, 14.0, 2.5, 0.3}, Tube{14.0, 14.0, 1.5, 0.3}, Tube{14.0, 14.0, 2.5, 0.0},
        Tube{15.0, 10.5, 2.0, 0.0}, Tube{11.0, 15.0, 1.5, 0.0}, Tube{15.0, 10.5, 2.0, 0.3},
        Tube{11.0, 15.0, 1.5, 0.3}}) {
    const double small = 0.5 * std::min(y, z) - 0.5 * wall, large = 0.5 * std::max(y, z) - 0.5 * wall;
    const double bent_to = small * small / large;  // radius of the wall's middle where it is bent most
    const double shell =
        contraction * contraction / (1.0 - contraction * contraction) * wall / (2.0 * std::sqrt(3.0) * bent_to);
    CAPTURE(y, z, wall, contraction);
    models::Construct construct = elliptic_halves(y, z, wall);
    construct.bone.cortex =
        models::isotropic_cortex("tube", 17000.0 * models::mpa, contraction, "made up for tests");
    const auto assembly = models::assemble(construct, construct.screws);
    const auto made = lay_out(assembly);
    const auto face = models::measure_face(assembly, models::solve_load(assembly, made, assembly.loads[0]));
    const double even = 100.0 / section_of(y, z, wall).area;
    double worst = 0.0, inner = 0.0, outer = 0.0;
    for (const auto& point : face.points) {
      const double pressure = point.pressure.value() / even;
      worst = std::max(worst, std::abs(pressure - 1.0));
      (point.outer ? outer : inner) += 2.0 * pressure / static_cast<double>(face.points.size());
    }
    CAPTURE(worst, inner, outer);
    CHECK(worst < 0.025 + shell);
    CHECK(std::abs(inner - 1.0) < 0.01 + shell);
    CHECK(std::abs(outer - 1.0) < 0.01 + shell);
    CHECK(face.near.value() == Approx(even).epsilon(0.005));
    CHECK(face.far.value() == Approx(even).epsilon(0.005));
    CHECK(face.touching == Approx(1.0));
  }
}

TEST_CASE("bending with compression presses a cut tube by N / A + M z / I through the wall", "[models][contact]") {
  constexpr double y = 14.0, z = 12.0, wall = 2.0, offset = 1.0;
  models::Construct construct = elliptic_halves(y, z, wall);
  construct.loads[0].ball_offset_z = offset * models::mm;
  const auto assembly = models::assemble(construct, construct.screws);
  const auto face =
      models::measure_face(assembly, models::solve_load(assembly, lay_out(assembly), assembly.loads[0]));
  const Section section = section_of(y, z, wall);
  const double even = 100.0 / section.area;
  for (const auto& point : face.points) {
    if (std::abs(std::remainder(point.around.value(), std::numbers::pi)) > 0.2) continue;  // near and far
    const double height = (0.5 * z - 0.5 * wall + (point.outer ? 0.5 : -0.5) * wall / std::sqrt(3.0)) *
                          std::copysign(1.0, std::cos(point.around.value()));
    CAPTURE(point.around.value(), point.outer);
    CHECK(point.pressure.value() == Approx(even + 100.0 * offset * height / section.inertia).margin(0.03 * even));
  }
}

TEST_CASE("an oblique cut under axial load slips when the tangent of its angle passes the friction coefficient",
          "[models][contact]") {
  models::Construct construct = tube_halves();
  construct.loads.resize(1);
  construct.loads[0].supports = models::cantilever();
  construct.loads[0].ball_distance = 0.0 * models::mm;
  constexpr double angle = 25.0;
  only(construct.fractures).obliquity = angle * models::degree;
  only(construct.fractures).direction = 30.0 * models::degree;
  const auto holds_at = [&](double friction_angle) {
    construct.contact.bone_on_bone = std::tan(friction_angle * std::numbers::pi / 180.0);
    auto assembly = models::assemble(construct, construct.screws);
    try {
      models::apply_load(assembly, lay_out(assembly), assembly.loads[0]);
      return true;
    } catch (const solver::MechanismError&) {
      return false;
    }
  };
  CHECK_FALSE(holds_at(angle - 1.0));
  CHECK(holds_at(angle + 1.0));
}

TEST_CASE("a gap that closes makes the construct stiffer by what now touches", "[models][contact]") {
  models::Construct construct = tube_halves();
  only(construct.fractures).gap = 0.03 * models::mm;
  only(construct.plates).standoff = 1.5 * models::mm;
  construct.loads.resize(1);
  construct.loads[0].axial_compression = 1.0 * models::newton;
  const auto assembly = models::assemble(construct, construct.screws);
  const auto procedure = models::procedure_of(construct, models::chosen_screws(assembly, construct.screws));
  const auto made = models::carry_out(assembly, procedure).back();
  const auto under = [&](double load) {
    auto scaled = assembly.loads[0];
    for (auto& forces : scaled.forces) forces *= load;
    return models::solve_load(assembly, made, scaled);
  };
  const auto& load = assembly.loads[0];
  const auto motion = [&](const solver::Solution& solution) {
    double work = 0.0;
    for (std::size_t b = 0; b < 3; ++b) work += load.forces[b].cwiseProduct(solution.motions[b]).sum();
    return work;
  };

  // Open: the linear solve without contact, and the load at which the first pair of it meets.
  const auto open = models::solve_small_load(assembly, made, load);
  const Eigen::VectorXd closing = assembly.system->deformations(open);
  double first = 1e300;
  for (std::size_t k = 0; k < assembly.face.size(); ++k) {
    const auto row = assembly.system->first_row(assembly.pairs[k].normal);
    if (closing(row) < 0.0)
      first = std::min(first, -made.pressed.gap(static_cast<Eigen::Index>(k)) / closing(row));
  }
  const double flexible = motion(open);
  CHECK(models::force_across(assembly, under(0.99 * first)).value() == 0.0);
  CHECK(models::force_across(assembly, under(1.01 * first)).value() > 0.0);
  CHECK(motion(under(0.9 * first).pressed.solution) == Approx(0.9 * first * flexible).epsilon(1e-6));

  // Closed: the slope between two high loads is the linear solve with what touches between them.
  const auto low = under(6.0 * first), high = under(6.06 * first);
  REQUIRE(low.pressed.closed == high.pressed.closed);
  const double slope = (motion(high.pressed.solution) - motion(low.pressed.solution)) / (0.06 * first);
  const double touching = motion(models::solve_small_load(assembly, low, load));
  CHECK(slope == Approx(touching).epsilon(0.01));
  CHECK(slope < 0.7 * flexible);
}

}  // namespace gapstrain
