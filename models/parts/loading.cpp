#include "models/parts/loading.h"

namespace gapstrain::models {

namespace {

int firmness(EndHold hold) {
  switch (hold) {
    case EndHold::free:
      return 0;
    case EndHold::guided:  // lets go along the load, so what else there is must hold that
      return 1;
    case EndHold::ball:
      return 2;
    case EndHold::elastic:
      return 3;
    case EndHold::held:
      break;
  }
  return 4;
}

}  // namespace

EndFlexibility flexibility_of(const EndSprings& springs) {
  EndFlexibility flexibility;
  for (std::size_t k = 0; k < 3; ++k) {
    if (springs.translation[k]) flexibility.rows[7 * k] = 1.0 / springs.translation[k]->value();
    if (springs.rotation[k]) flexibility.rows[7 * (k + 3)] = 1.0 / springs.rotation[k]->value();
  }
  return flexibility;
}

EndSupports ball_joints() { return {}; }
EndSupports cantilever() { return {{EndHold::held}, {EndHold::free}}; }

BoneEnd base_of(const EndSupports& supports) {
  return firmness(supports.distal.hold) > firmness(supports.proximal.hold) ? BoneEnd::distal : BoneEnd::proximal;
}

bool is_twist_held_by_ball(const EndSupports& supports, BoneEnd end) {
  const EndHold across = supports.at(other(end)).hold;
  return supports.at(end).hold == EndHold::ball && end == base_of(supports) &&
         (across == EndHold::ball || across == EndHold::free);
}

bool takes_bending(const EndSupports& supports, BoneEnd end) {
  switch (supports.at(end).hold) {
    case EndHold::ball:
      return true;
    case EndHold::free:
    case EndHold::elastic:
      return end != base_of(supports);
    case EndHold::guided:
    case EndHold::held:
      break;
  }
  return false;
}

bool takes_torsion(const EndSupports& supports, BoneEnd end) {
  return takes_bending(supports, end) && !is_twist_held_by_ball(supports, end);
}

}  // namespace gapstrain::models
