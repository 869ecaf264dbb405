#include "models/parts/screw.h"

#include "models/parts/words.h"

#include <catch2/catch.hpp>

using namespace gapstrain::models;

TEST_CASE("every screw size of the catalogue has a source and a core inside its thread", "[models][parts]") {
  REQUIRE(screw_size_designations().size() >= 9);
  for (const auto& designation : screw_size_designations()) {
    const auto size = find_screw_size(designation);
    REQUIRE(size);
    CAPTURE(designation);
    CHECK(size->designation == designation);
    CHECK_FALSE(size->source.empty());
    CHECK(size->core_diameter < size->thread_diameter);
    CHECK(size->core_diameter > 0.4 * size->thread_diameter);
    CHECK(size->pitch > 0.2 * size->thread_diameter);
    // The pilot hole leaves the thread something to cut, and the core room.
    REQUIRE(size->pilot_drill);
    CHECK(*size->pilot_drill < size->thread_diameter);
    CHECK(*size->pilot_drill >= size->core_diameter);
    // The designation ends in the thread's diameter.
    const auto number = designation.substr(designation.find_last_of(' ') + 1);
    CHECK(std::stod(number) == size->thread_diameter.value());
  }
}

TEST_CASE("a locking screw has a thicker core than a cortical one of the same thread", "[models][parts]") {
  CHECK(find_screw_size("locking 3.5")->core_diameter > find_screw_size("HA 3.5")->core_diameter);
  CHECK(find_screw_size("locking 2.0")->core_diameter > find_screw_size("HA 2.0")->core_diameter);
}

TEST_CASE("an unknown screw size is not found", "[models][parts]") { CHECK_FALSE(find_screw_size("HA 3.6")); }

TEST_CASE("each kind of screw has a name of its own that finds it again", "[models][parts]") {
  const auto names = screw_kind_names();
  CHECK(names.size() == 4);
  for (const auto& name : names) {
    CAPTURE(name);
    REQUIRE(find_screw_kind(name));
    CHECK(name_of(*find_screw_kind(name)) == name);
  }
  CHECK_FALSE(find_screw_kind("nail"));
}

TEST_CASE("screws are numbered once, each by a number of its own", "[models][parts]") {
  using namespace gapstrain::models;
  std::vector<Screw> screws(3);
  CHECK_FALSE(are_numbered(screws));
  screws[1].id = ScrewId{4};
  number_screws(screws);
  CHECK(screws[0].id == ScrewId{5});
  CHECK(screws[1].id == ScrewId{4});
  CHECK(screws[2].id == ScrewId{6});
  CHECK(are_numbered(screws));
  screws[2].id = ScrewId{4};
  CHECK_FALSE(are_numbered(screws));
}
