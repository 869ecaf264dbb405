// A full disk without a disk of one's own: files may not grow beyond a size.
#pragma once

#include <sys/resource.h>

#include <csignal>
#include <cstddef>

namespace gapstrain::tests {

class SmallDisk {
 public:
  explicit SmallDisk(std::size_t room) {
    former_handler_ = std::signal(SIGXFSZ, SIG_IGN);  // so that write() answers EFBIG
    getrlimit(RLIMIT_FSIZE, &former_);
    rlimit small = former_;
    small.rlim_cur = room;
    setrlimit(RLIMIT_FSIZE, &small);
  }
  ~SmallDisk() {
    setrlimit(RLIMIT_FSIZE, &former_);
    std::signal(SIGXFSZ, former_handler_);
  }
  SmallDisk(const SmallDisk&) = delete;
  SmallDisk& operator=(const SmallDisk&) = delete;

 private:
  rlimit former_{};
  void (*former_handler_)(int) = nullptr;
};

}  // namespace gapstrain::tests
