#include "models/assembly/first_state.h"

#include "models/assembly/contact_spots.h"

#include <algorithm>
#include <cassert>
#include <limits>

namespace gapstrain::models {

const std::vector<int>& links_of_tissue(const Assembly& assembly, const Tissue& tissue) {
  const auto filling = std::find_if(assembly.tissues.begin(), assembly.tissues.end(),
                                    [&](const TissueFilling& f) { return f.is_of(tissue); });
  assert(filling != assembly.tissues.end());
  return filling->links;
}

Eigen::VectorXd first_deformations(const Assembly& assembly, Length prebend) {
  const Plate& plate = only(assembly.construct.plates);
  const double fracture =
      only(assembly.plates).shape->along_at(only(assembly.construct.fractures).position.value());
  Eigen::VectorXd initial = assembly.system->initial();
  for (std::size_t k = 0; k < assembly.underside.size(); ++k) {
    const UndersidePlace& place = assembly.underside[k];
    const int normal = assembly.pairs[assembly.face.size() + k].normal;
    initial(assembly.system->first_row(normal)) =
        -(place.gap + prebend_height(plate, fracture, place.along, prebend));
  }
  return initial;
}

Eigen::VectorXd friction_coefficients(const Assembly& assembly, FrictionLaw law) {
  const Contact& contact = assembly.construct.contact;
  const auto under_law = [&](double coefficient) {
    switch (law) {
      case FrictionLaw::none:
        return 0.0;
      case FrictionLaw::stick:
        return std::numeric_limits<double>::infinity();
      default:
        return coefficient;
    }
  };
  Eigen::VectorXd all(static_cast<Eigen::Index>(assembly.pairs.size()));
  const auto faces = static_cast<Eigen::Index>(assembly.face.size());
  all.head(faces).setConstant(under_law(contact.bone_on_bone));
  all.tail(all.size() - faces).setConstant(under_law(contact.plate_on_bone));
  return all;
}

bool stays_at_rest(const Assembly& assembly, const Procedure& procedure) {
  for (const int index : procedure.screws)
    if (is_tightened(assembly.screws[static_cast<std::size_t>(index)].planned.screw)) return false;
  for (const auto& step : procedure.steps)
    for (const int hold : step.place)
      if (!assembly.holds[static_cast<std::size_t>(hold)].wire) return false;
  const Eigen::VectorXd initial = first_deformations(assembly, procedure.prebend);
  return std::all_of(assembly.pairs.begin(), assembly.pairs.end(), [&](const solver::ContactPair& pair) {
    return initial(assembly.system->first_row(pair.normal)) <= 0.0;
  });
}

std::vector<std::vector<int>> links_at_the_end(const Assembly& assembly, const Procedure& procedure) {
  std::vector<std::vector<int>> links;
  const auto fill = [&](const Tissue& tissue) {
    for (const auto& filling : assembly.tissues) std::erase(links, filling.links);
    links.push_back(links_of_tissue(assembly, tissue));
  };
  const auto of_hold = [&](int index) -> const std::vector<int>& {
    return assembly.holds[static_cast<std::size_t>(index)].links;
  };
  const auto of_screw = [&](int index) -> const std::vector<int>& {
    return assembly.screws[static_cast<std::size_t>(index)].links;
  };
  if (only(assembly.construct.fractures).tissue) fill(*only(assembly.construct.fractures).tissue);
  for (const auto& step : procedure.steps) {
    if (step.tissue) fill(*step.tissue);
    for (const int hold : step.place) links.push_back(of_hold(hold));
    for (const int screw : step.insert) links.push_back(of_screw(screw));
    for (const auto& [kind, index] : step.remove)
      std::erase(links, kind == Part::Kind::hold ? of_hold(index) : of_screw(index));
  }
  return links;
}

}  // namespace gapstrain::models
