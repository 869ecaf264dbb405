// What the values of a case can be at all: keeps out slips of unit and of the finger, and what no machine could
// mesh. Wide enough for any animal that is given a plate, and for test benches; a choice of this program, no
// source. What parts allow each other is `models::check`'s.
#pragma once

#include "cases/toml/key.h"

namespace gapstrain::cases::ranges {

inline constexpr Range bone_place{"0 mm", "1000 mm"};
inline constexpr Range bone_width{"1 mm", "200 mm"};
inline constexpr Range wall{"0.05 mm", "50 mm"};
inline constexpr Range bow{"-200 mm", "200 mm"};
inline constexpr Range bone_modulus{"1 MPa", "500 GPa"};
inline constexpr Range plate_place{"0 mm", "600 mm"};
inline constexpr Range plate_width{"1 mm", "100 mm"};
inline constexpr Range plate_thickness{"0.1 mm", "30 mm"};
inline constexpr Range poissons_ratios{"0", "0.499"};
inline constexpr Range strength{"1 MPa", "10 GPa"};
inline constexpr Range hole_width{"0.3 mm", "30 mm"};
inline constexpr Range slot_lengths{"0.3 mm", "60 mm"};
inline constexpr Range turn{"-360 deg", "360 deg"};
inline constexpr Range tilt{"-90 deg", "90 deg"};
inline constexpr Range load_force{"-100 kN", "100 kN"};
inline constexpr Range load_moment{"-2000 N m", "2000 N m"};
inline constexpr Range load_offset{"-500 mm", "500 mm"};
inline constexpr Range load_place{"-1000 mm", "2000 mm"};
inline constexpr Range end_stiffness{"0.001 N/mm", "1000000 N/mm"};
inline constexpr Range end_turning_stiffness{"0.1 N mm/rad", "1000000 N m/rad"};
inline constexpr Range holding_force{"0.1 N", "20 kN"};
inline constexpr Range torques{"0.1 N mm", "50 N m"};
inline constexpr Range share{"0", "1"};
inline constexpr Range hole_number{"1", "100", "the plate's last hole"};
inline constexpr Range root_fillet{"0.005 mm", "2 mm"};
inline constexpr Range cortex_count{"1", "2"};
inline constexpr Range healing_weeks{"1", "260"};

}  // namespace gapstrain::cases::ranges
