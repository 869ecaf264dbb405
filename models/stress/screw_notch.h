// How much of a screw's fatigue strength its notches leave: the thread's root by its own geometry, and the root of
// the head. Fatigue notch factors K_f, of the nominal stress in the core, at long lives.
//
// What is covered, and what is not. The thread: a screw that bends where it enters bone, or runs out below its
// head. The first thread that carries (in a nut it bears most) is counted only in the plate: in bone, some ten
// times softer, threads share. Neighbouring grooves spare each other (H. Neuber's relief); not counted, as the
// first groove has a neighbour on one side only. Fretting in the seat, corrosion: see the race. No published test
// of locking heads in repeated bending was found.
#pragma once

#include "models/parts/screw.h"

#include <string_view>

namespace gapstrain::models {

enum class NotchLoading { tension, bending };

// Elastic stress over nominal stress at the root of a groove round a bar, after H. Neuber 1946, Theory of Notch
// Stresses; formulas as in R. E. Peterson 1974, Stress Concentration Factors, from memory; Poisson's ratio 0.3.
// From the shallow notch, 1 + 2 sqrt(t / r), and the deep one of hyperbolic shape with a = d / 2 by Neuber's rule,
// (K - 1)^-2 = (K_shallow - 1)^-2 + (K_deep - 1)^-2. Flanks count for nothing: below 90 degrees they change it by
// less than a tenth (from memory). A thread is no ring, but its pitch is small. `core`: diameter in the groove;
// all in one unit, above 0; a depth of 0 gives 1.
double groove_concentration(double core, double depth, double root_radius, NotchLoading loading);

// Of a screw's thread: a locking screw bends, a shaft with a ball head may be pulled, for which it is larger.
double thread_concentration(const Screw& screw);

// Radius at which a notch counts half, mm: R. E. Peterson's for steel, 0.0254 (2070 MPa / R_m)^1.8 with R_m of 550
// MPa or more (1959; as in textbooks on fatigue, from memory). 0, a notch counts in full, for metals that are no
// steel (by their modulus, 180 to 215 GPa): titanium alloys are known to be sensitive (Ti-6Al-4V ELI, 10^7 cycles:
// 500 MPa smooth, 140 MPa at K_t = 3.1, data sheets), and no constant of theirs was found.
double notch_length(const Metal& metal);

// 1 + (K_t - 1) / (1 + notch_length / r); a sharper root is taken as no less harmful than any blunter one, as the
// formula has its maximum where r is about the notch length. Tends to K_t for a large radius.
double thread_notch(const Screw& screw);

// Where the core leaves its head's seat, the largest of three:
// the thread's, which runs out there;
// the fillet under a head: 2.3, or 2.1 for metals below 600 MPa (machine-design textbooks' tables of threaded
// parts, from memory); of a locking head the first of its threads in the plate, 3.8 or 2.8 when cut (the same
// tables; fitted parts that pass on a moment, with fretting, are given as much). Its section is no less than the
// thread's outside, since the thread must pass the hole (ours): (core / thread diameter)^3 of it counts for the
// core.
double head_notch(const Screw& screw);

inline constexpr std::string_view thread_notch_source =
    "notch of the thread by Neuber's formulas and Peterson's notch sensitivity, root radius by ISO 5835 (all from "
    "memory)";
inline constexpr std::string_view head_notch_source =
    "notch of fillet, thread and first locking thread at the head: machine-design textbooks, from memory";

}  // namespace gapstrain::models
