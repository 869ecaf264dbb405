#include "models/race/hot_places.h"

#include "models/stress/body_stress.h"
#include "models/stress/fatigue.h"
#include "models/stress/plate_stress.h"
#include "models/stress/stress_cycle.h"
#include "solver/bodies/stress.h"

#include <algorithm>
#include <cassert>
#include <optional>
#include <string>

namespace gapstrain::models {

namespace {

constexpr std::size_t places_a_state = 8;
constexpr double apart = 0.5;  // mm

// Stress of the whole plate does not depend on its rigid motion, nor does what forces make of it depend on its
// modulus: the body may be factored with another one.
std::vector<BodyStress> whole_stress(const BuiltBody& plate, const Eigen::MatrixXd& port_forces) {
  return read_stress(plate.body->shell(), plate.body->displacements(*plate.ports, port_forces,
                                                                    Eigen::MatrixXd::Zero(6, port_forces.cols())));
}

const Eigen::MatrixX3d& level(const BodyStress& stress, PlateFace face) {
  return face == PlateFace::top ? stress.top : stress.bottom;
}

struct Candidate {
  PlateNode place;
  Stress reversed;
};

class HotNodes {
 public:
  explicit HotNodes(const Assembly& assembly) : assembly_(assembly) {}

  void take_from(const BodyStress& at_rest, const BodyStress& loaded) {
    const Metal& metal = only(assembly_.construct.plates).material;
    std::vector<Candidate> candidates;
    for (const PlateFace face : {PlateFace::top, PlateFace::bottom})
      for (Eigen::Index node = 0; node < loaded.top.rows(); ++node)
        candidates.push_back({{static_cast<int>(node), face},
                              reversed_amplitude(stress_cycle(level(at_rest, face).row(node).transpose(),
                                                              level(loaded, face).row(node).transpose()),
                                                 *metal.ultimate_strength, metal.yield_strength)});
    std::stable_sort(candidates.begin(), candidates.end(),
                     [](const Candidate& one, const Candidate& other) { return one.reversed > other.reversed; });
    std::vector<PlateNode> own;
    for (const auto& candidate : candidates) {
      if (own.size() == places_a_state) break;
      if (is_near(candidate.place, own)) continue;
      own.push_back(candidate.place);
      const bool is_worst = own.size() == 1;
      const bool is_known = std::find(found_.begin(), found_.end(), candidate.place) != found_.end();
      if (!is_known && (is_worst || !is_near(candidate.place, found_))) found_.push_back(candidate.place);
    }
  }

  const std::vector<PlateNode>& found() const { return found_; }

 private:
  bool is_near(const PlateNode& place, const std::vector<PlateNode>& others) const {
    const auto& nodes = only(assembly_.plates).mesh.mesh->nodes;
    return std::any_of(others.begin(), others.end(), [&](const PlateNode& other) {
      return other.face == place.face && (nodes.row(other.node) - nodes.row(place.node)).norm() < apart;
    });
  }

  const Assembly& assembly_;
  std::vector<PlateNode> found_;
};

}  // namespace

std::vector<PlateNode> find_hot_nodes(const Assembly& assembly, const Eigen::VectorXd& at_rest,
                                      const Eigen::MatrixXd& loaded) {
  Eigen::MatrixXd all(loaded.rows(), loaded.cols() + 1);
  all << at_rest, loaded;
  const auto stress = whole_stress(assembly.bodies[only_plate_body], all);
  HotNodes nodes(assembly);
  for (std::size_t state = 1; state < stress.size(); ++state) nodes.take_from(stress.front(), stress[state]);
  return nodes.found();
}

std::vector<HotPlace> places_of(const Assembly& assembly, const std::vector<PlateNode>& nodes) {
  const auto& places = only(assembly.plates).mesh.along_across;
  const auto holes = rims_of_nodes(assembly);
  std::vector<HotPlace> found;
  for (const auto& place : nodes) {
    const int hole = holes[static_cast<std::size_t>(place.node)];
    found.push_back({places(place.node, 0) * mm, places(place.node, 1) * mm, place.face,
                     hole > 0 ? std::optional(hole) : std::nullopt});
  }
  return found;
}

PlaceStress::PlaceStress(const Assembly& assembly, const std::vector<PlateNode>& nodes) {
  const BuiltBody& plate = assembly.bodies[only_plate_body];
  const auto count = static_cast<Eigen::Index>(nodes.size());
  Eigen::MatrixXd readings(plate.body->shell().mesh->nodes.rows() * 6, 3 * count);
  for (Eigen::Index k = 0; k < count; ++k) {
    const PlateNode& place = nodes[static_cast<std::size_t>(k)];
    assert(place.face != PlateFace::middle);
    const double side = place.face == PlateFace::top ? 1.0 : -1.0;
    readings.middleCols<3>(3 * k) =
        Eigen::MatrixXd(solver::node_stress_rows(plate.body->shell(), {place.node}, side)).transpose();
  }
  rows_ = (plate.ports->spread.transpose() * plate.body->elastic_answer(readings)).transpose();
}

Eigen::Matrix3Xd PlaceStress::read(const Eigen::VectorXd& port_forces) const {
  return (rows_ * port_forces).reshaped(3, rows_.rows() / 3);
}

}  // namespace gapstrain::models
