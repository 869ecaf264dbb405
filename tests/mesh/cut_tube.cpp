#include "mesh/cut_tube.h"

#include "tests/mesh/mesh_checks.h"

#include <Eigen/Geometry>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <numbers>

namespace gapstrain::mesh {

namespace {

using std::numbers::pi;

constexpr double tube_radius = 12.0;
constexpr double tube_perimeter = 2.0 * pi * tube_radius;

// A plane cut of that obliquity, which reaches farthest along x at s = 3.1 mm.
std::function<double(double)> plane_cut(double middle, double degrees) {
  const double slope = std::tan(degrees * pi / 180.0);
  return [=](double s) { return middle + tube_radius * slope * std::cos((s - 3.1) / tube_radius); };
}

// Rows of spots on the near and the far side, clear of cuts up to 60 degrees, one tube section each way.
UnrolledTube screwed_tube(double degrees) {
  UnrolledTube tube;
  tube.perimeter = tube_perimeter;
  tube.length = 131.7;
  tube.cut = plane_cut(66.2, degrees);
  tube.section_lines = {25.3, 118.4};
  int number = 0;
  for (const double x : {8.1, 19.3, 32.4, 101.2, 112.3, 124.6}) {
    tube.spots.push_back({numbered("near-", number), 0.3 * number, x, 1.55, 1.55});
    tube.spots.push_back({numbered("far-", number), 0.5 * tube_perimeter - 0.4 * number, x + 0.7, 1.2, 1.2});
    ++number;
  }
  return tube;
}

// What has to hold for every cut tube.
void require_sound(const UnrolledTube& tube, const CutTube& meshed) {
  for (const FlatMesh* part : {&meshed.proximal, &meshed.distal}) {
    CHECK(part->nodes.col(0).minCoeff() >= 0.0);
    CHECK(part->nodes.col(0).maxCoeff() < tube.perimeter);
    const ShellMesh rolled = as_tube(*part, tube.perimeter);
    CHECK(euler_characteristic(rolled) == 0);
    // Closed at the seam: only the end and the cut are edges of one cell.
    CHECK(boundary_edges(*part) ==
          static_cast<int>(part->groups.at("end").size() + part->groups.at("cut").size()));
    require_good_shape(rolled);
  }
  const auto& proximal = meshed.proximal.groups.at("cut");
  const auto& distal = meshed.distal.groups.at("cut");
  REQUIRE(proximal.size() == distal.size());
  for (std::size_t i = 0; i < proximal.size(); ++i) {
    const Eigen::RowVector2d node = meshed.proximal.nodes.row(proximal[i]);
    CHECK(node == meshed.distal.nodes.row(distal[i]));
    CHECK(node.y() == Approx((*tube.cut)(node.x())).epsilon(1e-12));
    if (i > 0) CHECK(node.x() > meshed.proximal.nodes(proximal[i - 1], 0));
  }
}

void require_ring(const UnrolledTube& tube, const Spot& spot, const FlatMesh& part) {
  CAPTURE(spot.name);
  const auto& ring = part.groups.at("ring:" + spot.name);
  REQUIRE(static_cast<int>(ring.size()) == tube.ring_elements);
  const auto arm = [&](int node) {
    return Eigen::Vector2d(std::remainder(part.nodes(node, 0) - spot.s, tube.perimeter) / spot.radius_s,
                           (part.nodes(node, 1) - spot.x) / spot.radius_x);
  };
  double turned = 0.0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Eigen::Vector2d a = arm(ring[i]), b = arm(ring[(i + 1) % ring.size()]);
    CHECK(a.norm() == Approx(1.0).epsilon(1e-12));
    turned += std::asin(a.x() * b.y() - a.y() * b.x());
  }
  CHECK(turned == Approx(2.0 * pi));
  int at_centre = 0;
  const auto& patch = part.groups.at("spot:" + spot.name);
  for (const int node : patch) {
    CHECK(arm(node).norm() < 1.0 + 1e-12);
    at_centre += arm(node).norm() < 1e-12;
  }
  CHECK(at_centre == 1);
  for (const int node : ring) CHECK(std::find(patch.begin(), patch.end(), node) != patch.end());
}

}  // namespace

