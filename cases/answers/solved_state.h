// One state of a case on bodies that are there: read, linked, made and loaded, each once it is asked for.
#pragma once

#include "cases/reader/read_case.h"
#include "models/assembly/assembly.h"
#include "models/assembly/insertion.h"
#include "models/assessment/assess.h"

#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

namespace gapstrain::cases {

// A state asks for bodies that were not made ready: a sentence.
struct NotPreparedError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

class SolvedState {
 public:
  // `text`: the case's, as it was read. @throw NotPreparedError
  SolvedState(CaseFile file, std::shared_ptr<const models::PreparedBodies> prepared);

  const CaseFile& file() const { return file_; }
  const models::Construct& construct() const { return file_.construct; }
  const models::PreparedBodies& prepared() const { return *prepared_; }
  const std::vector<models::Screw>& screws() const { return screws_; }

  // @throw ModelError, as all below
  const models::Assembly& assembly();
  const models::Procedure& procedure();
  const std::vector<models::StepState>& steps();
  const std::vector<models::ConstructState>& loads();
  // Positions in the assembly's screws of those that are in after the last step.
  std::vector<int> in_place();

  // Bodies that were factored meanwhile.
  void take_whole_bodies();

  // With the race only when `extent` is whole. @pre bodies are factored, as for all below
  const models::AssessedConstruct& assessed(models::Extent extent, bool with_race);
  // Goes one piece further from the margins to the verdict, so that a host may do something else in between: the
  // buckling of one load, then the other links of screws in bone. How many pieces are left.
  std::size_t judge_one_more();
  // What `assessed` found last. @pre it was asked for
  const models::AssessedConstruct& found() const { return *assessed_; }
  models::LoadFields load_fields(std::size_t load);
  models::StepFields step_fields(std::size_t step);

 private:
  CaseFile file_;
  std::shared_ptr<const models::PreparedBodies> prepared_;
  std::vector<models::Screw> screws_;  // candidates, the construct's own in their places
  std::vector<int> chosen_;            // positions of the construct's own, in its order
  std::optional<models::Assembly> assembly_;
  std::optional<models::SolvedCase> solved_;
  std::optional<models::AssessedConstruct> assessed_;
  models::Extent extent_ = models::Extent::margins;  // of what is assessed
  std::size_t buckled_ = 0;                          // loads whose buckling is known
  bool with_race_ = false;
};

}  // namespace gapstrain::cases
