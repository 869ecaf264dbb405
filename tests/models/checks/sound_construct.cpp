#include "tests/models/checks/sound_construct.h"

#include <fmt/format.h>

#include <string>

namespace gapstrain::tests {

Construct sound_construct() {
  Construct construct;
  construct.name = "sound";
  construct.body_mass = 17.0 * kilogram;
  construct.bone = bone(163.0, {station(20.0, 13.8, 12.2, 2.2), station(90.0, 13.1, 11.7, 2.3, 0.4, 1.1),
                                station(150.0, 14.3, 12.6, 2.1)});

  Plate& plate = only(construct.plates);
  plate.length = 101.0 * mm;
  plate.sections = {{5.0 * mm, 8.4 * mm, 2.7 * mm}, {60.0 * mm, 8.9 * mm, 2.9 * mm}};
  for (int i = 0; i < 8; ++i) plate.holes.push_back({(7.0 + 12.3 * i) * mm, HoleShape::round, 3.1 * mm, 3.1 * mm});
  plate.material = find_metal("titanium-grade-4").value();
  plate.proximal_end = 30.0 * mm;
  plate.standoff = 1.2 * mm;

  for (const int hole : {1, 2, 3, 6, 7, 8}) {
    Screw screw;
    screw.label = fmt::format("S{}", hole);
    screw.hole = hole;
    screw.size = {"test", 3.0 * mm, 2.4 * mm, 1.1 * mm, "none: test data"};
    screw.material = plate.material;
    construct.screws.push_back(screw);
  }
  number_screws(construct.screws);
  construct.screws[1].cortices = 1;
  construct.screws[4].tilt_along = 7.0 * degree;

  only(construct.fractures).position = 81.0 * mm;
  only(construct.fractures).gap = 3.3 * mm;
  only(construct.fractures).obliquity = 12.0 * degree;
  only(construct.fractures).direction = 40.0 * degree;
  only(construct.fractures).tissue = find_tissue("soft-callus").value();

  LoadCase ends;
  ends.name = "stance";
  ends.ball_distance = 3.0 * mm;
  ends.axial_compression = 140.0 * newton;
  ends.bending_y = 700.0 * newton_mm;
  LoadCase four_point;
  four_point.name = "four-point";
  four_point.four_point = {10.0 * mm, 27.0 * mm, 104.0 * mm, 155.0 * mm, 90.0 * newton, false};
  construct.loads = {ends, four_point};
  return construct;
}

}  // namespace gapstrain::tests
