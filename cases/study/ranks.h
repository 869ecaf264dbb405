// The processes of one command under mpirun, and letters between them. MPI lives here and nowhere else.
#pragma once

#include <memory>
#include <optional>
#include <string>

namespace gapstrain::cases {

struct Letter {
  int from = 0;
  int kind = 0;  // not negative
  std::string text;
};

// One in a process, made and used by its main thread alone; it must outlive all that may throw, so that give_up()
// can be called. Processes are taken to be of one kind of machine: letters may hold numbers as they lie in memory.
class Ranks {
 public:
  // Joins the others when started under mpirun; alone, MPI is not even initialised.
  // @throw std::runtime_error if one of several processes in a program that was built without MPI
  Ranks();
  // Waits for all others.
  ~Ranks();
  Ranks(const Ranks&) = delete;
  Ranks& operator=(const Ranks&) = delete;

  int rank() const { return rank_; }
  int size() const { return size_; }
  int on_this_node() const { return on_this_node_; }

  // Prints a fault of this rank on stderr and ends all ranks, which may be waiting for this one; returns only
  // alone. The first rank goes before the others: most faults are found by all, and are to be said once.
  void give_up(int status, const std::string& message) const;

  // Does not wait. Letters to one rank arrive in the order they were sent.
  void send(int to, int kind, std::string text);
  // The next letter that has arrived.
  std::optional<Letter> receive();
  // Returns once every rank has called it. Sleeps meanwhile: MPI's own waiting keeps a core busy.
  void wait_for_all();

 private:
  struct Sent;  // letters on their way
  std::unique_ptr<Sent> sent_;
  int rank_ = 0, size_ = 1, on_this_node_ = 1;
};

}  // namespace gapstrain::cases
