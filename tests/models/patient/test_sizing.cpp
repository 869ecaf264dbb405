#include "models/patient/sizing.h"

#include "models/patient/allometry.h"
#include "models/patient/draft.h"
#include "models/patient/rare_event.h"
#include "models/rules/bounds.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gapstrain::models;

namespace {

FoundLayout layout(double margin, std::size_t broken, int screws_a_fragment) {
  FoundLayout found;
  found.margin = margin;
  found.broken.resize(broken);
  for (int k = 1; k <= screws_a_fragment; ++k) {
    found.holes.proximal.push_back(k);
    found.holes.distal.push_back(10 + k);
  }
  return found;
}

FoundLayout over_bands(FoundLayout found, double least) {
  found.over_bands = least;
  return found;
}

Draft draft_of(Species species, LongBone bone, double mass) {
  DraftRequest request;
  request.patient = {species, bone, mass * kilogram};
  return make_draft(request);
}

std::vector<PlateChoice> plates_for(const Draft& draft) {
  return plates_to_try(draft.request.patient.bone, draft.bone, draft.fracture, draft.loads.back().load);
}

}  // namespace

TEST_CASE("a choice of screws is preferred by what it has in hand, then rules, then few screws",
          "[models][patient]") {
  const auto better = [](const FoundLayout& one, const FoundLayout& other) {
    CHECK(is_better(one, other));
    CHECK_FALSE(is_better(other, one));
  };
  better(layout(1.21, 3, 5), layout(1.19, 0, 3));  // enough in hand before all
  better(layout(1.01, 3, 5), layout(0.99, 0, 3));  // to hold before all else
  better(layout(1.25, 0, 5), layout(1.9, 1, 3));   // then rules
  better(layout(1.25, 0, 3), layout(1.9, 0, 4));   // with enough in hand fewer screws
  better(over_bands(layout(1.25, 0, 5), 1.01), over_bands(layout(1.9, 0, 3), 0.99));  // before that, the bands
  better(layout(1.25, 0, 3), over_bands(layout(1.9, 1, 3), 1.3));                     // before those, rules
  better(layout(1.1, 0, 4), layout(1.05, 0, 3));                                      // without it more in hand
  better(layout(1.3, 0, 3), layout(1.25, 0, 3));
  CHECK(is_enough(layout(1.2, 0, 3)));
  CHECK_FALSE(is_enough(layout(1.19, 0, 3)));
  CHECK_FALSE(is_enough(layout(2.0, 1, 3)));
}

TEST_CASE("plates are tried from the smallest on until one is enough, else the best is taken",
          "[models][patient]") {
  const auto rows = generic_plates();
  const std::vector<PlateChoice> plates{{&rows[0], false}, {&rows[0], true}, {&rows[1], false}, {&rows[1], true}};
  const auto size = [&](std::vector<std::optional<FoundLayout>> found) {
    std::size_t next = 0;
    return size_plates(plates, [&](const PlateChoice& plate) {
      CHECK(plate == plates.at(next));
      return found.at(next++);
    });
  };
  const Sizing enough = size({layout(0.9, 0, 3), over_bands(layout(1.3, 0, 3), 1.1), std::nullopt, std::nullopt});
  CHECK(enough.tried.size() == 2);
  CHECK(enough.taken == 1);
  CHECK(enough.is_wanted());
  // Enough in hand, but not over the bands: the first that holds there as well, else the first.
  CHECK(size({over_bands(layout(1.3, 0, 3), 0.8), over_bands(layout(1.5, 0, 3), 0.9),
              over_bands(layout(1.7, 0, 3), 1.0), std::nullopt})
            .taken == 2);
  CHECK(size({over_bands(layout(1.3, 0, 3), 0.8), over_bands(layout(1.5, 0, 3), 0.9),
              over_bands(layout(1.7, 1, 3), 1.5), std::nullopt})
            .taken == 0);
  // Enough in hand with as many rules broken: the smaller; with fewer: that.
  CHECK(size({layout(1.25, 1, 3), layout(1.5, 1, 3), layout(1.8, 1, 3), std::nullopt}).taken == 0);
  CHECK(size({layout(1.25, 2, 3), layout(1.5, 1, 3), layout(1.8, 1, 3), std::nullopt}).taken == 1);
  const Sizing weak = size({layout(0.7, 0, 3), layout(0.8, 0, 3), std::nullopt, layout(0.75, 0, 3)});
  CHECK(weak.tried.size() == 4);
  CHECK(weak.taken == 1);
  CHECK_FALSE(weak.is_wanted());
  CHECK_FALSE(size({std::nullopt, std::nullopt, std::nullopt, std::nullopt}).taken);
}

