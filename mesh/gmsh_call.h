// The one place that turns Gmsh's throws into MeshError. Private to mesh/.
#pragma once

#include "mesh/gmsh_session.h"

#include <exception>
#include <string>
#include <utility>

namespace gapstrain::mesh {

// Runs `call`, which talks to Gmsh in order to do `task` ("mesh the plate"), and returns its result.
// Gmsh 4.8 throws std::string, newer releases std::runtime_error.
// @throw MeshError for whatever `call` throws but a MeshError, which passes unchanged.
template <typename Call>
decltype(auto) gmsh_call(const char* task, Call&& call) {
  const auto sentence = [task](const std::string& reason) {
    return std::string("Gmsh failed to ") + task + ": " + (reason.empty() ? "no reason given" : reason) + ".";
  };
  try {
    return std::forward<Call>(call)();
  } catch (const MeshError&) {
    throw;
  } catch (const std::exception& fault) {
    throw MeshError(sentence(fault.what()));
  } catch (const std::string& fault) {
    throw MeshError(sentence(fault));
  } catch (const char* fault) {
    throw MeshError(sentence(fault));
  } catch (int code) {
    throw MeshError(sentence("code " + std::to_string(code)));
  }
}

}  // namespace gapstrain::mesh
