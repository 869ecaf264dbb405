// The parts of a load whose sizes are known apart from each other: axial force, bending, torsion.
#pragma once

#include "models/parts/loading.h"

#include <string_view>

namespace gapstrain::models {

enum class LoadPart { axial, bending, torsion };
inline constexpr LoadPart load_parts[] = {LoadPart::torsion, LoadPart::bending, LoadPart::axial};
std::string_view name_of(LoadPart part);      // "torsion"
std::string_view key_of_band(LoadPart part);  // "torsion_band": of a case file

// The load with one part as many times as large, the others as they are: axial is the axial force without the
// bending that its line makes, bending is that and the end moments about y and z. What else acts stays.
// @pre factor above 0; axial and bending of no load along a line of two points, nothing of four-point bending
LoadCase with_part(const LoadCase& load, LoadPart part, double factor);

const PartBand& band_of(const LoadCase& load, LoadPart part);
PartBand& band_of(LoadCase& load, LoadPart part);
inline bool is_open(const PartBand& band) { return band.low < band.high; }

// Whether it has that part at all.
bool has_part(const LoadCase& load, LoadPart part);

// Its size over the one entered at a probability: below the median of 1 as likely at any size down to the low end,
// above it up to the high end, on logarithmic scales. What is published are ends and a middle, no more (the shape
// between is a choice of this program, no source).
double part_factor(const PartBand& band, double probability);

}  // namespace gapstrain::models
