// Compression with friction: prebend, limits, and what is handed from step to step.
#include "models/measures/compression.h"
#include "models/measures/face_pressure.h"
#include "models/measures/limits.h"
#include "models/measures/prebend.h"
#include "models/measures/solve.h"
#include "models/preparation/from_scratch.h"
#include "models/preparation/prepare_bodies.h"
#include "models/words/limit_words.h"
#include "tests/models/measures/compression_constructs.h"
#include "tests/models/measures/solved_construct.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace gapstrain {

namespace {

using namespace models;
using tests::pressed_tube;

const PassedLimit* find_limit(const Findings& findings, LimitKind kind) {
  const auto& limits = findings.compression.limits;
  const auto found =
      std::find_if(limits.begin(), limits.end(), [&](const PassedLimit& limit) { return limit.kind == kind; });
  return found == limits.end() ? nullptr : &*found;
}

const PassedLimit& the_limit(const Findings& findings, LimitKind kind) {
  const PassedLimit* limit = find_limit(findings, kind);
  REQUIRE(limit != nullptr);
  return *limit;
}

}  // namespace

// Bending the plate over a transverse fracture beforehand, 1 to 2 mm off the bone, presses the far cortex: common
// practice in surgical texts, from memory.
TEST_CASE("a plate as contoured presses the near cortex alone, a prebent one the far cortex too",
          "[models][steps]") {
  const Construct construct = pressed_tube();
  const auto assembly = assemble(construct, construct.screws);
  Procedure procedure = procedure_of(construct, chosen_screws(assembly, construct.screws));
  const auto face = [&](double prebend) {
    procedure.prebend = prebend * mm;
    return measure_face(assembly, carry_out(assembly, procedure).back());
  };
  const FaceFindings straight = face(0.0);
  CHECK(straight.near.value() > 1.0);
  CHECK(straight.far.value() == 0.0);
  const auto gapes = [](const FacePoint& point) { return point.opening.value() > 1e-3; };
  CHECK(std::any_of(straight.points.begin(), straight.points.end(), gapes));

  const PrebendFindings found = find_prebend(assembly, procedure);
  const PrebendPoint &enough = found.sufficient, &most_even = found.most_even;
  CHECK(enough.height.value() > 0.1);
  CHECK(enough.far.value() > 0.2 * enough.near.value());
  CHECK(enough.unevenness < 0.7 * found.curve.front().unevenness);
  CHECK(face(enough.height.value()).far.value() == Approx(enough.far.value()));
  CHECK(enough.height <= most_even.height);
  CHECK(enough.unevenness <= 1.15 * most_even.unevenness);
  for (const auto& point : found.curve) {
    CHECK(point.unevenness >= most_even.unevenness);
    // Less bend than is sufficient is not.
    if (point.height < enough.height) CHECK(point.unevenness > 1.15 * most_even.unevenness);
  }
}

TEST_CASE("a pressed construct passes its checks, and friction lies between its bounds", "[models][steps]") {
  const Construct construct = pressed_tube();
  const auto findings = analyse(construct).findings;
  for (const auto& check : findings.trust.checks) {
    CAPTURE(check.name, check.value, check.limit);
    if (check.name.find("mesh error") == std::string::npos && check.name.find("yield") == std::string::npos)
      CHECK(check.passed);
  }
  const auto& compression = findings.compression;
  REQUIRE(compression.steps.size() == construct.screws.size());
  const double force = compression.steps.back().face.force.value();
  CHECK(force > 10.0);
  REQUIRE(compression.frictionless);
  CHECK(compression.frictionless->value() > 0.9 * force);
  // Preloads are what was asked for when each is tightened, and nearly so in the end.
  for (const auto& held : compression.steps.back().held) CHECK(held.axial.value() == Approx(400.0).epsilon(0.25));
  CHECK(compression.steps[0].held[0].axial.value() == Approx(400.0).epsilon(1e-9));
  for (const auto& load : findings.loads) {
    CHECK(load.plate_clearance.value().value() == 0.0);
    REQUIRE(load.force_left);
    CHECK(load.face.force.value() == Approx(*load.force_left * force));
    CHECK_FALSE(load.gap.near.axial_strain);
  }
}

// Nothing holds the proximal fragment to the plate yet, and the plate rubs on both: hands hold what is loose.
TEST_CASE("a step moves a fragment by no more than its slide, and what rubs takes energy away",
          "[models][steps]") {
  int slid = 0;
  for (const int refined : {0, 1}) {
    Construct construct = pressed_tube();
    construct.mesh.refinement = refined == 0 ? 0.5 : 0.7;
    const std::string presses = construct.screws[3].label;
    Step first;
    first.insert = first.tighten = {presses};
    construct.steps = {first};
    const auto assembly = assemble(construct, construct.screws);
    const auto steps = carry_out(assembly, procedure_of(construct, chosen_screws(assembly, construct.screws)));
    const auto findings =
        measure_steps(assembly, procedure_of(construct, chosen_screws(assembly, construct.screws)), steps);
    INFO(construct.mesh.refinement);
    CHECK(std::abs(findings[0].travel.value()) < construct.screws[3].slide->value() + 0.02);
    Eigen::VectorXd before = Eigen::VectorXd::Zero(assembly.system->rows());
    for (std::size_t k = 0; k < steps.size(); ++k) {
      INFO(findings[k].text);
      if (k > 0) CHECK(std::abs(findings[k].travel.value()) < 0.25);
      const auto& pressed = steps[k].pressed;
      const Eigen::VectorXd now = assembly.system->deformations(pressed.solution);
      for (std::size_t pair = 0; pair < assembly.pairs.size(); ++pair) {
        if (pressed.rubs[pair] == 0 || pressed.slides[pair] == 0) continue;
        const Eigen::Index row = assembly.system->first_row(assembly.pairs[pair].tangent);
        const Eigen::Vector2d traction = pressed.traction.row(static_cast<Eigen::Index>(pair)).transpose();
        // Of what rubbed before as well: a pair that meets in this step has come sideways without rubbing.
        if (k == 0 || steps[k - 1].pressed.closed[pair] == 0) continue;
        ++slid;
        CHECK(traction.dot(now.segment<2>(row) - before.segment<2>(row)) < 1e-6);
      }
      before = now;
    }
  }
  CHECK(slid > 0);
}

