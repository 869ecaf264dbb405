// The plate's length, how many of its holes are filled, and how far it stands off the bone.
#include "models/rules/rules_subject.h"

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

constexpr auto gautier_sommer = "Gautier & Sommer 2003, Injury 34 Suppl. 2 (from memory)";

// Plate over the fracture's length, which is what it reaches along the bone: a comminuted zone its gap, a simple
// fracture its gap and its obliquity over the bone's width. For lag screws the ratio is not asked for: they hold
// the fracture over its length, and eight times a long oblique fracture is more than a bone (our reading).
RuleFinding span_rule(const RuleSubject& subject) {
  const bool simple = subject.is_simple();
  const auto [least, ample] = simple ? simple_span : comminuted_span;
  RuleFinding finding;
  finding.least = least;
  finding.ample = ample;
  finding.source = gautier_sommer;
  const double plate = only(subject.construct.plates).length.value(), fracture = subject.cut.length();
  SpanBasis basis{simple, only(subject.construct.fractures).obliquity > 0.0 * degree, plate * mm, fracture * mm,
                  subject.bone.length() * mm};
  finding.basis = basis;
  if (!(fracture > 0.0)) return not_applicable(finding, Inapplicable::no_fracture_length);
  finding.value = plate / fracture;
  if (subject.treatment == Treatment::neutralisation)
    return not_applicable(finding, Inapplicable::lag_screws_hold);
  if (at_least(plate / fracture, least)) return finding;
  basis.needed = std::ceil(least * fracture - 1e-9) * mm;
  finding.basis = basis;
  finding.verdict = Verdict::broken;
  return finding;
}

int holes_filled(const RuleSubject& subject) {
  return static_cast<int>(std::count_if(subject.screws.begin(), subject.screws.end(),
                                        [](const SeatedScrew& s) { return s.stays && s.screw->hole > 0; }));
}

RuleFinding density_rule(const RuleSubject& subject) {
  constexpr double most = 0.5;
  constexpr int least_screws = 6;  // three a fragment, as the rule on their number asks when bridging
  RuleFinding finding;
  finding.most = most;
  finding.source = std::string(gautier_sommer) + "; no more than half of the holes: open surgical text";
  const int filled = holes_filled(subject), holes = static_cast<int>(only(subject.construct.plates).holes.size());
  const double density = static_cast<double>(filled) / holes;
  DensityBasis basis{filled, holes, static_cast<int>(std::ceil(filled / most - 1e-9))};
  const int may_stay = static_cast<int>(most * holes);
  if (may_stay >= least_screws) basis.leave_empty = filled - may_stay;
  finding.value = density;
  finding.basis = basis;
  if (subject.treatment != Treatment::bridging) return not_applicable(finding, Inapplicable::pressed);
  if (!at_most(density, most)) finding.verdict = Verdict::broken;
  return finding;
}

int nearest_hole(const Plate& plate, double along) {
  const auto nearest =
      std::min_element(plate.holes.begin(), plate.holes.end(), [&](const PlateHole& a, const PlateHole& b) {
        return std::abs(a.position.value() - along) < std::abs(b.position.value() - along);
      });
  return static_cast<int>(nearest - plate.holes.begin()) + 1;
}

RuleFinding standoff_rule(const RuleSubject& subject) {
  constexpr double most = 2.0;  // mm
  RuleFinding finding;
  finding.unit = FigureUnit::length;
  finding.most = most;
  finding.basis = StandoffBasis{};
  finding.source = "Ahmad et al. 2007, Injury 38 (from memory)";
  const bool locks = std::any_of(subject.screws.begin(), subject.screws.end(), [](const SeatedScrew& s) {
    return s.stays && s.screw->kind == ScrewKind::locking;
  });
  if (!locks) return not_applicable(finding, Inapplicable::no_locking_screw);
  const RuleSite::Standoff& worst = subject.site->highest;
  finding.value = worst.distance;
  finding.basis = StandoffBasis{only(subject.construct.plates).contour == Contour::straight,
                                nearest_hole(only(subject.construct.plates), worst.along)};
  // To the sampling of the underside, not to rounding.
  if (!(worst.distance <= most + 1e-3)) finding.verdict = Verdict::broken;
  return finding;
}

}  // namespace

std::vector<Rule> plate_rules() {
  return {{"plate span ratio", span_rule},
          {"plate screw density", density_rule},
          {"distance of a locked plate from the bone", standoff_rule}};
}

}  // namespace gapstrain::models
