#include "mesh/trace_faces.h"

#include <cassert>
#include <cmath>
#include <limits>
#include <numbers>

namespace gapstrain::mesh {

namespace {

class FaceTracer {
 public:
  FaceTracer(PlaneOutline& outline, const std::vector<CurveUse>& uses) : outline_(outline), uses_(uses) {}

  void trace(const std::vector<int>& inner_nodes) {
    std::vector<bool> done(uses_.size(), false);
    std::vector<Loop> outer_loops, holes;
    for (std::size_t first = 0; first < uses_.size(); ++first) {
      if (done[first]) continue;
      Loop loop;
      for (std::size_t use = first; !done[use]; use = next(use)) {
        done[use] = true;
        loop.push_back(uses_[use]);
      }
      (twice_area(loop) > 0.0 ? outer_loops : holes).push_back(std::move(loop));
    }
    for (Loop& loop : outer_loops) outline_.faces.push_back({{std::move(loop)}, {}});
    for (Loop& hole : holes) face_round(nodes(hole).front()).loops.push_back(std::move(hole));
    for (const int node : inner_nodes) face_round(node).inner_nodes.push_back(node);
  }

 private:
  // Node `i` from the start (or with a negative one from the end) of a use.
  int node(const CurveUse& use, int i) const {
    const std::vector<int>& curve = outline_.curves[use.curve];
    const bool from_front = (i >= 0) == use.forward;
    const int steps = i >= 0 ? i : -1 - i;
    return from_front ? curve[steps] : curve[curve.size() - 1 - steps];
  }

  double heading(int from, int to) const {
    const Eigen::Vector2d arm = outline_.points[to] - outline_.points[from];
    return std::atan2(arm.y(), arm.x());
  }

  // At its end a loop turns left as sharply as it can, so that it goes round the smallest face.
  std::size_t next(std::size_t use) const {
    const int corner = node(uses_[use], -1);
    const double back = heading(corner, node(uses_[use], -2));
    double sharpest = std::numeric_limits<double>::infinity();
    std::size_t best = uses_.size();
    for (std::size_t other = 0; other < uses_.size(); ++other) {
      if (node(uses_[other], 0) != corner) continue;
      if (uses_[other].curve == uses_[use].curve && other != use) continue;  // straight back
      double turn = back - heading(corner, node(uses_[other], 1));
      if (turn <= 0.0) turn += 2.0 * std::numbers::pi;
      if (turn < sharpest) {
        sharpest = turn;
        best = other;
      }
    }
    assert(best < uses_.size());
    return best;
  }

  std::vector<int> nodes(const Loop& loop) const {
    std::vector<int> result;
    for (const CurveUse& use : loop)
      for (int i = 0; i + 1 < static_cast<int>(outline_.curves[use.curve].size()); ++i)
        result.push_back(node(use, i));
    return result;
  }

  double twice_area(const Loop& loop) const {
    const std::vector<int> corners = nodes(loop);
    double sum = 0.0;
    for (std::size_t i = 0; i < corners.size(); ++i) {
      const Eigen::Vector2d &a = outline_.points[corners[i]],
                            &b = outline_.points[corners[(i + 1) % corners.size()]];
      sum += a.x() * b.y() - a.y() * b.x();
    }
    return sum;
  }

  // Even-odd rule along a ray towards +x.
  bool is_inside(const Eigen::Vector2d& point, const Loop& loop) const {
    const std::vector<int> corners = nodes(loop);
    bool inside = false;
    for (std::size_t i = 0; i < corners.size(); ++i) {
      const Eigen::Vector2d &a = outline_.points[corners[i]],
                            &b = outline_.points[corners[(i + 1) % corners.size()]];
      if ((a.y() > point.y()) == (b.y() > point.y())) continue;
      if (point.x() < a.x() + (b.x() - a.x()) * (point.y() - a.y()) / (b.y() - a.y())) inside = !inside;
    }
    return inside;
  }

  PlaneFace& face_round(int point) {
    for (PlaneFace& face : outline_.faces)
      if (is_inside(outline_.points[point], face.loops.front())) return face;
    assert(false && "a hole or node lies in no face");
    return outline_.faces.front();
  }

  PlaneOutline& outline_;
  const std::vector<CurveUse>& uses_;
};

}  // namespace

void trace_faces(PlaneOutline& outline, const std::vector<CurveUse>& uses, const std::vector<int>& inner_nodes) {
  FaceTracer(outline, uses).trace(inner_nodes);
}

}  // namespace gapstrain::mesh
