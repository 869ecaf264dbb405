#include "mesh/plane_mesher.h"

#include "mesh/gmsh_call.h"

#include <gmsh.h>
#include <algorithm>
#include <cassert>
#include <cmath>
#include <functional>
#include <unordered_map>

namespace gapstrain::mesh {

namespace {

constexpr int triangle_type = 2, quad_type = 3;  // Gmsh's element types

using Edge = std::pair<int, int>;

Edge sorted(int a, int b) { return a < b ? Edge{a, b} : Edge{b, a}; }

struct EdgeHash {
  std::size_t operator()(const Edge& edge) const {
    return static_cast<std::size_t>(edge.first) * 0x9E3779B97F4A7C15u + static_cast<std::size_t>(edge.second);
  }
};

// Cells of twice the wanted edge length; nodes below the outline's number of points are its points.
struct CoarseMesh {
  std::vector<Eigen::Vector2d> nodes;
  std::vector<std::vector<int>> cells;  // of 3 or 4 nodes, counter-clockwise
  std::vector<int> face_of_cell;
};

// A model of its own, and the log of what Gmsh says of it, for the length of a scope.
struct ModelScope {
  explicit ModelScope(const char* name) {
    gmsh::model::add(name);
    gmsh::logger::start();
  }
  ~ModelScope() {
    try {
      gmsh::logger::stop();
      gmsh::model::mesh::removeSizeCallback();
      gmsh::model::remove();
    } catch (...) {
      // A model that cannot be removed is replaced by the next one.
    }
  }
  ModelScope(const ModelScope&) = delete;
  ModelScope& operator=(const ModelScope&) = delete;

