// A case as JSON and back, and the changes by which a state of it differs from how it was entered.
#pragma once

#include "cases/files/json_value.h"
#include "cases/toml/document.h"

#include <stdexcept>
#include <string>

namespace gapstrain::cases {

// What is no case, no changes, or no request: a sentence.
struct RequestError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

// Dates and times become null: no case has them.
Json to_json(const Table& table);
Json to_json(const Value& value);

// Places are those of a text of one line: what is changed stands in no file. @throw RequestError
Table table_of(const Json& json);

// A merge patch (P. Hoffman and J. Snell 2014, RFC 7396): tables merge key by key, null takes a key away, anything
// else takes the place of what was there.
void patch(Json& target, const Json& changes);

// Whatever the order of their keys.
bool are_same(const Json& one, const Json& other);

// The patch that makes `to` of `from`, as short as one by whole values can be. Both tables.
Json difference(const Json& from, const Json& to);

}  // namespace gapstrain::cases
