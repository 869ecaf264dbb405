// Contact of pairs on the links in place. Only pairs that would meet, or did, take part in the problem: what the
// others see is looked at afterwards, and those that would overlap join in. Of a hundred pairs few ever meet.
#pragma once

#include "solver/bodies/contact.h"
#include "solver/bodies/links_in_place.h"
#include "solver/bodies/pressed.h"
#include "solver/bodies/sections_on_links.h"

#include <Eigen/Core>

#include <vector>

namespace gapstrain::solver {

// What pairs see of the links is worked out once a pair; hands may move in between. Sections may yield beside it.
class ContactOnLinks {
 public:
  ContactOnLinks(const System& system, const std::vector<ContactPair>& pairs, const Eigen::VectorXd& friction,
                 const LinksInPlace& links);

  // Begins from an answer without flow; from here on `sections` flow where they must. Borrowed.
  void let_flow(SectionsOnLinks& sections, const PressedForces& near);

  bool yields() const { return sections_ != nullptr; }

  // `start`: pairs taken closed at first; may be empty.
  PressedForces find(const std::vector<char>& start);

 private:
  void join(const Rows& rows);
  void take_in(const std::vector<int>& pairs);
  bool let_rub(const ContactAnswer& answer);
  ContactAnswer solve(const std::vector<char>& start);
  PressedForces pressed(const LinksInPlace::Carried& carried, const Eigen::VectorXd& gaps,
                        const ContactAnswer& answer) const;

  const System& system_;
  const std::vector<ContactPair>& pairs_;
  const Eigen::VectorXd& friction_;
  const LinksInPlace& links_;
  Rows normals_;  // of all pairs
  SectionsOnLinks* sections_ = nullptr;

  // Rows in the problem as they joined, what they see of the links, and their last push.
  Rows joined_;
  Elimination::Columns columns_;
  Eigen::MatrixXd compliance_;
  Eigen::VectorXd push_;

  std::vector<int> in_;         // pairs in the problem
  std::vector<char> is_in_;     // of all pairs
  std::vector<int> rubbing_;    // those with tractions, by their place in in_
  std::vector<int> normal_at_;  // places among the joined rows: normals of in_, first tractions of rubbing_
  std::vector<int> tangent_at_;
};

// Contact on links while sections flow: what `press_yielding` asks for once an answer without flow asks too much
// of a section.
struct FlowedState {
  PressedState pressed;
  Eigen::VectorXd flow;      // of this increment: of each section, N mm,
  Eigen::MatrixXd deformed;  // and its deformation in the section's axes (6 x sections)
};

// `near`: the answer without flow, to start from. `flow_before`: of each section since it was new.
FlowedState press_with_flow(const System& system, const std::vector<ContactPair>& pairs,
                            const std::vector<YieldSection>& sections, const Setting& setting,
                            const PortLoads& loads, const Eigen::VectorXd& flow_before, const PressedForces& near);

}  // namespace gapstrain::solver