TEST_CASE("each limit passed is a value, and a sentence of it", "[models][steps]") {
  Construct construct = pressed_tube();
  construct.loads.resize(1);
  construct.screws[3].slide = 1.5 * mm;  // the slot leaves 1.05 mm
  construct.screws[0].preload = 5000.0 * newton;
  construct.loads[0].axial_compression = 0.0 * newton;
  construct.loads[0].bending_y = -30000.0 * newton_mm;
  const Findings findings = analyse(construct).findings;
  const PassedLimit& slot = the_limit(findings, LimitKind::slot_used_up);
  CHECK(slot.screw == construct.screws[3].id);
  CHECK(slot.hole == construct.screws[3].hole);
  CHECK(slot.value == Approx(1.5));
  CHECK(slot.limit == Approx(1.05));
  CHECK(limit_sentence(slot).starts_with("S7 uses up its slot: 1.5 mm of travel were asked for, hole 7 leaves "));
  const PassedLimit& pulled = the_limit(findings, LimitKind::pull_out);
  CHECK(pulled.screw == construct.screws[0].id);
  CHECK_FALSE(pulled.load);
  CHECK(pulled.value == Approx(5000.0).epsilon(0.25));
  CHECK(pulled.times == Approx(pulled.value / pulled.limit));
  CHECK(limit_sentence(pulled).find("once it is tightened: ") != std::string::npos);
  CHECK(limit_sentence(pulled).find("what pulls its thread out") != std::string::npos);
  const PassedLimit& gaping = the_limit(findings, LimitKind::gap_gapes);
  CHECK(gaping.load == "axial");
  CHECK(gaping.value > gaping.limit);
  CHECK(gaping.touching == findings.loads[0].face.touching);
  CHECK(limit_sentence(gaping).starts_with("The fracture gapes under \"axial\""));
  for (auto& screw : construct.screws) screw.material.yield_strength = 200.0 * mpa;
  CHECK(limit_sentence(the_limit(analyse(construct).findings, LimitKind::core_yield)).find("its core yield") !=
        std::string::npos);
}

TEST_CASE("a plate slips on the bone where its screws press too little, and is said to", "[models][steps]") {
  Construct construct = pressed_tube();
  only(construct.fractures).gap = 3.0 * mm;
  for (auto& screw : construct.screws) {
    screw.kind = ScrewKind::cortical;
    screw.preload = 40.0 * newton;
  }
  construct.loads.resize(1);
  construct.loads[0].axial_compression = 1000.0 * newton;
  const Findings findings = analyse(construct).findings;
  const PassedLimit& slip = the_limit(findings, LimitKind::plate_slips);
  CHECK(slip.load == "axial");
  CHECK(slip.value >= slip.limit);
  CHECK(limit_sentence(slip).starts_with("The plate slips by "));
  CHECK(findings.loads[0].friction_use.value() > 0.99);
  for (auto& screw : construct.screws) screw.preload = 4000.0 * newton;
  CHECK(find_limit(analyse(construct).findings, LimitKind::plate_slips) == nullptr);
}

TEST_CASE("taking a locked-in screw out frees what it held, and tissue grows free of stress", "[models][steps]") {
  Construct construct = tests::compression_tube();
  only(construct.fractures).gap = 0.3 * mm;
  construct.screws[2].slide = 0.02 * mm;
  construct.steps = tests::steps_of({"P1", "P2", "C", "L"});
  Step dynamise;
  dynamise.remove = {"P2"};
  dynamise.tissue = find_tissue("soft-callus");
  construct.steps.push_back(dynamise);
  construct.loads.resize(1);
  const Findings after = analyse(construct).findings;
  construct.steps.pop_back();
  const Findings before = analyse(construct).findings;
  CHECK(after.figures.fragments.front().screws == 1);
  CHECK(after.loads[0].screws.size() == 3);
  CHECK(after.stiffness.axial.value() > before.stiffness.axial.value());
  // Callus carries nothing until there is load.
  CHECK(after.compression.steps.back().face.force.value() == 0.0);
}

TEST_CASE("a limit is the screw's own that passes it, whatever labels say", "[models][steps]") {
  Construct construct = tests::plated_tube();
  construct.mesh.refinement = 0.5;
  for (auto& screw : construct.screws) screw.label = "S";
  auto whole = tests::solve_and_measure(construct);
  const auto limits = [&] {
    return find_limits(whole.assembly, whole.steps.back(), whole.solved.states, whole.loads);
  };
  REQUIRE(limits().empty());
  whole.loads[1].screws[2].factor_to_yield = 0.5;
  const auto passed = limits();
  REQUIRE(passed.size() == 1);
  CHECK(passed[0].kind == LimitKind::over_yield_by_load);
  CHECK(passed[0].screw == construct.screws[2].id);
  CHECK(passed[0].load == construct.loads[1].name);
}

}  // namespace gapstrain
