// A display for VTK to render on where there is none.
#pragma once

#include <memory>
#include <stdexcept>

namespace gapstrain::viz {

struct DisplayError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

// With a DISPLAY that answers: nothing. Otherwise: a virtual X server (Xvfb) of this process' own, found a free
// number by the server itself, ended with this object also when the process fails or is interrupted. DISPLAY of
// this process is set meanwhile; make the object on a thread that outlives it, before other threads read the
// environment.
// @throw DisplayError when there is neither a display nor Xvfb.
class VirtualDisplay {
 public:
  VirtualDisplay();
  ~VirtualDisplay();
  VirtualDisplay(const VirtualDisplay&) = delete;
  VirtualDisplay& operator=(const VirtualDisplay&) = delete;

 private:
  struct Server;
  std::unique_ptr<Server> server_;
};

}  // namespace gapstrain::viz
