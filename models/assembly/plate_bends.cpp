#include "models/assembly/plate_bends.h"

#include "models/assembly/assembly.h"

#include <Eigen/Geometry>

namespace gapstrain::models {

Eigen::Matrix3d section_axes(const PlateShape& shape, double along) {
  constexpr double step = 1e-3;  // mm
  const auto surface = shape.mid_surface(along, 0.0);
  Eigen::Matrix3d axes;
  axes.col(0) = (shape.mid_surface(along + step, 0.0).position - surface.position).normalized();
  axes.col(1) = surface.normal.cross(axes.col(0)).normalized();
  axes.col(2) = axes.col(0).cross(axes.col(1));
  return axes;
}

Eigen::Matrix<double, 6, 1> bent_motion(const Assembly& assembly, std::size_t plate,
                                        const solver::Yielded& yielded, double along,
                                        const Eigen::Vector3d& place) {
  Eigen::Matrix<double, 6, 1> motion = Eigen::Matrix<double, 6, 1>::Zero();
  const PlateShape& shape = *assembly.plates[plate].shape;
  const auto& places = assembly.yields.places;
  for (std::size_t k = 0; k < places.size(); ++k) {
    const YieldPlace& section = places[k];
    const auto bent = yielded.deformed.col(static_cast<Eigen::Index>(k));
    if (section.screw || section.plate != plate || bent.isZero(0.0)) continue;
    // Of a hole's two sections the first is before its middle, the second behind it.
    const bool is_second = k > 0 && !places[k - 1].screw && places[k - 1].along == section.along;
    if (section.along > along || (is_second && section.along == along)) continue;
    const Eigen::Matrix3d axes = section_axes(shape, section.along);
    const Eigen::Vector3d turn = axes * bent.tail<3>();
    motion.head<3>() += axes * bent.head<3>() + turn.cross(place - shape.mid_surface(section.along, 0.0).position);
    motion.tail<3>() += turn;
  }
  return motion;
}

}  // namespace gapstrain::models
