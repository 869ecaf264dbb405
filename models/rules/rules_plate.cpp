// The plate's length, how many of its holes are filled, and how far it stands off the bone.
#include "models/rules/rules_subject.h"

#include <fmt/format.h>

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
  finding.bound =
      fmt::format("at least {} to {} for a {} fracture", least, ample, simple ? "simple" : "comminuted");
  finding.source = gautier_sommer;
  const double plate = subject.construct.plate.length.value(), fracture = subject.cut.length();
  if (!(fracture > 0.0)) return not_applicable(finding, "the fracture is closed and transverse: it has no length");
  finding.figure = fmt::format(
      "{:.3g} ({:.3g} mm of plate over {:.3g} mm of fracture along the bone{})", plate / fracture, plate, fracture,
      subject.construct.fracture.obliquity > 0.0 * degree ? ", its obliquity included" : "");
  if (subject.treatment == Treatment::neutralisation)
    return not_applicable(finding, "lag screws hold the fracture over its length; " + finding.figure);
  if (at_least(plate / fracture, least)) return finding;
  const double needed = std::ceil(least * fracture - 1e-9);
  if (needed < subject.bone.length())
    break_rule(finding, fmt::format("Choose a plate of at least {:.0f} mm.", needed));
  else
    break_rule(finding,
               fmt::format("A ratio of {:.0f} takes {:.0f} mm and the bone is {:.3g} mm long: choose the longest "
                           "plate it takes, and {}.",
                           least, needed, subject.bone.length(),
                           simple ? "press the fracture with lag screws" : "support the plate, as by a rod"));
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
  finding.bound = "at most 0.5 when bridging";
  finding.source = std::string(gautier_sommer) + "; no more than half of the holes: open surgical text";
  const int filled = holes_filled(subject), holes = static_cast<int>(subject.construct.plate.holes.size());
  const double density = static_cast<double>(filled) / holes;
  finding.figure = fmt::format("{:.2f} ({} of {} holes filled)", density, filled, holes);
  if (subject.treatment != Treatment::bridging)
    return not_applicable(finding, "the fracture is pressed; " + finding.figure);
  if (at_most(density, most)) return finding;
  std::string advice =
      fmt::format("Choose a plate with at least {} holes for these {} screws", 2 * filled, filled);
  if (const int may_stay = holes / 2; may_stay >= least_screws)
    advice += fmt::format(", or leave {} of the filled holes empty", filled - may_stay);
  break_rule(finding, advice + ".");
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
  finding.bound = "at most 2 mm";
  finding.source = "Ahmad et al. 2007, Injury 38 (from memory)";
  const bool locks = std::any_of(subject.screws.begin(), subject.screws.end(), [](const SeatedScrew& s) {
    return s.stays && s.screw->kind == ScrewKind::locking;
  });
  if (!locks) return not_applicable(finding, "no screw locks in the plate");
  const RuleSite::Standoff& worst = subject.site->highest;
  const int hole = nearest_hole(subject.construct.plate, worst.along);
  const bool straight = subject.construct.plate.contour == Contour::straight;
  finding.figure = straight ? fmt::format("up to {:.3g} mm, near hole {}", worst.distance, hole)
                            : fmt::format("{:.3g} mm", worst.distance);
  // To the sampling of the underside, not to rounding.
  if (worst.distance <= most + 1e-3) return finding;
  break_rule(finding,
             straight
                 ? fmt::format("Bend the plate to the bone near hole {}: it stands {:.3g} mm too far off there.",
                               hole, worst.distance - most)
                 : fmt::format("Bring the plate {:.3g} mm closer to the bone before it is locked.",
                               worst.distance - most));
  return finding;
}

}  // namespace

std::vector<Rule> plate_rules() {
  return {{"plate span ratio", span_rule},
          {"plate screw density", density_rule},
          {"distance of a locked plate from the bone", standoff_rule}};
}

}  // namespace gapstrain::models
