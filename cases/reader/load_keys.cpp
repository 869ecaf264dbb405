#include "cases/reader/load_keys.h"

#include "cases/reader/case_ranges.h"
#include "models/parts/words.h"

#include <string_view>
#include <utility>

namespace gapstrain::cases {

namespace {

using namespace ranges;
using enum Need;

// clang-format off

std::vector<Key> load_and_force_keys() {
  const auto ends = models::end_hold_names();
  return {
    {"load", "name", Kind::text, derived, "\"load\" and its number", "printed on tables and pictures", {}},
    {"load", "supports", Kind::choice, literal, "ball-joints",
     "balls beyond both ends, or the proximal end fully held; short for `proximal` and `distal`",
     {"ball-joints", "cantilever"}},
    {"load", "proximal", Kind::choice, derived, "ball, or what `supports` says",
     "what holds the proximal end. ball: turns freely about a point of the load line; held: all six motions; guided: "
     "slides along the bone, or along the line of two points, does not move across it and does not turn; elastic: by "
     "[load.proximal_spring]; free: nothing. The end that is held less (free, guided, ball, elastic, held; of equals the "
     "distal one) is loaded", ends},
    {"load", "distal", Kind::choice, derived, "ball, or what `supports` says", "likewise the distal end", ends},
    {"load", "proximal_spring", Kind::table, optional, "",
     "of an elastic proximal end, about its section's centre; each motion that is left out is rigid", {}},
    {"load", "distal_spring", Kind::table, optional, "", "likewise of an elastic distal end", {}},
    {"load", "line_from", Kind::lengths, optional, "",
     "a point of the load line, where the proximal ball sits, in place of ball_distance and offsets; x along the bone "
     "from its proximal end, z towards the plate, y = z cross x", {}, load_place},
    {"load", "line_to", Kind::lengths, optional, "", "another point of it, where the distal ball sits",
     {}, load_place},
    {"load", "ball_distance", Kind::length, literal, "0 mm", "of each ball beyond the bone's end",
     {}, {"0 mm", "500 mm"}},
    {"load", "ball_offset_y", Kind::length, literal, "0 mm", "of the load line from the end sections' centres",
     {}, load_offset},
    {"load", "ball_offset_z", Kind::length, literal, "0 mm", "likewise, towards the plate", {}, load_offset},
    {"load", "axial", Kind::force, literal, "0 N", "compression along the load line", {}, load_force},
    {"load", "transverse_y", Kind::force, literal, "0 N", "on a loaded end that is free or elastic, across the plate",
     {}, load_force},
    {"load", "transverse_z", Kind::force, literal, "0 N", "likewise, towards the plate",
     {}, load_force},
    {"load", "bending_y", Kind::moment, literal, "0 N m", "bends the plate on the flat; positive closes the far cortex",
     {}, load_moment},
    {"load", "bending_z", Kind::moment, literal, "0 N m", "bends the plate on its edge", {}, load_moment},
    {"load", "torsion", Kind::moment, literal, "0 N m", "about the bone, on its distal end; reversed on a proximal one",
     {}, load_moment},
    {"load", "factor", Kind::number, literal, "1", "all that acts in it, this many times", {}, {"0", "1000"}},
    {"load", "cycles_per_day", Kind::number, optional, "",
     "how often a day it is applied; without it a load is no part of the patient's day", {}, {"0.001", "1000000"}},
    {"load", "spread", Kind::number, literal, "0.25",
     "standard deviation of its size over the size; the default is a choice of this program, no source", {}, share},
    {"load", "axial_band", Kind::values, optional, "",
     "how many times as large the axial force alone may be, [least, most], such as [0.6, 1.4]: plain numbers round 1 from "
     "0.01 to 100. The race takes sizes between, as likely below the value entered as above it, for all loads alike", {}},
    {"load", "bending_band", Kind::values, optional, "",
     "likewise of the bending, that by offsets of the load line and that by end moments", {}},
    {"load", "torsion_band", Kind::values, optional, "", "likewise of the torsion", {}},
    {"load", "four_point", Kind::table, optional, "", "four-point bending, in place of all the forces above", {}},
    {"load", "force", Kind::tables, optional, "", "forces on the bone's surface, such as muscles', together with the rest",
     {}, {"1", "50"}},

    {"load.force", "position", Kind::length, required, "", "along the bone", {}, bone_place},
    {"load.force", "around", Kind::angle, optional, "",
     "round the bone from the plate's side towards +y; this or `aspect` is needed", {}, turn},
    {"load.force", "aspect", Kind::choice, optional, "", "the side of the bone, in place of `around`", aspect_names()},
    {"load.force", "force", Kind::forces, required, "", "on the bone, in construct axes", {}, load_force},

    {"load.four_point", "outer_proximal", Kind::length, required, "", "support, along the bone", {}, bone_place},
    {"load.four_point", "inner_proximal", Kind::length, required, "", "loading roller", {}, bone_place},
    {"load.four_point", "inner_distal", Kind::length, required, "", "loading roller", {}, bone_place},
    {"load.four_point", "outer_distal", Kind::length, required, "", "support", {}, bone_place},
    {"load.four_point", "force", Kind::force, required, "", "on both inner rollers together", {}, load_force},
    {"load.four_point", "plane", Kind::choice, literal, "flat", "bends the plate on the flat or on its edge",
     {"flat", "edge"}},
  };
}

// `table`: a literal, since keys keep no text of their own.
std::vector<Key> spring_keys(std::string_view table) {
  return {
    {table, "axial", Kind::stiffness, optional, "", "along the bone", {}, end_stiffness},
    {table, "transverse_y", Kind::stiffness, optional, "", "across the plate", {}, end_stiffness},
    {table, "transverse_z", Kind::stiffness, optional, "", "towards the plate", {}, end_stiffness},
    {table, "torsion", Kind::angular_stiffness, optional, "", "about the bone", {}, end_turning_stiffness},
    {table, "bending_y", Kind::angular_stiffness, optional, "", "about y", {}, end_turning_stiffness},
    {table, "bending_z", Kind::angular_stiffness, optional, "", "about z", {}, end_turning_stiffness},
    {table, "flexibility", Kind::values, optional, "",
     "in place of all of these: six rows of six plain numbers, the motions (ux, uy, uz in mm, turns in rad) per force (N) "
     "and moment (N mm), in the same order; symmetric, each from -1000 to 1000", {}},
  };
}

// clang-format on

}  // namespace

std::vector<Key> load_keys() {
  std::vector<Key> keys = load_and_force_keys();
  for (const auto table : {"load.proximal_spring", "load.distal_spring"})
    for (auto& key : spring_keys(table)) keys.push_back(std::move(key));
  return keys;
}

std::vector<std::string> aspect_names() {
  return {"cranial", "caudal", "medial", "lateral", "anterior", "posterior"};
}

}  // namespace gapstrain::cases
