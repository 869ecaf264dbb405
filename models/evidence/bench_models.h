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
inline constexpr std::string_view closing_shaft = "shaft, gap 1 mm", closing_shaft_wider = "shaft, gap 1.2 mm";
inline constexpr std::string_view humerus_flush = "humerus, plate flush", humerus_near = "humerus, plate 2 mm off";
inline constexpr std::string_view humerus_far = "humerus, plate 5 mm off";
inline constexpr std::string_view polyacetal = "polyacetal, gap 10 mm";
inline constexpr std::string_view polyacetal_on = "polyacetal, gap 10 mm, plate on it";
inline constexpr std::string_view short_fragment = "polyacetal, short fragment";
inline constexpr std::string_view toy = "toy bone, plate 1 mm off", toy_off = "toy bone, plate 3 mm off";
inline constexpr std::string_view toy_reduced = "toy bone, reduced";
inline constexpr std::string_view femur = "dog femur, plate on bone", femur_off = "dog femur, plate 1 mm off";
inline constexpr std::string_view tibia = "dog tibia", tibia_one = "dog tibia, one cortex";
inline constexpr std::string_view tibia_innermost = "dog tibia, innermost in one cortex";
inline constexpr std::string_view cylinder = "cylinder", cylinder_one = "cylinder, one cortex";
inline constexpr std::string_view cylinder_cortical = "cylinder, ball heads";
inline constexpr std::string_view bridge = "bone model, gap 47 mm";
inline constexpr std::string_view bridge_titanium = "bone model, gap 47 mm, titanium";
inline constexpr std::string_view human_femur_steel = "human femur",
                                  human_femur_titanium = "human femur, titanium";
inline constexpr std::string_view human_femur_one = "human femur, shaft in one cortex";
inline constexpr std::string_view human_femur_cortical = "human femur, ball heads in the shaft";
inline constexpr std::string_view human_tibia_near = "human tibia, plate 2 mm off";
inline constexpr std::string_view human_tibia_far = "human tibia, plate 30 mm off";
inline constexpr std::string_view human_tibia_far_titanium = "human tibia, plate 30 mm off, titanium";
inline constexpr std::string_view surrogate = "shaft surrogate", bridged_humerus = "humerus, gap 30 mm";
inline constexpr std::string_view radius_open_over = "toy radius, open hole over the gap";
inline constexpr std::string_view radius_open_beside = "toy radius, open hole beside the gap";
inline constexpr std::string_view closed_radius_front = "dog radius, closed, larger plate";
inline constexpr std::string_view closed_radius_side = "dog radius, closed, smaller plate";
}  // namespace bench

struct BenchModel {
  std::string name;
  std::string dimensions;  // in words, and where they are from
  Construct construct;     // with a screw in every hole that has bone under it; loads of bench_loads.h by name
};

// Of all models, in the order in which they are listed to people.
std::vector<std::string_view> bench_model_names();

// `refinement`: MeshDensity's. @pre the name is one of those above
BenchModel bench_model(std::string_view name, double refinement);

}  // namespace gapstrain::models
