#include "viz/construct/magnified_step.h"

#include "tests/viz/sample.h"
#include "tests/viz/sample_meshes.h"
#include "tests/viz/sample_steps.h"

#include <catch2/catch.hpp>

using namespace gapstrain;

namespace {

// Along x between the drawn cut edges, on the middle of the wall.
double drawn_gap(const models::StepFields& fields, const viz::MagnifiedStep& step) {
  double proximal = -1e9, distal = 1e9;
  for (std::size_t s = 0; s < fields.shells.size(); ++s) {
    const Eigen::VectorXd x = 0.5 * (step.faces[s].top.col(0) + step.faces[s].bottom.col(0));
    if (fields.shells[s].name == "proximal fragment") proximal = x.maxCoeff();
    if (fields.shells[s].name == "distal fragment") distal = x.minCoeff();
  }
  return distal - proximal;
}

models::StepFields with_travel(double travel) {
  auto fields = tests::sample_step_fields()[2];
  for (auto& shell : fields.shells) {
    shell.displacements.setZero();
    if (shell.name == "distal fragment") shell.displacements.col(0).setConstant(travel);
  }
  return fields;
}

}  // namespace

TEST_CASE("the gap at rest is read off the fragments' edges", "[viz][steps]") {
  CHECK(viz::gap_at_rest(tests::sample_step_fields()[0].shells) == Approx(tests::sample_gap));
  CHECK(viz::gap_at_rest({}) == 0.0);
}

TEST_CASE("what is left of a gap is magnified, so that a closed one is drawn closed", "[viz][steps]") {
  for (const double factor : {1.0, 2.0, 50.0})
    for (const double travel : {0.0, -0.37, -tests::sample_gap, 0.11}) {
      const auto fields = with_travel(travel);
      INFO(factor << " " << travel);
      CHECK(drawn_gap(fields, viz::magnify(fields, factor)) ==
            Approx(factor * (tests::sample_gap + travel)).margin(1e-9));
    }
}

TEST_CASE("screws keep their true motion against the plate they sit in", "[viz][steps]") {
  auto fields = with_travel(-0.5);
  const Eigen::Vector3d lifted(0.0, 0.02, 0.07), slide(-0.31, 0.0, 0.0);
  for (auto& shell : fields.shells)
    if (shell.kind == models::BodyKind::plate) shell.displacements.rowwise() = lifted.transpose();
  for (auto& screw : fields.screws)
    std::fill(screw.displacements.begin(), screw.displacements.end(), Eigen::Vector3d(lifted + slide));
  const auto step = viz::magnify(fields, 10.0);
  REQUIRE(step.screws.size() == fields.screws.size());
  for (std::size_t s = 0; s < step.screws.size(); ++s) {
    const auto& at_rest = fields.screws[s].axis;
    for (std::size_t i = 0; i < at_rest.size(); ++i)
      CHECK((step.screws[s].axis[i] - at_rest[i] - 10.0 * lifted - slide).norm() < 1e-12);
  }
}

TEST_CASE("each end of a hold goes with the part it sits on", "[viz][steps]") {
  auto fields = with_travel(-0.5);
  fields.holds = {{"C1", {30.0, 0.0, -8.0}, {100.0, 0.0, -8.0}}};  // from one fragment to the other
  const auto step = viz::magnify(fields, 3.0);
  const double half = 0.5 * 2.0 * tests::sample_gap;
  CHECK(step.holds[0].from.x() == Approx(30.0 - half));
  CHECK(step.holds[0].to.x() == Approx(100.0 + half - 2.0 * 0.5));
}