TEST_CASE("plates to try rise in size, fit the bone and include what simple rules would take",
          "[models][patient]") {
  for (const LongBone bone : {LongBone::humerus, LongBone::radius, LongBone::femur, LongBone::tibia})
    for (const double mass : {4.0, 9.0, 25.0, 60.0}) {
      const Draft draft = draft_of(Species::dog, bone, mass);
      INFO(name_of(bone) << " " << mass << " kg");
      const auto plates = plates_for(draft);
      REQUIRE_FALSE(plates.empty());
      const auto& station = draft.bone.stations.front();
      const double width =
          (usual_aspect(bone) == Aspect::cranial ? station.width_mediolateral : station.width_craniocaudal)
              .value();
      for (std::size_t k = 0; k < plates.size(); ++k) {
        const GenericPlate& row = *plates[k].row;
        CHECK(row.thread <= most_thread_share * width);
        CHECK((plates[k].strong ? row.strong_width : row.width) <= width);
        CHECK_FALSE(row.locking.empty());
        if (k == 0) continue;
        CHECK(plates[k - 1].row->thread <= row.thread);
        CHECK_FALSE(plates[k] == plates[k - 1]);
      }
      CHECK(std::any_of(plates.begin(), plates.end(), [&](const PlateChoice& plate) {
        return screw_of(*plate.row, false).designation == draft.plate.screw_size.designation;
      }));
    }
}

TEST_CASE("a plate is written with the holes that were found, and says so", "[models][patient]") {
  const Draft draft = draft_of(Species::dog, LongBone::femur, 25.0);
  const PlateChoice choice = plates_for(draft).back();
  const StartingPlate customary = choose_plate(LongBone::femur, draft.bone, draft.fracture, Treatment::bridging,
                                               draft.loads.back().load, choice);
  ScrewHoles holes{customary.proximal, customary.distal};
  holes.proximal.insert(holes.proximal.begin() + 2, holes.proximal[1] - 1);
  const StartingPlate own = choose_plate(LongBone::femur, draft.bone, draft.fracture, Treatment::bridging,
                                         draft.loads.back().load, choice, holes);
  CHECK(own.proximal == holes.proximal);
  CHECK(own.distal == holes.distal);
  const auto says = [](const StartingPlate& plate, const std::string& words) {
    return std::any_of(plate.reasons.begin(), plate.reasons.end(),
                       [&](const std::string& reason) { return reason.find(words) != std::string::npos; });
  };
  CHECK(says(own, "4 + 3"));
  CHECK(says(own, "a search found"));
  CHECK(says(customary, "the two holes next to the fracture and the outermost"));
}

TEST_CASE("a landing is borne once by what does not yield under as many times the load", "[models][patient]") {
  const RareEvent event = landing(Species::dog, LongBone::radius);
  // 987 N over two paws and 30 kg against 1.125 times the weight, by hand.
  CHECK(event.over_trot == Approx(986.9 / 2.0 / (30.0 * 9.81) / 1.125));
  CHECK(event.evidence == LoadEvidence::abstract);
  CHECK(landing(Species::dog, LongBone::tibia).evidence == LoadEvidence::none);
  CHECK(landing(Species::cat, LongBone::radius).evidence == LoadEvidence::none);
  Margin fatigue, plate, screw;
  fatigue.kind = MarginKind::screw_fatigue;
  fatigue.factor = 0.5;
  plate.factor = 1.6;
  screw.kind = MarginKind::screw_yield;
  screw.factor = 1.7;
  const auto once = borne_once({fatigue, plate, screw}, event);
  REQUIRE(once);
  CHECK(once->first.factor == 1.6);
  CHECK(once->is_borne());
  plate.factor = 1.4;
  CHECK_FALSE(borne_once({fatigue, plate, screw}, event)->is_borne());
  CHECK_FALSE(borne_once({fatigue}, event));
}
