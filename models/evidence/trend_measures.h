// What our models are asked about each published statement.
#pragma once

#include "models/evidence/trends.h"

#include <initializer_list>
#include <string_view>
#include <vector>

namespace gapstrain::models {

// A direction without a figure has to make this much, up or down, and "little" is at most so much: our choices.
inline constexpr double something = 1.02, less = 0.98, little = 1.10;

using Holes = std::vector<int>;
using Measures = std::vector<Measure>;

// Both fragments alike: the places counted from the fracture, 1 innermost; `last` is the hole before the fracture.
Holes both_sides(const std::vector<int>& places, int last);

// How a test may have held and pushed its specimen: names of bench loads.
struct Rig {
  std::string_view name, axial, torsion;
};
inline constexpr Rig on_balls{"balls on the bone's axis", bench_load::axial, bench_load::torsion};
inline constexpr Rig held_and_ball{"one end held, the other on a ball; gripped in torsion", bench_load::axial_held,
                                   bench_load::torsion_gripped};
inline constexpr Rig held_and_guided{"one end held, the other guided; gripped in torsion",
                                     bench_load::axial_guided, bench_load::torsion_gripped};
inline constexpr Rig from_free_end{"one end held, the other free", bench_load::axial_free,
                                   bench_load::torsion_gripped};
inline constexpr Rig line_beside{"balls on a line beside the bone", bench_load::aside, bench_load::torsion};
inline constexpr Rig line_beside_held{"a line beside the bone, distal end held", bench_load::aside_held,
                                      bench_load::torsion};
inline constexpr Rig line_head_to_knee{"balls on a line from head to knee", bench_load::head_to_knee,
                                       bench_load::torsion_gripped};
inline constexpr Rig line_head_to_knee_held{"a line from head to knee, distal end held",
                                            bench_load::head_to_knee_held, bench_load::torsion_gripped};

// One measure in several rigs, or in the only set-up there is.
std::vector<SetUp> in_rigs(std::initializer_list<Rig> rigs, Measures (*measure)(Benches&, const Rig&));
std::vector<SetUp> as_tested(std::string name, Measures (*measure)(Benches&));

// Of one model: figures with some screws over those with others.
struct Compared {
  Benches& benches;
  std::string_view model;
  Holes these, others;

  double stiffness(std::string_view load) const {
    return benches.stiffness_ratio({model, these, load}, {model, others, load});
  }
  double stress(std::string_view load) const { return ratio(load, &LoadOutcome::peak_stress); }
  double motion(std::string_view load) const { return ratio(load, &LoadOutcome::largest_motion); }
  // At the bone's axis, and sideways where it is largest.
  double axial_motion(std::string_view load) const {
    return benches.gap_stiffness({model, others, load}) / benches.gap_stiffness({model, these, load});
  }
  double shear(std::string_view load) const {
    return benches.under({model, these, load}).shear_strain.value() /
           benches.under({model, others, load}).shear_strain.value();
  }
  double gap_strain(std::string_view load) const {
    return benches.under({model, these, load}).gap_strain().value() /
           benches.under({model, others, load}).gap_strain().value();
  }

 private:
  template <class Quantity>
  double ratio(std::string_view load, Quantity LoadOutcome::*figure) const {
    const double first = (benches.under({model, these, load}).*figure).value();
    return first / (benches.under({model, others, load}).*figure).value();
  }
};

// The same screws in two models.
double stiffness_between(Benches& benches, std::string_view model, std::string_view other, const Holes& holes,
                         std::string_view load);

// Working length.
Measures one_hole_omitted(Benches& benches, const Rig& rig);
Measures two_more_empty(Benches& benches, const Rig& rig);
Measures unsupported_span(Benches& benches, const Rig& rig);
Measures closing_span(Benches& benches, const Rig& rig);
std::vector<SetUp> plane_model_set_ups();
Measures contact_hides(Benches& benches, const Rig& rig);
Measures gap_gauge(Benches& benches, const Rig& rig);
Measures six_gauges(Benches& benches, const Rig& rig);
Measures reduced(Benches& benches, const Rig& rig);
Measures toy_working_length(Benches& benches, const Rig& rig);
Measures before_touching(Benches& benches);
Measures after_touching(Benches& benches);
Measures strain_at_fracture(Benches& benches, const Rig& rig);
Measures motion_of_long_span(Benches& benches, const Rig& rig);
Measures motion_of_spans(Benches& benches, const Rig& rig);
Measures spans_far_off(Benches& benches, const Rig& rig);
Measures open_hole(Benches& benches, const Rig& rig);

// Number, place and kind of screws; cortices.
Measures more_screws(Benches& benches, const Rig& rig);
std::vector<SetUp> third_and_fourth_set_ups();
Measures one_more_inside(Benches& benches, const Rig& rig);
Measures from_the_ends(Benches& benches, const Rig& rig);
Measures third_screw(Benches& benches, const Rig& rig);
Measures one_cortex(Benches& benches, const Rig& rig);
Measures innermost_in_one(Benches& benches, const Rig& rig);
Measures reconstruction(Benches& benches, const Rig& rig);
Measures three_over_two(Benches& benches, const Rig& rig);
Measures shaft_in_one_cortex(Benches& benches, const Rig& rig);
Measures ten_over_three(Benches& benches, const Rig& rig);
Measures not_locked_weaver(Benches& benches, const Rig& rig);
Measures not_locked_cadavers(Benches& benches, const Rig& rig);
Measures humerus_screws(Benches& benches, const Rig& rig);
Measures two_locked(Benches& benches, const Rig& rig);
Measures fewer_far_off(Benches& benches, const Rig& rig);

// The plate: distance from the bone, length, metal, plane of bending; what the test does to it.
Measures six_off(Benches& benches, const Rig& rig);
Measures flush_and_off(Benches& benches, const Rig& rig);
Measures toy_distance(Benches& benches, const Rig& rig);
Measures far_off(Benches& benches, const Rig& rig);
Measures shorter_plate(Benches& benches, const Rig& rig);
Measures twelve_holes(Benches& benches);
Measures thirteen_holes(Benches& benches, const Rig& rig);
Measures metal_far_off(Benches& benches, const Rig& rig);
Measures metal_of_femur(Benches& benches, const Rig& rig);
Measures metal_in_torsion(Benches& benches, const Rig& rig);
Measures edge_over_flat(Benches& benches);
Measures closed_radius(Benches& benches, const Rig& rig);
Measures ways_to_hold(Benches& benches);
Measures near_over_far(Benches& benches, const Rig& rig);
Measures locked_stiffness(Benches& benches, const Rig& rig);
Measures bonded_too_stiff(Benches& benches, const Rig& rig);

}  // namespace gapstrain::models
