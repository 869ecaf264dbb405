// Every admissible choice of screws on a plate: kinds that fit their holes, so many a fragment, no two screws in
// each other's way.
#pragma once

#include "models/parts/construct.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

class Layouts {
 public:
  static constexpr std::size_t most = 20'000'000;

  // Of a construct with layout rules. Its lag screws stay as they are. @throw ModelError with a sentence when
  // there is none, or more than `most`
  explicit Layouts(const Construct& construct);

  // All screws that may be chosen, one a hole, then those that stay: what `assemble` makes ports for.
  const std::vector<Screw>& candidates() const { return candidates_; }

  std::size_t size() const { return codes_.size(); }

  // Positions in `candidates` of the screws of layout `row`, by hole; with ball heads among the candidates, which
  // leave traces of their order, the construct's own screws first as it has them.
  std::vector<int> chosen(std::size_t row) const;

  // The layout that the construct has; nothing when it is not admissible.
  std::optional<std::size_t> own() const { return own_; }

  // Holes that can take no screw, a sentence each.
  const std::vector<std::string>& left_out() const { return left_out_; }

 private:
  void find_candidates(const Construct& construct);
  void find_conflicts(const Construct& construct);
  void enumerate(const Construct& construct);

  struct Place {
    int candidate = 0;
    std::size_t fragment = 0;
  };
  std::vector<Screw> candidates_;
  std::vector<std::optional<Place>> holes_;   // of those that can take a screw
  std::vector<int> staying_;                  // candidates in every layout
  std::vector<std::vector<char>> conflicts_;  // of candidates
  std::vector<int> order_;                    // candidates in the order in which they go in
  std::vector<std::uint64_t> codes_;          // a bit a hole, the first one highest
  std::optional<std::size_t> own_;
  std::vector<std::string> left_out_;
};

}  // namespace gapstrain::models
