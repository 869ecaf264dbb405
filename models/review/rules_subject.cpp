#include "models/review/rules_subject.h"

#include "models/parts/checks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace gapstrain::models {

namespace {

std::string sentence_name(const Screw& screw) {
  if (!screw.label.empty()) return screw.label;
  return screw.entry ? "the screw beside the plate" : fmt::format("the screw in hole {}", screw.hole);
}

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

}  // namespace

CutThroughBone::CutThroughBone(const Fracture& fracture, const BoneShape& bone)
    : half_gap_(0.5 * fracture.gap.value()) {
  const BoneSection section = bone.section(fracture.position.value());
  const double slope = std::tan(fracture.obliquity.value());
  const double y = std::sin(fracture.direction.value()), z = std::cos(fracture.direction.value());
  centre_ = section.centre;
  square_ = section.tangent - slope * (y * section.y_axis + z * section.z_axis);
  length_ = fracture.gap.value() + 2.0 * slope * std::hypot(section.semi_y * y, section.semi_z * z);
}

double CutThroughBone::beyond(const Eigen::Vector3d& place) const { return square_.dot(place - centre_); }

double CutThroughBone::edge_distance(const Eigen::Vector3d& place) const {
  return (std::abs(beyond(place)) - half_gap_) / square_.norm();
}

RuleSubject::RuleSubject(const Construct& of)
    : construct(of), bone(of.bone, of.plate.aspect), plate(of.plate, bone), cut(of.fracture, bone) {
  const auto gone = taken_out(construct);
  double slides[2] = {0.0, 0.0};
  for (const Screw& screw : construct.screws) {
    SeatedScrew seated;
    seated.screw = &screw;
    seated.name = sentence_name(screw);
    const Length slide = slide_along(screw, construct.plate, plate, construct.fracture.position);
    seated.placement = place_screw(construct.plate, plate, bone, screw, slide);
    const auto& crossing = seated.placement.bone;
    seated.is_distal = cut.is_distal(crossing ? crossing->near.middle : seated.placement.underside);
    seated.stays = !gone.contains(screw.label);
    double& longest = slides[seated.is_distal ? 1 : 0];
    longest = std::max(longest, std::abs(slide.value()));
    screws.push_back(std::move(seated));
  }
  slid = slides[0] + slides[1];
  treatment = treat(*this);
}

double RuleSubject::gap_left() const { return std::max(0.0, construct.fracture.gap.value() - slid); }

std::vector<std::string> RuleSubject::pressing() const {
  std::vector<std::string> names;
  for (const auto& seated : screws)
    if (seated.screw->kind == ScrewKind::compression || seated.screw->kind == ScrewKind::lag)
      names.push_back(seated.name);
  for (const Step& step : construct.steps)
    for (const auto& label : step.place)
      if (has_clamp(construct, label)) names.push_back(label);
  return names;
}

std::vector<const SeatedScrew*> RuleSubject::fragment(bool distal) const {
  std::vector<const SeatedScrew*> found;
  for (const auto& seated : screws)
    if (seated.stays && seated.is_plate_screw() && seated.is_distal == distal) found.push_back(&seated);
  return found;
}

const SeatedScrew& RuleSubject::innermost(bool distal) const {
  const auto all = fragment(distal);
  return **std::max_element(all.begin(), all.end(), [&](const SeatedScrew* a, const SeatedScrew* b) {
    return distal ? a->screw->hole > b->screw->hole : a->screw->hole < b->screw->hole;
  });
}

const SeatedScrew& RuleSubject::outermost(bool distal) const {
  const auto all = fragment(distal);
  return **std::max_element(all.begin(), all.end(), [&](const SeatedScrew* a, const SeatedScrew* b) {
    return distal ? a->screw->hole < b->screw->hole : a->screw->hole > b->screw->hole;
  });
}

std::vector<int> RuleSubject::usable_holes_inside(bool distal) const {
  const SeatedScrew& inner = innermost(distal);
  const double clearance = least_edge_clearance * inner.screw->size.thread_diameter.value();
  std::vector<int> found;
  const int step = distal ? -1 : 1;
  for (int hole = inner.screw->hole + step; hole >= 1 && hole <= static_cast<int>(construct.plate.holes.size());
       hole += step) {
    if (std::any_of(screws.begin(), screws.end(),
                    [&](const SeatedScrew& s) { return s.stays && s.screw->hole == hole; }))
      continue;
    Screw screw;
    screw.hole = hole;
    screw.size = inner.screw->size;
    const auto crossing = place_screw(construct.plate, plate, bone, screw, Length()).bone;
    if (!crossing) continue;
    const bool is_clear = at_least(cut.edge_distance(crossing->near.middle), clearance) &&
                          at_least(cut.edge_distance(crossing->far.middle), clearance);
    const bool is_here =
        cut.is_distal(crossing->near.middle) == distal && cut.is_distal(crossing->far.middle) == distal;
    if (is_clear && is_here) found.insert(found.begin(), hole);
  }
  return found;
}

std::string fragment_name(bool distal) { return distal ? "the distal fragment" : "the proximal fragment"; }

std::string listed(const std::vector<std::string>& names, std::string_view last) {
  if (names.empty()) return "";
  std::string text = names.front();
  for (std::size_t i = 1; i < names.size(); ++i)
    text += (i + 1 < names.size() ? ", " : fmt::format(" {} ", last)) + names[i];
  return text;
}

void break_rule(RuleFinding& finding, std::string advice) {
  finding.verdict = Verdict::broken;
  finding.advice += (finding.advice.empty() ? "" : " ") + std::move(advice);
}

RuleFinding not_applicable(RuleFinding finding, std::string reason) {
  finding.verdict = Verdict::not_applicable;
  finding.figure = std::move(reason);
  return finding;
}

}  // namespace gapstrain::models