TEST_CASE("both edges of a cut match entry by entry at any obliquity and the tube is closed", "[mesh][tube]") {
  const GmshSession session;
  const double degrees = GENERATE(0.0, 30.0, 45.0, 60.0);
  CAPTURE(degrees);
  const UnrolledTube tube = screwed_tube(degrees);
  const CutTube meshed = mesh_cut_tube(session, tube);
  require_sound(tube, meshed);
  for (const Spot& spot : tube.spots) require_ring(tube, spot, spot.x < 66.0 ? meshed.proximal : meshed.distal);
  CHECK(meshed.proximal.groups.contains("section:0"));
  CHECK(meshed.distal.groups.contains("section:1"));
  CHECK(meshed.proximal.nodes.rows() + meshed.distal.nodes.rows() < 9000);
}

TEST_CASE("ends and section lines run once round the tube at their x from the smallest s", "[mesh][tube]") {
  const GmshSession session;
  const CutTube meshed = mesh_cut_tube(session, screwed_tube(30.0));
  const auto check_line = [](const FlatMesh& part, const std::string& name, double x, int cells_on_edge) {
    CAPTURE(name);
    const auto& line = part.groups.at(name);
    const auto uses = edge_uses(part);
    for (std::size_t i = 0; i < line.size(); ++i) {
      CHECK(part.nodes(line[i], 1) == x);
      if (i > 0) CHECK(part.nodes(line[i], 0) > part.nodes(line[i - 1], 0));
      CHECK(uses.at(std::minmax(line[i], line[(i + 1) % line.size()])) == cells_on_edge);
    }
  };
  check_line(meshed.proximal, "end", 0.0, 1);
  check_line(meshed.distal, "end", 131.7, 1);
  check_line(meshed.proximal, "section:0", 25.3, 2);
  check_line(meshed.distal, "section:1", 118.4, 2);
}

TEST_CASE("a tube without a cut is one part with two ends", "[mesh][tube]") {
  const GmshSession session;
  UnrolledTube tube = screwed_tube(0.0);
  tube.cut.reset();
  const CutTube meshed = mesh_cut_tube(session, tube);
  CHECK(meshed.distal.nodes.rows() == 0);
  CHECK(meshed.distal.quads.empty());
  CHECK(euler_characteristic(as_tube(meshed.proximal, tube_perimeter)) == 0);
  CHECK(boundary_edges(meshed.proximal) ==
        static_cast<int>(meshed.proximal.groups.at("end:0").size() + meshed.proximal.groups.at("end:1").size()));
  CHECK(meshed.proximal.groups.count("cut") == 0);
  require_good_shape(as_tube(meshed.proximal, tube_perimeter));
}

TEST_CASE("spots close to the cut are resolved on both of its sides", "[mesh][tube]") {
  const GmshSession session;
  const double degrees = GENERATE(0.0, 45.0);
  const double gap = GENERATE(0.3, 0.8, 2.0);  // mm from ring to cut
  CAPTURE(degrees, gap);
  UnrolledTube tube = screwed_tube(degrees);
  const auto beside_cut = [&](double s, double side) {
    const double slope = ((*tube.cut)(s + 0.01) - (*tube.cut)(s - 0.01)) / 0.02;
    return (*tube.cut)(s) + side * (gap + 1.4) * std::hypot(1.0, slope);
  };
  tube.spots.push_back({"below", 20.0, beside_cut(20.0, -1.0), 1.4, 1.4});
  tube.spots.push_back({"above", 57.0, beside_cut(57.0, 1.0), 1.4, 1.4});
  const CutTube meshed = mesh_cut_tube(session, tube);
  require_sound(tube, meshed);
  require_ring(tube, tube.spots[12], meshed.proximal);
  require_ring(tube, tube.spots[13], meshed.distal);
}

