// What may go into the holes of a plate on one mesh.
#include "models/assembly/bodies_archive.h"
#include "models/layouts/hole_choices.h"
#include "models/layouts/ready_screws.h"
#include "models/measures/analyse.h"
#include "models/measures/solve.h"
#include "models/preparation/prepare_bodies.h"
#include "tests/models/constructs.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>
#include <sstream>
#include <string>

namespace gapstrain {

using namespace models;  // NOLINT: this file is nothing but constructs

namespace {

// Round holes 1 to 6, slots 7 to 10; a locking screw, and a cortical one as thick.
Construct mixed_plate() {
  Construct construct = tests::plated_tube();
  auto& holes = only(construct.plates).holes;
  for (std::size_t k = 6; k < holes.size(); ++k) {
    holes[k].shape = HoleShape::slot;
    holes[k].slot_length = 1.7 * holes[k].diameter;
  }
  for (auto& screw : construct.screws)
    if (screw.hole > 6) {
      screw.kind = ScrewKind::cortical;
      screw.preload = 200.0 * newton;
    }
  construct.mesh.refinement = 0.4;
  return construct;
}

std::set<ScrewKind> ready_kinds(const Construct& construct, int hole) {
  std::set<ScrewKind> kinds;
  for (const auto& choice : choices_of_hole(construct, hole))
    if (!choice.why_not) kinds.insert(choice.screw.kind);
  return kinds;
}

}  // namespace

TEST_CASE("a hole takes the kinds that fit it and whose shafts pass one place of the bone", "[layouts]") {
  const Construct construct = mixed_plate();
  const int empty_slot = 8;
  // A lag screw would cross no fracture there.
  CHECK(ready_kinds(construct, 1) == std::set{ScrewKind::locking, ScrewKind::cortical});
  CHECK(ready_kinds(construct, empty_slot) == std::set{ScrewKind::cortical, ScrewKind::compression});
  for (const auto& choice : choices_of_hole(construct, empty_slot)) {
    if (choice.screw.kind == ScrewKind::locking)
      CHECK_THAT(*choice.why_not, Catch::Contains("which is a slot without thread"));
  }
}

TEST_CASE("screws in one hole share spots of one mesh, and an unchosen one leaves no trace", "[layouts]") {
  const Construct construct = mixed_plate();
  const auto all = screws_of_all_choices(construct);
  REQUIRE(all.size() > 20);
  for (const auto& screw : construct.screws) CHECK(has_place(all, screw));
  const auto ready = screws_to_make_ready(construct, all);
  CHECK(are_numbered(ready));
  const auto prepared = prepare_bodies(construct, ready);
  std::set<std::string> spots;
  for (const auto& list : prepared->ports.lists()) {
    std::set<std::string> of_body;
    for (const auto& port : list.columns()) CHECK(of_body.insert(port.name).second);
    spots.insert(of_body.begin(), of_body.end());
  }
  // One near and one far spot a hole, whatever may go in.
  const auto shafts = std::count_if(spots.begin(), spots.end(), [](const std::string& name) {
    return name.ends_with("-near") || name.ends_with("-far");
  });
  CHECK(shafts == 20);

  // The same construct is solved alike whether its own screws are first among the candidates or anywhere.
  const Assembly assembly = assemble(prepared, construct, ready);
  const auto chosen = chosen_screws(assembly, construct.screws);
  CHECK(std::set<int>(chosen.begin(), chosen.end()).size() == construct.screws.size());
}

TEST_CASE("a screw as thick as another but further beside it, or of another thickness, needs another mesh",
          "[layouts]") {
  Construct construct = mixed_plate();
  Screw other = construct.screws.front();
  const auto fits = [&] { return fit_one_mesh(construct, construct.screws.front(), other); };
  other.cortices = 1;
  CHECK(fits());
  other.size.core_diameter = 1.1 * other.size.core_diameter;
  CHECK_FALSE(fits());
  other = construct.screws.front();
  other.tilt_across = 3.0 * degree;
  CHECK(fits());
  other.tilt_across = 30.0 * degree;
  CHECK_FALSE(fits());
  other.hole = 2;
  CHECK(fits());
}

TEST_CASE("a screw that passes beside its patch bears as one on its own patch does, and that is said",
          "[layouts]") {
  // The compression screw's shaft passes 0.5 mm beside the patch of the cortical one that is first.
  Construct construct = mixed_plate();
  auto& screw = construct.screws.back();
  const Screw neutral = screw;
  screw.kind = ScrewKind::compression;
  screw.slide = 0.5 * mm;
  const auto alone = screws_to_make_ready(construct, construct.screws);
  auto shared = alone;
  shared.insert(shared.begin(), neutral);
  shared = screws_to_make_ready(construct, shared);
  CHECK(screws_beside_patches(construct, alone).empty());
  const auto beside = screws_beside_patches(construct, shared);
  REQUIRE(beside.size() == 1);
  CHECK(beside[0].label == screw.label);
  CHECK(beside[0].distance.value() == Approx(0.5).epsilon(0.01));

  const auto found = [&](const std::vector<Screw>& ready) {
    const auto prepared = prepare_bodies(construct, ready);
    return analyse(assemble(prepared, construct, ready), {}, Extent::verdict).findings;
  };
  const Findings own = found(alone), other = found(shared);
  // Forces are carried over, so all is in balance; the wall gives way a little otherwise.
  CHECK(own.trust.passed());
  CHECK(other.trust.passed());
  CHECK(other.stiffness.axial.value() == Approx(own.stiffness.axial.value()).epsilon(0.01));
  CHECK(other.compression.steps.back().face.force.value() ==
        Approx(own.compression.steps.back().face.force.value()).epsilon(0.05).margin(1.0));
  for (std::size_t l = 0; l < own.loads.size(); ++l) {
    CHECK(other.loads[l].gap.largest_motion.value() ==
          Approx(own.loads[l].gap.largest_motion.value()).epsilon(0.02));
    CHECK(other.loads[l].plate.peak.von_mises.value() ==
          Approx(own.loads[l].plate.peak.von_mises.value()).epsilon(0.03));
  }
}

TEST_CASE("a construct with some of the candidates gets the bodies of another with others", "[layouts]") {
  const Construct construct = mixed_plate();
  const auto all = screws_to_make_ready(construct, screws_of_all_choices(construct));
  Construct other = construct;
  other.screws.pop_back();
  other.screws.front().hole = 3;
  other.screws.front().kind = ScrewKind::cortical;
  other.screws.front().preload = 123.0 * newton;
  const auto of_other = screws_to_make_ready(other, all);
  REQUIRE(of_other.size() == all.size());
  CHECK(have_same_bodies(construct, all, other, of_other));
  // What the case says of its own screw holds, such as how it is tightened.
  const auto own = std::find_if(of_other.begin(), of_other.end(),
                                [&](const Screw& screw) { return same_place(screw, other.screws.front()); });
  REQUIRE(own != of_other.end());
  CHECK(own->preload == other.screws.front().preload);
  CHECK(own->id == other.screws.front().id);
}

}  // namespace gapstrain
