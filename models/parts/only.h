// Lists that have one entry so far.
#pragma once

#include <cassert>
#include <vector>

namespace gapstrain::models {

// The one entry, for what does not yet look at several plates or fractures: whoever looks at several begins where
// this is called. @pre there is one, as `check` asks for
template <class Entry>
Entry& only(std::vector<Entry>& list) {
  assert(list.size() == 1);
  return list.front();
}
template <class Entry>
const Entry& only(const std::vector<Entry>& list) {
  assert(list.size() == 1);
  return list.front();
}

}  // namespace gapstrain::models
