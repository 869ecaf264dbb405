// Names and places of everything on a construct's bodies that links and loads may take hold of.
#pragma once

#include "models/assembly/body_ports.h"
#include "models/assembly/clamp_link.h"
#include "models/assembly/contact_spots.h"
#include "models/assembly/gap_links.h"
#include "models/assembly/planned_screw.h"
#include "models/assembly/screw_links.h"

#include <array>
#include <string>
#include <vector>

namespace gapstrain::models {

// Everything that asks for ports.
struct PortWishes {
  std::vector<PlannedScrew> screws;  // wires among them
  std::vector<double> rollers;       // x, mm
  std::vector<GapSpot> gap;
  std::vector<UndersideSpot> underside;
  std::vector<std::array<ClampTip, 2>> clamps;
};

class PortBook {
 public:
  // `shells`: plate, proximal, distal.
  PortBook(const PortWishes& wishes, const Construct& construct, const PlateShape& plate_shape,
           const BoneShape& bone_shape, const std::array<const solver::Shell*, 3>& shells);

  const PortList& ports(int body) const { return lists_[static_cast<std::size_t>(body)]; }

  PortPlace hole(int number) const;
  PortPlace bone(const std::string& name) const;  // a name that only one fragment has
  PortPlace end(int body) const { return place(body, "end"); }

  // Of entry number k in the wishes. First and second side: proximal and distal, bone and plate, the tips' order.
  std::array<SpotPlace, 2> gap(std::size_t k) const;
  std::array<SpotPlace, 2> underside(std::size_t k, std::size_t fragment) const;
  std::array<SpotPlace, 2> clamp(std::size_t k, const std::array<ClampTip, 2>& tips) const;

 private:
  PortPlace place(int body, const std::string& name) const { return {body, ports(body).column(name)}; }
  SpotPlace spot(int body, const std::string& name) const { return {body, ports(body).column(name)}; }

  std::array<PortList, 3> lists_;
};

}  // namespace gapstrain::models
