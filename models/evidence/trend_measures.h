// What our models are asked about each published statement.
#pragma once

#include "models/evidence/trends.h"

#include <string_view>
#include <vector>

namespace gapstrain::models {

// A direction without a figure has to make this much, up or down, and "little" is at most so much: our choices.
inline constexpr double something = 1.02, less = 0.98, little = 1.10;

using Holes = std::vector<int>;

// Both fragments alike: the places counted from the fracture, 1 innermost; `last` is the hole before the fracture.
Holes both_sides(const std::vector<int>& places, int last);

// Of one model: stiffness, peak plate stress, motion and gap strain with some screws over those with others.
struct Compared {
  Benches& benches;
  std::string_view model;
  Holes these, others;

  double stiffness(std::string_view load) const {
    return benches.stiffness_ratio({model, these, load}, {model, others, load});
  }
  double stress(std::string_view load) const { return ratio(load, &LoadOutcome::peak_stress); }
  double motion(std::string_view load) const { return ratio(load, &LoadOutcome::largest_motion); }

 private:
  template <class Quantity>
  double ratio(std::string_view load, Quantity LoadOutcome::*figure) const {
    const double first = (benches.under({model, these, load}).*figure).value();
    return first / (benches.under({model, others, load}).*figure).value();
  }
};

// Working length.
std::vector<Measure> one_hole_omitted(Benches& benches);
std::vector<Measure> two_more_empty(Benches& benches);
std::vector<Measure> unsupported_span(Benches& benches);
std::vector<Measure> closing_span(Benches& benches);
std::vector<Measure> plane_model(Benches& benches);
std::vector<Measure> contact_hides(Benches& benches);
std::vector<Measure> open_holes(Benches& benches);
std::vector<Measure> gauges(Benches& benches);
std::vector<Measure> reduced(Benches& benches);
std::vector<Measure> toy_working_length(Benches& benches);
std::vector<Measure> before_touching(Benches& benches);
std::vector<Measure> after_touching(Benches& benches);

// Screws, distance of plate and bone, length of the plate, cortices.
std::vector<Measure> more_screws(Benches& benches);
std::vector<Measure> third_and_fourth(Benches& benches);
std::vector<Measure> one_more_inside(Benches& benches);
std::vector<Measure> from_the_ends(Benches& benches);
std::vector<Measure> third_screw(Benches& benches);
std::vector<Measure> six_off(Benches& benches);
std::vector<Measure> flush_and_off(Benches& benches);
std::vector<Measure> toy_distance(Benches& benches);
std::vector<Measure> shorter_plate(Benches& benches);
std::vector<Measure> twelve_holes(Benches& benches);
std::vector<Measure> one_cortex(Benches& benches);
std::vector<Measure> innermost_in_one(Benches& benches);
std::vector<Measure> reconstruction(Benches& benches);

}  // namespace gapstrain::models