  // @throw std::runtime_error with the first error in the log, if there is one.
  static void check() {
    std::vector<std::string> log;
    gmsh::logger::get(log);
    for (const std::string& line : log)
      if (line.starts_with("Error: ")) throw std::runtime_error(line.substr(7));
  }
};

void set_options() {
  namespace option = gmsh::option;
  option::setNumber("General.NumThreads", 1);  // more make the mesh differ from run to run
  option::setNumber("Mesh.Algorithm", 6);      // frontal Delaunay; 8 crashes in Debian 12's build of Gmsh 4.8.4
  option::setNumber("Mesh.RecombineAll", 1);
  option::setNumber("Mesh.RecombinationAlgorithm", 1);
  option::setNumber("Mesh.RecombineOptimizeTopology", 0);  // its loop does not end for some plates (Gmsh 4.8.4)
  option::setNumber("Mesh.Smoothing", 5);
  option::setNumber("Mesh.MeshSizeExtendFromBoundary", 0);
  option::setNumber("Mesh.MeshSizeFromPoints", 0);
  option::setNumber("Mesh.MeshSizeFromCurvature", 0);
}

// Every other point of each curve, joined by lines that hold one element each.
void describe(const PlaneOutline& outline) {
  namespace geo = gmsh::model::geo;
  std::vector<bool> known(outline.points.size(), false);
  const auto point = [&](int i) {
    if (!known[i]) geo::addPoint(outline.points[i].x(), outline.points[i].y(), 0.0, 0.0, i + 1);
    known[i] = true;
    return i + 1;
  };
  std::vector<std::vector<int>> lines;
  for (const auto& curve : outline.curves) {
    assert(curve.size() % 2 == 1 && curve.size() >= 3);
    std::vector<int>& tags = lines.emplace_back();
    for (std::size_t i = 0; i + 2 < curve.size(); i += 2) {
      const int from = point(curve[i]), to = point(curve[i + 2]);
      tags.push_back(geo::addLine(from, to));
      geo::mesh::setTransfiniteCurve(tags.back(), 2);
    }
  }
  std::vector<std::vector<int>> inner_nodes;
  for (const PlaneFace& face : outline.faces) {
    std::vector<int> loops;
    for (const Loop& loop : face.loops) {
      std::vector<int> tags;
      for (const CurveUse& use : loop) {
        const std::vector<int>& curve = lines[use.curve];
        if (use.forward)
          tags.insert(tags.end(), curve.begin(), curve.end());
        else
          std::transform(curve.rbegin(), curve.rend(), std::back_inserter(tags), std::negate<>());
      }
      loops.push_back(geo::addCurveLoop(tags));
    }
    geo::addPlaneSurface(loops, static_cast<int>(inner_nodes.size()) + 1);
    std::vector<int>& tags = inner_nodes.emplace_back();
    std::transform(face.inner_nodes.begin(), face.inner_nodes.end(), std::back_inserter(tags), point);
  }
  geo::synchronize();
  geo::synchronize();  // the first works with the length scale of the model before: meshes would depend on it
  for (std::size_t face = 0; face < inner_nodes.size(); ++face)
    if (!inner_nodes[face].empty()) gmsh::model::mesh::embed(0, inner_nodes[face], 2, static_cast<int>(face) + 1);
}

double twice_area(const std::vector<Eigen::Vector2d>& nodes, const std::vector<int>& cell) {
  double sum = 0.0;
  for (std::size_t i = 0; i < cell.size(); ++i) {
    const Eigen::Vector2d &a = nodes[cell[i]], &b = nodes[cell[(i + 1) % cell.size()]];
    sum += a.x() * b.y() - a.y() * b.x();
  }
  return sum;
}

CoarseMesh read_mesh(const PlaneOutline& outline) {
  CoarseMesh coarse{outline.points, {}, {}};
  std::unordered_map<std::size_t, int> index_of;
  std::vector<std::size_t> tags;
  std::vector<double> places, unused;
  gmsh::vectorpair points;
  gmsh::model::getEntities(points, 0);
  for (const auto& [dimension, point] : points) {
    gmsh::model::mesh::getNodes(tags, places, unused, dimension, point);
    assert(tags.size() == 1);
    index_of[tags.front()] = point - 1;
  }
  for (int face = 0; face < static_cast<int>(outline.faces.size()); ++face) {
    gmsh::model::mesh::getNodes(tags, places, unused, 2, face + 1);
    for (std::size_t i = 0; i < tags.size(); ++i)
      if (index_of.emplace(tags[i], static_cast<int>(coarse.nodes.size())).second)
        coarse.nodes.emplace_back(places[3 * i], places[3 * i + 1]);
    for (const int type : {quad_type, triangle_type}) {
      const std::size_t corners = type == quad_type ? 4 : 3;
      std::vector<std::size_t> unused_tags, cells;
      gmsh::model::mesh::getElementsByType(type, unused_tags, cells, face + 1);
      for (std::size_t i = 0; i < cells.size(); i += corners) {
        std::vector<int>& cell = coarse.cells.emplace_back();
        for (std::size_t k = 0; k < corners; ++k) {
          const auto found = index_of.find(cells[i + k]);
          if (found == index_of.end()) throw MeshError("Gmsh put a node on an edge that was to hold none.");
          cell.push_back(found->second);
        }
        if (twice_area(coarse.nodes, cell) < 0.0) std::reverse(cell.begin(), cell.end());
        coarse.face_of_cell.push_back(face);
      }
    }
  }
  return coarse;
}

CoarseMesh coarse_mesh(const PlaneOutline& outline, const SizeField& size) {
  const ModelScope model("plane");
  set_options();
  describe(outline);
  ModelScope::check();
  gmsh::model::mesh::setSizeCallback([&size](int, int, double x, double y, double) { return 2.0 * size({x, y}); });
  gmsh::model::mesh::generate(2);
  ModelScope::check();
  return read_mesh(outline);
}

// Splits cells into quads by their middles and the middles of their edges, which on a curve are the points left
// out before.
class Splitter {
 public:
  Splitter(const PlaneOutline& outline, const CoarseMesh& coarse)
      : nodes_(coarse.nodes), outline_size_(static_cast<int>(outline.points.size())) {
    for (const auto& curve : outline.curves)
      for (std::size_t i = 0; i + 2 < curve.size(); i += 2)
        middle_of_[sorted(curve[i], curve[i + 2])] = curve[i + 1];
    for (std::size_t c = 0; c < coarse.cells.size(); ++c) {
      face_ = coarse.face_of_cell[c];
      add_cell(coarse.cells[c]);
    }
    result_.mesh.nodes.resize(static_cast<Eigen::Index>(nodes_.size()), 2);
    for (std::size_t i = 0; i < nodes_.size(); ++i)
      result_.mesh.nodes.row(static_cast<Eigen::Index>(i)) = nodes_[i];
  }

  PlaneMesh result() && { return std::move(result_); }

 private:
  int add_node(const Eigen::Vector2d& place) {
    nodes_.push_back(place);
    return static_cast<int>(nodes_.size()) - 1;
  }