TEST_CASE("spots where the cut is steepest and at both its tips leave the seam a place", "[mesh][tube]") {
  const GmshSession session;
  UnrolledTube tube = screwed_tube(60.0);
  // On the lines through the cut's two extrema, where a tube without spots would be slit, and on s = 0.
  tube.spots.push_back({"tip", 3.1, 43.0, 1.4, 1.4});
  tube.spots.push_back({"valley", 3.1 + 0.5 * tube_perimeter, 94.0, 1.4, 1.4});
  tube.spots.push_back({"over-zero", tube_perimeter - 0.2, 52.0, 1.4, 1.4});
  const CutTube meshed = mesh_cut_tube(session, tube);
  require_sound(tube, meshed);
  require_ring(tube, tube.spots[12], meshed.proximal);
  require_ring(tube, tube.spots[13], meshed.distal);
  require_ring(tube, tube.spots[14], meshed.proximal);
}

TEST_CASE("a spot may be an ellipse of the unrolled plane", "[mesh][tube]") {
  const GmshSession session;
  UnrolledTube tube = screwed_tube(30.0);
  tube.spots.push_back({"flat", 31.0, 47.0, 1.1, 1.7});
  tube.spots.push_back({"long", 50.0, 47.0, 1.8, 1.2});
  tube.ring_elements = GENERATE(16, 20, 32);
  const CutTube meshed = mesh_cut_tube(session, tube);
  require_sound(tube, meshed);
  require_ring(tube, tube.spots[12], meshed.proximal);
  require_ring(tube, tube.spots[13], meshed.proximal);
}

TEST_CASE("a plate's worth of bicortical screws is meshed in good shape", "[mesh][tube]") {
  const GmshSession session;
  UnrolledTube tube;
  tube.perimeter = 14.0 * pi;
  tube.length = 190.0;
  tube.cut = [](double s) { return 95.3 + 7.0 * std::tan(pi / 5.0) * std::cos(s / 7.0 - 0.4); };
  for (int i = 0; i < 14; ++i) {
    const double x = 14.0 + 11.2 * i + (i > 6 ? 16.0 : 0.0);
    const double lean = 1.1 * std::sin(2.3 * i);  // screws lean every way
    tube.spots.push_back({numbered("n", i), 0.4 * lean, x, 1.2, 1.2});
    tube.spots.push_back({numbered("f", i), 7.0 * pi + 2.0 * lean, x + lean, 1.2, 1.2});
  }
  require_sound(tube, mesh_cut_tube(session, tube));
}

TEST_CASE("the wall of a rolled-up tube has its exact volume", "[mesh][tube]") {
  // 2 pi R t L with t = 1 mm (as_tube). Volume between both faces of the wall by Gauss' theorem with F = (0, y, z)
  // / 2, which has no flux through the ends; that through both sides of the cut cancels, as they match. Two by two
  // points are exact for bilinear cells.
  const GmshSession session;
  const UnrolledTube tube = screwed_tube(30.0);
  const CutTube meshed = mesh_cut_tube(session, tube);
  double volume = 0.0;
  for (const FlatMesh* part : {&meshed.proximal, &meshed.distal}) {
    const ShellMesh mesh = as_tube(*part, tube_perimeter);
    for (const double side : {0.5, -0.5}) {
      const Eigen::MatrixX3d face = mesh.nodes + side * (mesh.thickness.asDiagonal() * mesh.directors);
      for (const Quad& quad : mesh.quads) {
        const Eigen::RowVector3d a = face.row(quad[0]), b = face.row(quad[1]), c = face.row(quad[2]),
                                 d = face.row(quad[3]);
        for (const double u : {0.5 - std::sqrt(1.0 / 12.0), 0.5 + std::sqrt(1.0 / 12.0)}) {
          for (const double v : {0.5 - std::sqrt(1.0 / 12.0), 0.5 + std::sqrt(1.0 / 12.0)}) {
            const Eigen::RowVector3d along = (1.0 - v) * (b - a) + v * (c - d),
                                     across = (1.0 - u) * (d - a) + u * (c - b);
            const Eigen::RowVector3d place = (1.0 - v) * ((1.0 - u) * a + u * b) + v * ((1.0 - u) * d + u * c);
            const Eigen::RowVector3d normal = along.cross(across);
            volume += 2.0 * side * 0.25 * 0.5 * (place.y() * normal.y() + place.z() * normal.z());
          }
        }
      }
    }
  }
  CHECK(volume == Approx(tube_perimeter * tube.length).epsilon(3e-4));
}

