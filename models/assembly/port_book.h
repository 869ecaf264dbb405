// Names and places of everything on a construct's bodies that links and loads may take hold of.
#pragma once

#include "models/assembly/body_ports.h"
#include "models/assembly/clamp_link.h"
#include "models/assembly/contact_spots.h"
#include "models/assembly/gap_links.h"
#include "models/assembly/load_setup.h"
#include "models/assembly/planned_screw.h"
#include "models/assembly/screw_links.h"

#include <array>
#include <memory>
#include <stdexcept>
#include <string>
#include <vector>

namespace gapstrain::models {

// Everything that asks for ports.
struct PortWishes {
  std::vector<PlannedScrew> screws;  // wires among them
  std::vector<double> rollers;       // x, mm, each place once
  std::vector<SurfaceSpot> forces;   // likewise
  std::vector<GapSpot> gap;
  std::vector<UndersideSpot> underside;
  std::vector<std::array<ClampTip, 2>> clamps;
};

// A force that finds no bone to act on.
struct NoBoneError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

// The ports of each body, in the order of a PortBook's columns. `shells`: of all bodies by their numbers
// (body_numbers.h); `plate_shapes`: one a plate.
struct NamedPort {
  std::string name;
  solver::Port port;
};
// @throw NoBoneError
std::vector<std::vector<NamedPort>> make_ports(const PortWishes& wishes, const Construct& construct,
                                               const std::vector<std::shared_ptr<const PlateShape>>& plate_shapes,
                                               const BoneShape& bone_shape,
                                               const std::vector<solver::Shell>& shells);

class PortBook {
 public:
  PortBook() = default;
  explicit PortBook(const std::vector<std::vector<NamedPort>>& ports);  // a list a body
  explicit PortBook(std::vector<PortList> lists) : lists_(std::move(lists)) {}

  const PortList& ports(std::size_t body) const { return lists_[body]; }
  const std::vector<PortList>& lists() const { return lists_; }

  PortPlace hole(std::size_t plate, int number) const;
  PortPlace named(const std::string& name) const;  // a name that only one body has
  PortPlace roller(std::size_t k) const;           // of entry k in the wishes
  SurfacePort force(std::size_t k) const;          // likewise
  PortPlace end(std::size_t body) const { return {body, ports(body).column("end")}; }

  // Of entry number k in the wishes. First and second side: proximal and distal, bone and plate, the tips' order.
  std::array<SpotPlace, 2> gap(std::size_t k) const;
  std::array<SpotPlace, 2> underside(std::size_t k) const;
  std::array<SpotPlace, 2> clamp(std::size_t k, const std::array<ClampTip, 2>& tips) const;

 private:
  std::array<SpotPlace, 2> pair(const std::string& name) const;  // of the two bodies that have it, by number

  std::vector<PortList> lists_;  // one a body
};

std::string hole_name(int hole);  // of its rim's port

}  // namespace gapstrain::models
