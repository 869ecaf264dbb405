// The strain of the bone against beam theory, and what of it is counted to the screws.
#include "models/preparation/prepare_bodies.h"
#include "models/stress/bone_strain.h"
#include "tests/models/constructs.h"
#include "tests/models/measures/solved_construct.h"

#include <catch2/catch.hpp>

#include <array>
#include <cmath>
#include <numbers>
#include <utility>

namespace gapstrain {

namespace {

using namespace models;

constexpr double outer = 14.0, inner = 9.0, bone_modulus = 17000.0, contraction = 0.3;
constexpr double inertia =
    std::numbers::pi / 64.0 * (outer * outer * outer * outer - inner * inner * inner * inner);
constexpr double tube_length = 400.0;

// Held at its proximal end, the plate far away in the middle: what is strained most is bone alone.
Construct long_tube(const LoadCase& load, double refinement) {
  tests::TubeSizes sizes;
  sizes.outer = outer;
  sizes.inner = inner;
  sizes.bone_modulus = bone_modulus;
  sizes.length = tube_length;
  Construct construct = tests::plated_tube(sizes);
  construct.loads = {load};
  construct.loads[0].supports = cantilever();
  construct.mesh.refinement = refinement;
  return construct;
}

BoneFindings bone_of(const Construct& construct) { return tests::solve_and_measure(construct).loads[0].bone; }

// Made-up fields of stress on a construct's fragments.
struct BoneFields {
  models::Assembly assembly;
  std::vector<int> chosen;
  std::array<BodyStress, 2> stress;

