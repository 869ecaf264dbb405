// A page's core: states of a case are asked for, answered in JSON and bytes, on bodies made ready once.
#pragma once

#include "cases/answers/byte_block.h"
#include "cases/answers/page_pack.h"
#include "cases/answers/solved_state.h"
#include "models/assembly/prepared_bodies.h"

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gapstrain::cases {

struct Answer {
  std::string text;   // JSON
  std::string bytes;  // what the text's {offset, count} point into
  bool is_fault = false;
};

class PageSession {
 public:
  // @throw RequestError, models::ArchiveError
  explicit PageSession(std::string pack);

  // What never changes: plate, holes and what may go into them, loads, bodies at rest.
  Answer opened();

  // A state, see DEVELOPERS.md, "The page". Never throws: what is wrong is said by the answer.
  Answer ask(std::string_view text);

  // The state asked about last. @pre it was solved without a fault
  const SolvedState& last() const { return *last_; }

  // Factors one body that is not yet, for fields and whole analyses to come. Whether more are left.
  bool factor_one_more();

 private:
  struct Variant {
    std::string label;
    Json entered;  // the case's tables with the variant's changes
    std::string_view bodies;
    std::shared_ptr<models::PreparedBodies> prepared;  // once it is asked for
  };
  Variant& variant(std::size_t number);
  SolvedState& state_of(const Json& changed, std::size_t number);
  // What `request` asks of the case's tables as they are `changed`, into the answer.
  void solve(Json& answer, const Json& changed, const Json& request, ByteBlock& bytes);
  void factor_all(Variant& variant);

  std::string bytes_;
  PagePack pack_;
  std::vector<Variant> variants_;
  std::unique_ptr<SolvedState> last_;
  std::size_t last_number_ = 0;  // of its variant
};

}  // namespace gapstrain::cases
