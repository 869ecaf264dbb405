// Bounds that rules, the plan and a plate to begin from share, each with its source.
#pragma once

#include "models/parts/units.h"

namespace gapstrain::models {

// What a screw's axis keeps from an edge of bone, in thread diameters: one diameter of bone beside the thread,
// which is 4 mm at 2.7 mm and 5 mm at 3.5 mm. Common practice (one screw diameter; 4 to 5 mm), no source.
inline constexpr double least_edge_clearance = 1.5;

// Of a screw's thread over the bone's width square to it: common practice, no source; and what is never passed,
// Hoon et al. 2021, Vet. Comp. Orthop. Traumatol. (holes in feline femora, from the abstract).
inline constexpr double usual_thread_share = 0.30, most_thread_share = 0.33;

// Plate over the fracture's length along the bone: at least 8 to 10 for a simple fracture, 2 to 3 for a comminuted
// one (Gautier & Sommer 2003, Injury 34 Suppl. 2, from memory). Both ranges are what is asked for at least, so a
// construct is only told to break the rule below their lower ends.
struct SpanRatio {
  double least, ample;
};
inline constexpr SpanRatio simple_span{8.0, 10.0}, comminuted_span{2.0, 3.0};

// From where on a plate to begin from is long enough: no bound that a surgeon's own plate is held to, but a choice
// of this program within the same ranges (no source), on the safe side where the plate bears alone.
inline constexpr double begin_with_simple_span = simple_span.least;
inline constexpr double begin_with_comminuted_span = comminuted_span.ample;

// Left between the edges of a fracture that is pressed, once the slides are used up: common practice, no source.
inline const Length largest_pressed_gap = 1.0 * mm;

// Of the plate over a transverse fracture that it presses, so that the far cortex is pressed too: surgical
// textbooks, from memory.
inline const Length least_prebend = 1.0 * mm, largest_prebend = 2.0 * mm;

// Of the plate at a hole that a head locks in: no loss at 5 degrees, significant loss at 10 (Gallagher, Silva &
// Ricci 2014, J. Orthop. Trauma 28:427; year, volume and page from memory).
inline const Angle largest_bend_at_locking_hole = 5.0 * degree;

// Tilt of a locking screw beyond which a head of a fixed angle has lost most of its strength (the same).
inline const Angle strength_loss_begins = 5.0 * degree;

}  // namespace gapstrain::models
