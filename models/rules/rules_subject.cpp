#include "models/rules/rules_subject.h"

#include "models/checks/checks.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace gapstrain::models {

namespace {

bool has_clamp(const Construct& construct, const std::string& label) {
  return std::any_of(construct.temporary.begin(), construct.temporary.end(), [&](const TemporaryHold& hold) {
    return hold.kind == HoldKind::fracture_clamp && hold.label == label;
  });
}

Treatment treat(const RuleSubject& subject) {
  if (!subject.is_simple() || !at_most(subject.gap_left(), largest_pressed_gap.value()))
    return Treatment::bridging;
  const auto any = [&](ScrewKind kind) {
    return std::any_of(subject.screws.begin(), subject.screws.end(),
                       [&](const SeatedScrew& s) { return s.stays && s.screw->kind == kind; });
  };
  if (any(ScrewKind::compression)) return Treatment::compression;
  if (any(ScrewKind::lag)) return Treatment::neutralisation;
  return subject.pressing().empty() ? Treatment::bridging : Treatment::compression;
}

RuleSite::Standoff furthest_from_bone(double plate_length, const PlateShape& plate, const BoneShape& bone) {
  constexpr int samples = 400;
  RuleSite::Standoff found;
  for (int i = 0; i <= samples; ++i) {
    const double along = plate_length * i / samples;
    const auto place = plate.mid_surface(along, 0.0);
    const double distance = -bone.depth(place.position - 0.5 * place.thickness * place.normal);
    if (i == 0 || distance > found.distance + 1e-6) found = {distance, along};
  }
  return found;
}

double width_across(const BoneShape& bone, const BoneCrossing& crossing, const Eigen::Vector3d& direction) {
  const BoneSection section = bone.section_through(crossing.near.middle);
  const Eigen::Vector2d along =
      Eigen::Vector2d(direction.dot(section.y_axis), direction.dot(section.z_axis)).normalized();
  return 2.0 * std::hypot(section.semi_y * along.y(), section.semi_z * along.x());
}

std::vector<SeatedScrew> seat_all(const Construct& construct, const RuleSite& site) {
  std::vector<SeatedScrew> seated;
  for (const Screw& screw : construct.screws) seated.push_back(seat(screw, construct, site));
  return seated;
}

}  // namespace

RuleSite::RuleSite(const Construct& construct)
    : bone(construct.bone, only(construct.plates).aspect),
      plate(only(construct.plates), bone),
      cut(only(construct.fractures), bone),
      highest(furthest_from_bone(only(construct.plates).length.value(), plate, bone)) {
  Screw screw;
  for (std::size_t hole = 1; hole <= only(construct.plates).holes.size(); ++hole) {
    screw.hole = static_cast<int>(hole);
    square_to_hole.push_back(place_screw(only(construct.plates), plate, bone, screw, Length()).bone);
  }
}

SeatedScrew seat(const Screw& screw, const Construct& construct, const RuleSite& site) {
  SeatedScrew seated;
  seated.screw = &screw;
  seated.part = {screw.id, screw.label, screw.entry ? 0 : screw.hole};
  seated.placement = place_screw(construct, site.plate, site.bone, screw);
  seated.stays = !taken_out(construct).contains(screw.label);
  const auto& crossing = seated.placement.bone;
  seated.fragment = site.cut.is_distal(crossing ? crossing->near.middle : seated.placement.underside) ? 1 : 0;
  if (!crossing) return seated;
  seated.bone_width = width_across(site.bone, *crossing, seated.placement.direction);
  const auto look_at = [&](const Eigen::Vector3d& wall) {
    seated.to_edge = std::min(seated.to_edge, site.cut.edge_distance(wall));
    const double x = site.bone.unrolled(wall).y();
    seated.to_end = std::min({seated.to_end, x, site.bone.length() - x});
  };
  look_at(crossing->near.middle);
  if (screw.cortices == 2) look_at(crossing->far.middle);
  return seated;
}

RuleSubject::RuleSubject(const Construct& of, std::shared_ptr<const RuleSite> on, std::vector<SeatedScrew> seated)
    : construct(of),
      site(std::move(on)),
      bone(site->bone),
      plate(site->plate),
      cut(site->cut),
      screws(std::move(seated)) {
  std::vector<double> longest(construct.fractures.size() + 1, 0.0);  // of each fragment
  for (const SeatedScrew& screw : screws)
    longest[screw.fragment] = std::max(longest[screw.fragment], std::abs(screw.placement.slide));
  slid = std::accumulate(longest.begin(), longest.end(), 0.0);
  treatment = treat(*this);
}

RuleSubject RuleSubject::of(const Construct& construct) {
  const auto site = std::make_shared<const RuleSite>(construct);
  return {construct, site, seat_all(construct, *site)};
}

double RuleSubject::gap_left() const { return std::max(0.0, only(construct.fractures).gap.value() - slid); }

RuleParts RuleSubject::pressing() const {
  RuleParts parts;
  for (const auto& seated : screws)
    if (seated.screw->kind == ScrewKind::compression || seated.screw->kind == ScrewKind::lag)
      parts.push_back(seated.part);
  for (const Step& step : construct.steps)
    for (const auto& label : step.place)
      if (has_clamp(construct, label)) parts.push_back({ScrewId::none, label, 0});
  return parts;
}

std::vector<const SeatedScrew*> RuleSubject::fragment(std::size_t number) const {
  std::vector<const SeatedScrew*> found;
  for (const auto& seated : screws)
    if (seated.stays && seated.is_plate_screw() && seated.fragment == number) found.push_back(&seated);
  return found;
}

const SeatedScrew& RuleSubject::innermost(bool distal) const {
  const auto all = fragment(distal ? 1 : 0);
  return **std::max_element(all.begin(), all.end(), [&](const SeatedScrew* a, const SeatedScrew* b) {
    return distal ? a->screw->hole > b->screw->hole : a->screw->hole < b->screw->hole;
  });
}

const SeatedScrew& RuleSubject::outermost(bool distal) const {
  const auto all = fragment(distal ? 1 : 0);
  return **std::max_element(all.begin(), all.end(), [&](const SeatedScrew* a, const SeatedScrew* b) {
    return distal ? a->screw->hole < b->screw->hole : a->screw->hole > b->screw->hole;
  });
}

std::vector<int> RuleSubject::usable_holes_inside(bool distal) const {
  const SeatedScrew& inner = innermost(distal);
  const double clearance = least_edge_clearance * inner.screw->size.thread_diameter.value();
  std::vector<int> found;
  const int step = distal ? -1 : 1;
  for (int hole = inner.screw->hole + step;
       hole >= 1 && hole <= static_cast<int>(only(construct.plates).holes.size()); hole += step) {
    if (std::any_of(screws.begin(), screws.end(),
                    [&](const SeatedScrew& s) { return s.stays && s.screw->hole == hole; }))
      continue;
    const auto& crossing = site->square_to_hole[static_cast<std::size_t>(hole) - 1];
    if (!crossing) continue;
    const bool is_clear = at_least(cut.edge_distance(crossing->near.middle), clearance) &&
                          at_least(cut.edge_distance(crossing->far.middle), clearance);
    const bool is_here =
        cut.is_distal(crossing->near.middle) == distal && cut.is_distal(crossing->far.middle) == distal;
    if (is_clear && is_here) found.insert(found.begin(), hole);
  }
  return found;
}

RuleFinding not_applicable(RuleFinding finding, Inapplicable reason) {
  finding.verdict = Verdict::not_applicable;
  finding.inapplicable = reason;
  return finding;
}

}  // namespace gapstrain::models