TEST_CASE("the same tube gives the same mesh bit for bit, also after another and in a new session",
          "[mesh][tube]") {
  const UnrolledTube tube = screwed_tube(45.0);
  UnrolledTube other = screwed_tube(20.0);
  other.length = 412.0;
  other.cut.reset();
  CutTube first;
  {
    const GmshSession session;
    first = mesh_cut_tube(session, tube);
    mesh_cut_tube(session, other);
    CHECK(is_same(first.proximal, mesh_cut_tube(session, tube).proximal));
  }
  const GmshSession session;
  mesh_cut_tube(session, other);
  const CutTube again = mesh_cut_tube(session, tube);
  CHECK(is_same(first.proximal, again.proximal));
  CHECK(is_same(first.distal, again.distal));
}

TEST_CASE("bad tubes are refused in a sentence", "[mesh][tube]") {
  const GmshSession session;
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const auto refuses = [&](auto&& spoil, const std::string& reason) {
    UnrolledTube tube = screwed_tube(30.0);
    spoil(tube);
    CHECK_THROWS_WITH(mesh_cut_tube(session, tube), Catch::Matchers::Contains(reason));
    CHECK_THROWS_AS(mesh_cut_tube(session, tube), MeshError);
  };
  const auto with_spot = [&](const Spot& spot) { return [spot](UnrolledTube& t) { t.spots.push_back(spot); }; };
  refuses(with_spot({"x", 1.0, 9.0, 1.5, 1.5}), "overlap");
  refuses(with_spot({"x", 0.3, 19.3, 0.3, 0.3}), "overlap");                    // inside another
  refuses(with_spot({"x", 20.0 + tube_perimeter, 66.0, 9.0, 9.0}), "touches");  // on the cut
  refuses(with_spot({"x", 20.0, 24.6, 1.5, 1.5}), "touches");                   // on a section line
  refuses(with_spot({"x", 20.0, 0.7, 1.5, 1.5}), "touches");                    // over the end
  refuses(with_spot({"x", 20.0, 140.0, 1.5, 1.5}), "beyond");
  refuses(with_spot({"x", 20.0, -9.0, 1.5, 1.5}), "beyond");
  refuses(with_spot({"x", nan, 50.0, 1.5, 1.5}), "not finite");
  refuses(with_spot({"x", 20.0, 50.0, 0.0, 1.5}), "radius");
  refuses(with_spot({"x", 20.0, 50.0, 1.5, nan}), "radius");
  refuses(with_spot({"x", 20.0, 50.0, 40.0, 1.5}), "wider");
  refuses(with_spot({"near-1", 20.0, 40.0, 1.5, 1.5}), "Two spots");
  refuses([](auto& t) { t.section_lines.push_back(140.0); }, "outside");
  refuses([](auto& t) { t.section_lines.push_back(66.0); }, "cross");
  refuses([](auto& t) { t.cut = plane_cut(5.0, 60.0); }, "cross");
  refuses([](auto& t) { t.cut = [](double s) { return 60.0 + 0.1 * s; }; }, "close");
  refuses([&](auto& t) { t.cut = [nan](double) { return nan; }; }, "not finite");
  refuses([](auto& t) { t.ring_elements = 15; }, "even");
  refuses([&](auto& t) { t.perimeter = nan; }, "perimeter");
  refuses([](auto& t) { t.length = 0.0; }, "length");
  refuses([](auto& t) { t.size_max = -1.0; }, "size_max");
  refuses([](auto& t) { t.size_cut = 0.0; }, "size_cut");
  refuses([](auto& t) { t.growth = 0.0; }, "growth");
  refuses(
      [](auto& t) {
        for (int i = 0; i < 25; ++i)
          t.spots.push_back({numbered("r", i), 3.0 * i, 35.0 + 3.2 * (i % 4), 1.55, 1.55});
      },
      "slit");
}

}  // namespace gapstrain::mesh
