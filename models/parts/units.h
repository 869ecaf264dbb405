// Quantities at every door of the library, in the units the solver uses inside: mm, N, MPa, rad, kg.
// `value()` of each is the plain number the solver works with, so no conversion factor exists elsewhere.
#pragma once

#include <boost/units/make_scaled_unit.hpp>
#include <boost/units/quantity.hpp>
#include <boost/units/scale.hpp>
#include <boost/units/static_rational.hpp>
#include <boost/units/systems/si/dimensionless.hpp>
#include <boost/units/systems/si/force.hpp>
#include <boost/units/systems/si/length.hpp>
#include <boost/units/systems/si/mass.hpp>
#include <boost/units/systems/si/plane_angle.hpp>
#include <boost/units/systems/si/pressure.hpp>

#include <numbers>

namespace gapstrain::models {

namespace detail {
namespace bu = boost::units;
using Millimetre = bu::make_scaled_unit<bu::si::length, bu::scale<10, bu::static_rational<-3>>>::type;
using Megapascal = bu::make_scaled_unit<bu::si::pressure, bu::scale<10, bu::static_rational<6>>>::type;
}  // namespace detail

using Length = boost::units::quantity<detail::Millimetre>;
using Force = boost::units::quantity<boost::units::si::force>;
using Stress = boost::units::quantity<detail::Megapascal>;
using Angle = boost::units::quantity<boost::units::si::plane_angle>;
using Mass = boost::units::quantity<boost::units::si::mass>;
using Ratio = boost::units::quantity<boost::units::si::dimensionless>;

// Force times length is SI's energy, not its torque (which is energy per radian); a bending or twisting
// moment is therefore its own alias, in N mm.
using Moment = boost::units::multiply_typeof_helper<Force, Length>::type;
using AxialStiffness = boost::units::divide_typeof_helper<Force, Length>::type;    // N/mm
using AngularStiffness = boost::units::divide_typeof_helper<Moment, Angle>::type;  // N mm/rad

inline const Length mm = Length::from_value(1.0);
inline const Force newton = Force::from_value(1.0);
inline const Stress mpa = Stress::from_value(1.0);
inline const Moment newton_mm = Moment::from_value(1.0);
inline const Angle radian = Angle::from_value(1.0);
inline const Angle degree = Angle::from_value(std::numbers::pi / 180.0);
inline const Mass kilogram = Mass::from_value(1.0);

inline double in_degrees(Angle angle) { return (angle / degree).value(); }

}  // namespace gapstrain::models
