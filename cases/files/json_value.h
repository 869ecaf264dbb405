// What the parts of findings.json share.
#pragma once

#include <nlohmann/json.hpp>

#include <optional>

namespace gapstrain::cases {

using Json = nlohmann::ordered_json;

// A figure that is not there gets no key.
template <class T>
void put(Json& json, const char* key, const std::optional<T>& value) {
  if (!value) return;
  if constexpr (requires { value->value(); })
    json[key] = value->value();
  else
    json[key] = *value;
}

}  // namespace gapstrain::cases
