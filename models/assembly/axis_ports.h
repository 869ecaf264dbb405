// The axes of plates and fragments as ports read them, which second-order effects of axial forces act on, and the
// frames in which they stay linear as they turn far.
#pragma once

#include "models/assembly/body_ports.h"
#include "models/assembly/load_setup.h"
#include "solver/bodies/axial_slopes.h"
#include "solver/motion/turning_body.h"

#include <memory>
#include <string>
#include <vector>

namespace gapstrain::models {

// Mean shifts of slices of a fragment, three motions each, for its axis between the bone's own ends and the cut
// (`is_first`, `is_last`: of all fragments). A bone bends little: what its straight pieces leave out of the
// axis's slopes is less than a hundredth of the bone's own share.
std::vector<solver::Port> station_ports(const solver::Shell& bone, bool is_first, bool is_last);
std::string station_name(std::size_t k);

// Of each body, by number: of a plate from hole to hole, of a fragment from the bone's end from slice to slice to
// the fracture. `lists`: their ports.
std::vector<solver::AxialReadings> read_axes(const Construct& construct, const solver::System& system,
                                             const std::vector<PortList>& lists);

// Bodies that turn far, by number: a plate bends from hole to hole, so each hole has a frame; a fragment has one,
// the nearest to all of its ports' motions.
std::vector<solver::TurningBody> turning_bodies(const Construct& construct, const std::vector<PortList>& lists);

// With the arms of one load's ends.
std::shared_ptr<const solver::AxialSlopes> axes_under(const solver::System& system,
                                                      std::vector<solver::AxialReadings> axes,
                                                      const std::vector<LoadArm>& arms);

}  // namespace gapstrain::models
