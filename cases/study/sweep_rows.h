// The rows of a sweep: each the case of its number, solved on bodies that are made once a geometry.
#pragma once

#include "cases/study/body_cache.h"
#include "cases/study/crew.h"
#include "cases/study/study_file.h"

#include <memory>
#include <string>
#include <vector>

namespace gapstrain::cases {

class SweepRows {
 public:
  explicit SweepRows(const StudyFile& study);

  // The table's heading: the varied names, then outcome columns.
  std::string heading() const;

  // How many rows from `row` on are made in one go: few enough for an interrupt, of one geometry if rows come in
  // runs of one.
  std::size_t block(std::size_t row) const;

  // Whether a variable changes what bodies depend on, in the study's order.
  const std::vector<char>& changes_bodies() const { return changes_bodies_; }

  // Called in the thread that makes the rows.
  std::unique_ptr<Worker> hire();

  std::string row(std::size_t row);

  // The construct's own screws and those of other rows that can be beside them, in one order for all rows.
  std::vector<models::Screw> candidates_for(const models::Construct& construct) const;

  // On which rows with the bodies of the case as it stands in its file are solved.
  std::shared_ptr<const models::PreparedBodies> bodies_of_base();

 private:
  const StudyFile& study_;
  std::vector<std::string> names_;
  std::size_t loads_;
  std::vector<models::Screw> screws_;  // of all rows, as far as single variables tell
  std::vector<char> changes_bodies_;
  std::size_t run_ = 1;  // rows of one geometry that follow one another
  BodyCache bodies_;
};

}  // namespace gapstrain::cases
