// Bodies written to a stream and read back answer as they did, and nothing else is taken for bodies.
#include "models/assembly/bodies_archive.h"
#include "models/layouts/construct_solver.h"
#include "models/measures/analyse.h"
#include "models/preparation/prepare_bodies.h"
#include "tests/models/constructs.h"
#include "tests/models/layouts/long_way.h"
#include "tests/models/measures/compression_constructs.h"

#include <catch2/catch.hpp>

#include <numeric>
#include <sstream>

namespace gapstrain {

using namespace models;  // NOLINT: this file is nothing but constructs

namespace {

std::string written(const PreparedBodies& prepared) {
  std::ostringstream stream;
  write_bodies(stream, prepared);
  return std::move(stream).str();
}

std::shared_ptr<const PreparedBodies> read(const std::string& bytes, WholeBodies whole = WholeBodies::left_out) {
  std::istringstream stream(bytes);
  return read_bodies(stream, whole);
}

Outcome outcome_on(const std::shared_ptr<const PreparedBodies>& prepared) {
  const Assembly assembly = assemble(prepared, prepared->construct, prepared->candidates);
  const PeakStress peak(assembly, PlatePlaces::likely_and_sample);
  std::vector<int> chosen(assembly.construct.screws.size());
  std::iota(chosen.begin(), chosen.end(), 0);
  return ConstructSolver(assembly, peak).solve(chosen);
}

// Pressed by screws and a clamp, with a wire, rollers, forces on the surface and tissue: everything that asks for
// ports; and a load with everything that it may have.
Construct everything() {
  Construct construct = tests::pressed_tube();
  construct.mesh.refinement = 0.4;
  LoadCase four_point;
  four_point.name = "four-point";
  four_point.four_point = {8.0 * mm, 22.0 * mm, 138.0 * mm, 152.0 * mm, 60.0 * newton, false};
  four_point.forces = {{26.0 * mm, 1.9 * radian, {3.0 * newton, -5.0 * newton, 2.0 * newton}}};
  construct.loads.push_back(four_point);
  LoadCase ends;
  ends.name = "ends";
  ends.supports.proximal = {EndHold::elastic, flexibility_of({{150.0 * (newton / mm)}, {}})};
  ends.supports.distal.hold = EndHold::guided;
  ends.line = LoadLine{{-3.0 * mm, 1.0 * mm, 2.0 * mm}, {161.0 * mm, 4.0 * mm, 3.0 * mm}};
  ends.axial_compression = 30.0 * newton;
  ends.forces = {{140.0 * mm, 3.1 * radian, {-7.0 * newton, 1.0 * newton, 4.0 * newton}}};
  construct.loads.push_back(ends);
  TemporaryHold wire, clamp;
  wire.label = "W";
  wire.hole = 9;
  wire.diameter = 2.0 * mm;
  clamp.label = "C";
  clamp.kind = HoldKind::plate_clamp;
  const auto& holes = only(construct.plates).holes;
  clamp.along = 0.5 * (holes[1].position + holes[2].position);
  clamp.force = 50.0 * newton;
  construct.temporary = {wire, clamp};
  return construct;
}

std::string why_not(const std::string& bytes) {
  try {
    read(bytes);
  } catch (const ArchiveError& fault) {
    return fault.what();
  }
  return "";
}

}  // namespace

TEST_CASE("bodies read back give the same answers to the last bit", "[models][assembly][archive]") {
  const Construct construct = everything();
  const auto prepared = prepare_bodies(construct, construct.screws);
  const std::string bytes = written(*prepared);
  CHECK(written(*read(bytes)) == bytes);

  const auto links_only = read(bytes);
  for (const auto& body : links_only->bodies) CHECK(body.body == nullptr);
  CHECK(links_only->construct.loads == construct.loads);
  CHECK(have_same_bodies(links_only->construct, links_only->candidates, construct, construct.screws));
  CHECK(tests::same_bits(outcome_on(links_only), outcome_on(prepared)));

  const auto whole = read(bytes, WholeBodies::factored);
  const auto fields = [&](const std::shared_ptr<const PreparedBodies>& bodies) {
    return analyse(assemble(bodies, construct, construct.screws)).fields.loads;
  };
  const auto expected = fields(prepared), found = fields(whole);
  REQUIRE(found.size() == expected.size());
  for (std::size_t l = 0; l < found.size(); ++l)
    for (std::size_t b = 0; b < found[l].shells.size(); ++b) {
      CHECK(found[l].shells[b].displacements == expected[l].shells[b].displacements);
      CHECK(found[l].shells[b].stress_top == expected[l].shells[b].stress_top);
    }
}

TEST_CASE("what is no archive of bodies, torn, changed or of another version is refused",
          "[models][assembly][archive]") {
  Construct construct = tests::plated_tube();
  construct.mesh.refinement = 0.4;
  const std::string bytes = written(*prepare_bodies(construct, construct.screws));
  CHECK(why_not(bytes).empty());
  CHECK_THAT(why_not(""), Catch::Matchers::Contains("no archive"));
  CHECK_THAT(why_not("a text that is no archive of bodies at all"), Catch::Matchers::Contains("no archive"));
  CHECK_THAT(why_not(bytes.substr(0, 20)), Catch::Matchers::Contains("no archive"));
  CHECK_THAT(why_not(bytes.substr(0, bytes.size() - 1)), Catch::Matchers::Contains("damaged or not complete"));
  CHECK_THAT(why_not(bytes + "x"), Catch::Matchers::Contains("damaged or not complete"));
  std::string changed = bytes;
  changed[bytes.size() / 2] ^= 1;
  CHECK_THAT(why_not(changed), Catch::Matchers::Contains("damaged or not complete"));
  std::string other_version = bytes;
  other_version[16] ^= 2;
  CHECK_THAT(why_not(other_version), Catch::Matchers::Contains("make it anew"));
  std::ostringstream full;
  full.setstate(std::ios::badbit);
  CHECK_THROWS_AS(write_bodies(full, *read(bytes)), ArchiveError);
}

}  // namespace gapstrain