  explicit BoneFields(const Construct& construct) : assembly(assemble(construct, construct.screws)) {
    chosen = chosen_screws(assembly, construct.screws);
    for (std::size_t f = 0; f < 2; ++f) {
      const Eigen::MatrixX3d none = Eigen::MatrixX3d::Zero(nodes(f).rows(), 3);
      stress[f] = {none, none, none};
    }
  }
  const Eigen::MatrixX3d& nodes(std::size_t f) const {
    return assembly.bodies[body_of_fragment(assembly.construct, f)].body->shell().mesh->nodes;
  }
  int node_next_to(std::size_t f, const Eigen::Vector3d& place) const {
    Eigen::Index node = 0;
    (nodes(f).rowwise() - place.transpose()).rowwise().squaredNorm().minCoeff(&node);
    return static_cast<int>(node);
  }
  // All nodes within a distance of a place, so that what is smoothed over them is of that size there.
  void strain_around(std::size_t f, const Eigen::Vector3d& place, double radius, double along) {
    for (Eigen::Index node = 0; node < nodes(f).rows(); ++node)
      if ((nodes(f).row(node).transpose() - place).norm() < radius) {
        stress[f].top(node, 0) = along;
        stress[f].bottom(node, 0) = along;
      }
  }
  BoneFindings measured() const { return measure_bone(assembly, chosen, {nullptr, &stress[0], &stress[1]}); }
};

Construct tube_at_half_mesh() {
  Construct construct = tests::plated_tube();
  construct.mesh.refinement = 0.5;
  return construct;
}

}  // namespace

TEST_CASE("bone bent by a force at its end is strained by M c / E I a width from where it is held",
          "[models][findings][bone]") {
  // F (L - x) c / E I at x = 14 mm, on the surface, where the shaft's shear stress is nothing.
  LoadCase load;
  load.transverse_z = 12.0 * newton;
  const double expected = 12.0 * (tube_length - outer) * 0.5 * outer / (bone_modulus * inertia);
  CHECK(bone_of(long_tube(load, 0.5)).peak_strain == Approx(expected).epsilon(0.02));
  CHECK(bone_of(long_tube(load, 1.0)).peak_strain == Approx(expected).epsilon(0.008));  // -0.5 %
  std::swap(load.transverse_y, load.transverse_z);
  CHECK(bone_of(long_tube(load, 0.5)).peak_strain == Approx(expected).epsilon(0.02));
}

TEST_CASE("the share of yield is the bone's own over its largest strain", "[models][findings][bone]") {
  LoadCase load;
  load.transverse_z = 12.0 * newton;
  Construct construct = long_tube(load, 0.5);
  construct.bone.cortex.yield_strain = 0.008;
  const BoneFindings found = bone_of(construct);
  REQUIRE(found.factor_to_yield_strain);
  CHECK(*found.factor_to_yield_strain == Approx(0.008 / found.peak_strain));
  construct.bone.cortex.yield_strain.reset();
  CHECK_FALSE(bone_of(construct).factor_to_yield_strain);
}

TEST_CASE("the strain of a field is its larger principal one, by Mohr's circle", "[models][findings][bone]") {
  BoneFields fields(tube_at_half_mesh());
  const double shear_modulus = bone_modulus / (2.0 * (1.0 + contraction));
  const auto strained_by = [&](const Eigen::RowVector3d& stress) {
    for (auto& fragment : fields.stress) fragment.top.rowwise() = stress;
    const BoneFindings found = fields.measured();
    CHECK(found.peak_strain_at_screws == Approx(found.peak_strain).epsilon(1e-12));
    return found.peak_strain;
  };
  CHECK(strained_by({34.0, 0.0, 0.0}) == Approx(34.0 / bone_modulus).epsilon(1e-9));
  CHECK(strained_by({-34.0, 0.0, 0.0}) == Approx(34.0 / bone_modulus).epsilon(1e-9));
  CHECK(strained_by({0.0, 0.0, 20.0}) == Approx(0.5 * 20.0 / shear_modulus).epsilon(1e-9));
  const double mean = 0.5 * (1.0 - contraction) * 34.0 / bone_modulus;
  const double radius = std::hypot(0.5 * (1.0 + contraction) * 34.0 / bone_modulus, 0.5 * 20.0 / shear_modulus);
  CHECK(strained_by({34.0, 0.0, 20.0}) == Approx(mean + radius).epsilon(1e-9));
  CHECK(strained_by({-34.0, 0.0, 20.0}) == Approx(mean + radius).epsilon(1e-9));
}

TEST_CASE("strain beside a screw is told apart, beside an end it is left out", "[models][findings][bone]") {
  BoneFields fields(tube_at_half_mesh());
  const auto& screw = fields.assembly.screws[static_cast<std::size_t>(fields.chosen[0])].planned;
  const Eigen::Vector3d &near = screw.placement.bone->near.middle, &far = screw.placement.bone->far.middle;
  const double middle = 5.75;  // radius of the wall's middle
  const auto spike = [&](const Eigen::Vector3d& place, bool inside) {
    auto& level = inside ? fields.stress[0].bottom : fields.stress[0].top;
    const int node = fields.node_next_to(0, place);
    level.row(node) << 34.0, 0.0, 0.0;
    const BoneFindings found = fields.measured();
    level.row(node).setZero();
    return std::pair{found.peak_strain > 0.0, found.peak_strain_at_screws > 0.0};
  };
  for (const bool inside : {false, true}) {
    CHECK(spike(near, inside) == std::pair{false, true});
    CHECK(spike(far, inside) == std::pair{false, true});
    CHECK(spike({18.5, 0.0, -middle}, inside).first);                     // clear of both
    CHECK(spike({6.0, 0.0, middle}, inside) == std::pair{false, false});  // less than 14 mm from the end
    // Beside the screw, but the other way round the bone.
    CHECK(spike({near.x(), middle, 0.0}, inside) == std::pair{true, false});
  }
}

// Straight fall along the bone: smoothing leaves it alone, and the highest of what is clear is where it becomes
// clear, 14 mm from the end, wherever nodes are.
TEST_CASE("strain is highest just where it is clear, whatever nodes lie there", "[models][findings][bone]") {
  for (const double refinement : {0.4, 0.5, 0.7}) {
    Construct construct = tube_at_half_mesh();
    construct.mesh.refinement = refinement;
    BoneFields fields(construct);
    for (Eigen::Index node = 0; node < fields.nodes(0).rows(); ++node)
      for (auto* level : {&fields.stress[0].top, &fields.stress[0].bottom})
        (*level)(node, 0) = 17.0 * (1.0 - fields.nodes(0)(node, 0) / 100.0);
    CAPTURE(refinement);
    CHECK(fields.measured().peak_strain == Approx(0.001 * 0.86).epsilon(1e-4));
  }
}

// Half-way between two screws.
TEST_CASE("strain of the wall under a force on it is left out", "[models][findings][bone]") {
  Construct construct = tube_at_half_mesh();
  construct.loads[0].forces = {{118.5 * mm, 180.0 * degree, {0.0 * newton, 0.0 * newton, 20.0 * newton}}};
  BoneFields fields(construct);
  const Eigen::Vector3d under(118.5, 0.0, -5.75), opposite(118.5, 0.0, 5.75);
  fields.stress[1].top(fields.node_next_to(1, under), 0) = 170.0;
  CHECK(fields.measured().peak_strain == 0.0);
  fields.strain_around(1, opposite, 7.0, 17.0);
  CHECK(fields.measured().peak_strain == Approx(0.001).epsilon(0.1));
  construct.loads[0].forces.clear();
  BoneFields without(construct);
  without.strain_around(1, under, 7.0, 170.0);
  CHECK(without.measured().peak_strain == Approx(0.01).epsilon(0.1));
}

}  // namespace gapstrain
