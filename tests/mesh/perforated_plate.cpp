#include "mesh/perforated_plate.h"

#include "tests/mesh/mesh_checks.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <numbers>
#include <set>

namespace gapstrain::mesh {

namespace {

using std::numbers::pi;

// Three round holes of unequal size and a slot in a bar whose width varies.
PerforatedPlate uneven_plate() {
  PerforatedPlate plate;
  plate.length = 61.3;
  plate.widths = {{-3.0, 9.1}, {14.2, 10.3}, {33.0, 8.7}, {70.0, 9.9}};
  plate.holes = {{8.4, 3.1, 3.1}, {19.6, 2.7, 5.9}, {33.3, 3.4, 3.4}, {51.8, 2.9, 2.9}};
  plate.size_max = 1.4;
  return plate;
}

PerforatedPlate plain_bar(const Hole& hole, double width) {
  PerforatedPlate plate;
  plate.length = 30.0;
  plate.widths = {{0.0, width}};
  plate.holes = {hole};
  return plate;
}

// By the trapezium rule, exact for a width that is linear between its places.
double outline_area(const PerforatedPlate& plate, const std::vector<double>& places,
                    const std::vector<double>& widths) {
  double sum = 0.0;
  for (std::size_t i = 0; i + 1 < places.size(); ++i)
    sum += 0.5 * (widths[i] + widths[i + 1]) * (places[i + 1] - places[i]);
  CHECK(places.back() == plate.length);
  return sum;
}

// Cells met by the line at x above y = from: one less than the edges it crosses.
int cells_across(const FlatMesh& mesh, double x, double from) {
  int crossed = 0;
  for (const auto& [edge, uses] : edge_uses(mesh)) {
    const Eigen::Vector2d a = mesh.nodes.row(edge.first), b = mesh.nodes.row(edge.second);
    if ((a.x() > x) == (b.x() > x)) continue;
    crossed += a.y() + (b.y() - a.y()) * (x - a.x()) / (b.x() - a.x()) > from;
  }
  return crossed - 1;
}

}  // namespace

TEST_CASE("a rim keeps exactly the requested number of elements, exactly on its circle", "[mesh][plate]") {
  const GmshSession session;
  PerforatedPlate plate = uneven_plate();
  plate.rim_elements = GENERATE(16, 26, 32, 48);
  const FlatMesh mesh = mesh_perforated_plate(session, plate);
  const auto uses = edge_uses(mesh);
  for (const int k : {0, 2, 3}) {
    const auto& rim = mesh.groups.at(numbered("hole:", k));
    REQUIRE(static_cast<int>(rim.size()) == plate.rim_elements);
    double turned = 0.0;
    for (std::size_t i = 0; i < rim.size(); ++i) {
      const int next = rim[(i + 1) % rim.size()];
      const Eigen::Vector2d centre(plate.holes[k].centre, 0.0);
      const Eigen::Vector2d a = mesh.nodes.row(rim[i]).transpose() - centre;
      const Eigen::Vector2d b = mesh.nodes.row(next).transpose() - centre;
      CHECK(a.norm() == Approx(plate.holes[k].diameter / 2.0).epsilon(1e-14));
      CHECK(uses.at(std::minmax(rim[i], next)) == 1);
      turned += std::asin((a.x() * b.y() - a.y() * b.x()) / (a.norm() * b.norm()));
    }
    CHECK(turned == Approx(2.0 * pi));
  }
}

TEST_CASE("a slot's rim lies on its two half circles and straight sides with the edge length of a round rim",
          "[mesh][plate]") {
  const GmshSession session;
  const PerforatedPlate plate = uneven_plate();
  const Hole slot = plate.holes[1];
  const FlatMesh mesh = mesh_perforated_plate(session, plate);
  const auto& rim = mesh.groups.at("hole:1");
  const double flat = 0.5 * (slot.slot_length - slot.diameter), wanted = pi * slot.diameter / plate.rim_elements;
  double right = 0.0, turned_area = 0.0;
  for (std::size_t i = 0; i < rim.size(); ++i) {
    const Eigen::Vector2d a = mesh.nodes.row(rim[i]), b = mesh.nodes.row(rim[(i + 1) % rim.size()]);
    const double beyond = std::max(0.0, std::abs(a.x() - slot.centre) - flat);
    CHECK(std::hypot(beyond, a.y()) == Approx(0.5 * slot.diameter).epsilon(1e-13));
    CHECK((b - a).norm() == Approx(wanted).epsilon(0.06));
    right = std::max(right, a.x());
    turned_area += 0.5 * (a.x() * b.y() - a.y() * b.x());
  }
  CHECK(right == Approx(slot.centre + 0.5 * slot.slot_length).epsilon(1e-14));
  CHECK(turned_area ==
        Approx(pi * slot.diameter * slot.diameter / 4.0 + 2.0 * flat * slot.diameter).epsilon(0.01));
}

TEST_CASE("the mesh of a plate covers its exact area as its rims are refined", "[mesh][plate]") {
  const GmshSession session;
  PerforatedPlate plate = uneven_plate();
  const double at_zero = 9.1 + (10.3 - 9.1) * 3.0 / 17.2, at_end = 8.7 + (9.9 - 8.7) * (61.3 - 33.0) / 37.0;
  double exact = outline_area(plate, {0.0, 14.2, 33.0, 61.3}, {at_zero, 10.3, 8.7, at_end});
  for (const Hole& hole : plate.holes)
    exact -= pi * hole.diameter * hole.diameter / 4.0 + (hole.slot_length - hole.diameter) * hole.diameter;
  const auto error = [&](int rim_elements) {
    plate.rim_elements = rim_elements;
    return area(mesh_perforated_plate(session, plate)) / exact - 1.0;
  };
  const double coarse = error(16), fine = error(32);
  CHECK(coarse > 0.0);  // polygons inside the circles leave material
  CHECK(fine < 5e-4);
  CHECK(std::log2(coarse / fine) == Approx(2.0).margin(0.1));
}

TEST_CASE("a plate's mesh has one loop of edges for each hole and one round it", "[mesh][plate]") {
  const GmshSession session;
  const FlatMesh mesh = mesh_perforated_plate(session, uneven_plate());
  CHECK(euler_characteristic(as_shell(mesh)) == 1 - 4);
  std::set<int> used;
  for (const Quad& quad : mesh.quads) used.insert(quad.begin(), quad.end());
  CHECK(static_cast<Eigen::Index>(used.size()) == mesh.nodes.rows());
  require_good_shape(as_shell(mesh));
}

TEST_CASE("ends and lines across hold the nodes at their place by rising y over the whole width",
          "[mesh][plate]") {
  const GmshSession session;
  PerforatedPlate plate = uneven_plate();
  // Clear of holes; through the middle of a round one; off its middle; two through one slot; at a bend of the
  // width.
  plate.cross_lines = {26.1, 8.4, 52.5, 18.2, 20.9, 14.2};
  const FlatMesh mesh = mesh_perforated_plate(session, plate);
  const auto uses = edge_uses(mesh);
  require_good_shape(as_shell(mesh));
  CHECK(euler_characteristic(as_shell(mesh)) == 1 - 4);
  for (const int k : {0, 2, 3}) CHECK(mesh.groups.at(numbered("hole:", k)).size() == 48);

  const auto check_line = [&](const std::string& name, double x, double half_width, int uses_wanted, int gaps) {
    CAPTURE(name);
    const auto& line = mesh.groups.at(name);
    CHECK(mesh.nodes(line.front(), 1) == Approx(-half_width));
    CHECK(mesh.nodes(line.back(), 1) == Approx(half_width));
    for (std::size_t i = 0; i < line.size(); ++i) {
      CHECK(mesh.nodes(line[i], 0) == x);
      if (i == 0) continue;
      CHECK(mesh.nodes(line[i], 1) > mesh.nodes(line[i - 1], 1));
      const auto edge = uses.find(std::minmax(line[i - 1], line[i]));
      if (edge == uses.end())
        --gaps;
      else
        CHECK(edge->second == uses_wanted);
    }
    CHECK(gaps == 0);
  };
  const auto half = [](double x, double a, double at_a, double b, double at_b) {
    return 0.5 * (at_a + (at_b - at_a) * (x - a) / (b - a));
  };
  check_line("end:0", 0.0, half(0.0, -3.0, 9.1, 14.2, 10.3), 1, 0);
  check_line("end:1", 61.3, half(61.3, 33.0, 8.7, 70.0, 9.9), 1, 0);
  check_line("cross:0", 26.1, half(26.1, 14.2, 10.3, 33.0, 8.7), 2, 0);
  check_line("cross:1", 8.4, half(8.4, -3.0, 9.1, 14.2, 10.3), 2, 1);
  check_line("cross:2", 52.5, half(52.5, 33.0, 8.7, 70.0, 9.9), 2, 1);
  check_line("cross:3", 18.2, half(18.2, 14.2, 10.3, 33.0, 8.7), 2, 1);
  check_line("cross:4", 20.9, half(20.9, 14.2, 10.3, 33.0, 8.7), 2, 1);
  check_line("cross:5", 14.2, 0.5 * 10.3, 2, 0);
}

TEST_CASE("the narrowest ligament holds three elements or more", "[mesh][plate]") {
  const GmshSession session;
  const double ligament = GENERATE(0.25, 0.5, 1.0, 2.5);
  CAPTURE(ligament);
  PerforatedPlate plate = plain_bar({14.3, 3.0, 3.0}, 3.0 + 2.0 * ligament);
  const FlatMesh beside = mesh_perforated_plate(session, plate);
  for (const double off : {-0.21, -0.03, 0.04, 0.17}) CHECK(cells_across(beside, 14.3 + off, 0.0) >= 3);
  require_good_shape(as_shell(beside));

  plate.widths = {{0.0, 11.0}};
  plate.holes = {{10.0, 3.0, 3.0}, {13.0 + ligament, 3.0, 3.0}};
  FlatMesh between = mesh_perforated_plate(session, plate);
  require_good_shape(as_shell(between));
  // Turned, so that the count runs along the bar from the first hole's middle to the second's.
  between.nodes.col(0).swap(between.nodes.col(1));
  for (const double off : {-0.11, 0.03, 0.14})
    CHECK(cells_across(between, off, 10.0) - cells_across(between, off, 13.0 + ligament) - 1 >= 3);
}

TEST_CASE("the same plate gives the same mesh bit for bit, also after another and in a new session",
          "[mesh][plate]") {
  const PerforatedPlate plate = uneven_plate();
  PerforatedPlate other = plain_bar({211.0, 5.0, 8.0}, 14.0);
  other.length = 417.0;
  FlatMesh first;
  {
    const GmshSession session;
    first = mesh_perforated_plate(session, plate);
    mesh_perforated_plate(session, other);
    CHECK(is_same(first, mesh_perforated_plate(session, plate)));
  }
  const GmshSession session;
  mesh_perforated_plate(session, other);
  CHECK(is_same(first, mesh_perforated_plate(session, plate)));
}

TEST_CASE("bad plates are refused in a sentence", "[mesh][plate]") {
  const GmshSession session;
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const auto refuses = [&](auto&& spoil, const std::string& reason) {
    PerforatedPlate plate = uneven_plate();
    spoil(plate);
    CHECK_THROWS_WITH(mesh_perforated_plate(session, plate), Catch::Matchers::Contains(reason));
    CHECK_THROWS_AS(mesh_perforated_plate(session, plate), MeshError);
  };
  refuses([](auto& p) { p.holes[2].centre = 21.9; }, "overlap");
  refuses([](auto& p) { p.holes[0].diameter = p.holes[0].slot_length = 9.8; }, "outline");
  refuses([](auto& p) { p.holes[0].centre = 1.2; }, "outline");
  refuses([](auto& p) { p.holes[3].centre = 77.0; }, "outline");
  refuses([](auto& p) { p.holes[1].slot_length = 2.0; }, "shorter");
  refuses([&](auto& p) { p.holes[1].centre = nan; }, "not finite");
  refuses([&](auto& p) { p.holes[1].diameter = nan; }, "hole diameter");
  refuses([&](auto& p) { p.length = nan; }, "length");
  refuses([](auto& p) { p.length = -1.0; }, "length");
  refuses([](auto& p) { p.widths.clear(); }, "no width");
  refuses([](auto& p) { p.widths[1].width = 0.0; }, "width");
  refuses([](auto& p) { std::swap(p.widths[0], p.widths[1]); }, "rise");
  refuses([](auto& p) { p.rim_elements = 31; }, "even");
  refuses([](auto& p) { p.rim_elements = 4; }, "8 or more");
  refuses([](auto& p) { p.size_max = 0.0; }, "size_max");
  refuses([](auto& p) { p.growth = 0.0; }, "growth");
  refuses([](auto& p) { p.cross_lines = {62.0}; }, "outside");
  refuses([](auto& p) { p.cross_lines = {26.0, 26.01}; }, "too close");
  refuses([](auto& p) { p.cross_lines = {8.4 + 1.52}; }, "grazes");
  refuses([&](auto& p) { p.cross_lines = {nan}; }, "not finite");
}

}  // namespace gapstrain::mesh
