// Constructs of the class that published bench tests used. Papers give few dimensions: what is ours is said to be.
#pragma once

#include "models/parts/construct.h"

#include <string>
#include <string_view>
#include <vector>

namespace gapstrain::models {

// Names of the models.
namespace bench {
inline constexpr std::string_view shaft = "shaft, gap 6 mm", shaft_off = "shaft, gap 6 mm, plate 6 mm off";
inline constexpr std::string_view closing_shaft = "shaft, gap 1 mm";
inline constexpr std::string_view humerus_flush = "humerus, plate flush", humerus_near = "humerus, plate 2 mm off";
inline constexpr std::string_view humerus_far = "humerus, plate 5 mm off";
inline constexpr std::string_view polyacetal = "polyacetal, gap 10 mm";
inline constexpr std::string_view short_fragment = "polyacetal, short fragment";
inline constexpr std::string_view toy = "toy bone, plate 1 mm off", toy_off = "toy bone, plate 3 mm off";
inline constexpr std::string_view toy_reduced = "toy bone, reduced";
inline constexpr std::string_view femur = "dog femur, plate on bone", femur_off = "dog femur, plate 1 mm off";
inline constexpr std::string_view tibia = "dog tibia", tibia_one = "dog tibia, one cortex";
inline constexpr std::string_view tibia_innermost = "dog tibia, innermost in one cortex";
inline constexpr std::string_view cylinder = "cylinder", cylinder_one = "cylinder, one cortex";
}  // namespace bench

// Loads of every model, between balls at the bone's ends on its axis. Bending is the constant moment between the
// inner rollers of a four-point test.
namespace bench_load {
inline constexpr std::string_view axial = "axial", torsion = "torsion";
inline constexpr std::string_view tension = "bending, plate in tension";
inline constexpr std::string_view compression = "bending, plate in compression";
inline constexpr std::string_view hard = "bending hard, plate in tension";  // only where a gap is to close
inline constexpr std::string_view aside = "axial, line aside";              // only where a head takes the load
}  // namespace bench_load

struct BenchModel {
  std::string name;
  std::string dimensions;  // in words, and where they are from
  Construct construct;     // with a screw in every hole that has bone under it; loads by the names below
};

// Of all models, in the order in which they are listed to people.
std::vector<std::string_view> bench_model_names();

// `refinement`: MeshDensity's. @pre the name is one of those above
BenchModel bench_model(std::string_view name, double refinement);

}  // namespace gapstrain::models