  int middle(int a, int b) {
    const auto [found, is_new] = middle_of_.try_emplace(sorted(a, b), -1);
    if (is_new) found->second = add_node(0.5 * (nodes_[a] + nodes_[b]));
    return found->second;
  }

  // Cosine of the angle that the split cell will have in a corner.
  double corner_cosine(const std::vector<int>& cell, std::size_t corner) {
    const std::size_t count = cell.size();
    const Eigen::Vector2d here = nodes_[cell[corner]];
    const Eigen::Vector2d next = nodes_[middle(cell[corner], cell[(corner + 1) % count])] - here;
    const Eigen::Vector2d previous = nodes_[middle(cell[corner], cell[(corner + count - 1) % count])] - here;
    return next.dot(previous) / (next.norm() * previous.norm());
  }

  void add_cell(const std::vector<int>& cell) {
    // A quad with two sides on a nearly straight part of a curve has a corner there that no smoothing can sharpen.
    if (cell.size() == 4) {
      for (std::size_t i = 0; i < 4; ++i) {
        if (cell[i] >= outline_size_ || corner_cosine(cell, i) > cosine_of_flat_corner) continue;
        split_cell({cell[i], cell[(i + 1) % 4], cell[(i + 2) % 4]});
        split_cell({cell[i], cell[(i + 2) % 4], cell[(i + 3) % 4]});
        return;
      }
    }
    split_cell(cell);
  }

  void split_cell(const std::vector<int>& cell) {
    const std::size_t corners = cell.size();
    Eigen::Vector2d sum = Eigen::Vector2d::Zero();
    std::array<int, 4> middles{};
    for (std::size_t i = 0; i < corners; ++i) {
      middles[i] = middle(cell[i], cell[(i + 1) % corners]);
      sum += nodes_[middles[i]];
    }
    const int centre = add_node(sum / static_cast<double>(corners));
    for (std::size_t i = 0; i < corners; ++i) {
      result_.mesh.quads.push_back({cell[i], middles[i], centre, middles[(i + corners - 1) % corners]});
      result_.face_of_quad.push_back(face_);
    }
  }

  static constexpr double cosine_of_flat_corner = -0.866;  // 150 degrees

  std::vector<Eigen::Vector2d> nodes_;
  int outline_size_;
  std::unordered_map<Edge, int, EdgeHash> middle_of_;
  int face_ = 0;
  PlaneMesh result_;
};

double signed_area(const PlaneOutline& outline) {
  double twice = 0.0;
  for (const PlaneFace& face : outline.faces)
    for (const Loop& loop : face.loops)
      for (const CurveUse& use : loop) {
        const std::vector<int>& curve = outline.curves[use.curve];
        for (std::size_t i = 0; i + 1 < curve.size(); ++i) {
          const Eigen::Vector2d &a = outline.points[curve[i]], &b = outline.points[curve[i + 1]];
          twice += (use.forward ? 1.0 : -1.0) * (a.x() * b.y() - a.y() * b.x());
        }
      }
  return 0.5 * twice;
}

// Gmsh reports some faults by leaving a face empty or covering it twice.
void check_cover(const PlaneOutline& outline, const FlatMesh& mesh) {
  double covered = 0.0;
  for (const Quad& quad : mesh.quads) {
    const Eigen::Vector2d first = mesh.nodes.row(quad[2]) - mesh.nodes.row(quad[0]);
    const Eigen::Vector2d second = mesh.nodes.row(quad[3]) - mesh.nodes.row(quad[1]);
    covered += 0.5 * std::abs(first.x() * second.y() - first.y() * second.x());
  }
  const double wanted = signed_area(outline);
  if (!(std::abs(covered - wanted) <= 1e-6 * std::abs(wanted)))
    throw MeshError("Gmsh did not cover the faces: the curves round them may cross.");
}

}  // namespace

int PlaneOutline::add_point(const Eigen::Vector2d& point) {
  points.push_back(point);
  return static_cast<int>(points.size()) - 1;
}

PlaneMesh mesh_plane(const GmshSession&, const PlaneOutline& outline, const SizeField& size) {
  const CoarseMesh coarse = gmsh_call("mesh a plane face", [&] { return coarse_mesh(outline, size); });
  PlaneMesh result = Splitter(outline, coarse).result();
  check_cover(outline, result.mesh);
  return result;
}

}  // namespace gapstrain::mesh
