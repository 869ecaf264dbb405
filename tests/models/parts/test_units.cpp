#include "models/parts/units.h"

#include <catch2/catch.hpp>

#include <concepts>
#include <type_traits>

using namespace gapstrain::models;

namespace {
template <class A, class B>
concept Addable = requires(A a, B b) {
  a + b;
};
}  // namespace

// The laws hold at compile time: a width in newtons does not build.
static_assert(Addable<Length, Length>);
static_assert(!Addable<Length, Force>);
static_assert(!Addable<Stress, Force>);
static_assert(!Addable<Angle, Length>);
static_assert(!std::convertible_to<double, Length>);
static_assert(!std::convertible_to<Force, Length>);
static_assert(!std::convertible_to<Length, Mass>);
static_assert(std::same_as<decltype(Force() * Length()), Moment>);
static_assert(std::same_as<decltype(Force() / Length()), AxialStiffness>);
static_assert(std::same_as<decltype(Moment() / Angle()), AngularStiffness>);
static_assert(std::convertible_to<decltype(Length() / Length()), double>);

TEST_CASE("values are in mm, N, MPa, rad and kg", "[models][parts]") {
  namespace si = boost::units::si;
  CHECK(Length(0.0137 * si::metres).value() == Approx(13.7));
  CHECK(Stress(2.5e6 * si::pascals).value() == Approx(2.5));
  CHECK((180.0 * degree).value() == Approx(3.14159265358979));
  CHECK((3.0 * newton * (2.0 * mm)).value() == Approx(6.0));
  // Newton per square millimetre is the solver's stress: both views of it agree.
  CHECK(Stress(3.0 * newton / (2.0 * mm * mm)).value() == Approx(1.5));
}
