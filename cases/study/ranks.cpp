#include "cases/study/ranks.h"

#include <fmt/format.h>
#ifdef GAPSTRAIN_MPI
#include <mpi.h>
#endif

#include <chrono>
#include <cstdlib>
#include <limits>
#include <list>
#include <stdexcept>
#include <thread>
#include <utility>

namespace gapstrain::cases {

namespace {

// How many processes mpirun says it started; none when nobody did. Open MPI's and MPICH's word for it.
std::optional<int> started_together() {
  for (const char* name : {"OMPI_COMM_WORLD_SIZE", "PMI_SIZE"})
    if (const char* size = std::getenv(name)) return std::atoi(size);
  return {};
}

}  // namespace

#ifdef GAPSTRAIN_MPI

namespace {

constexpr auto nap = std::chrono::milliseconds(1);

void wait_sleeping(MPI_Request& request) {
  for (int done = 0; true; std::this_thread::sleep_for(nap)) {
    MPI_Test(&request, &done, MPI_STATUS_IGNORE);
    if (done != 0) return;
  }
}

}  // namespace

struct Ranks::Sent {
  struct Parcel {
    std::string text;
    MPI_Request request = MPI_REQUEST_NULL;
  };
  std::list<Parcel> parcels;
};

Ranks::Ranks() {
  if (!started_together()) return;
  int provided = MPI_THREAD_SINGLE;
  MPI_Init_thread(nullptr, nullptr, MPI_THREAD_FUNNELED, &provided);
  if (provided < MPI_THREAD_FUNNELED) throw std::runtime_error("this MPI allows no threads beside it");
  MPI_Comm_rank(MPI_COMM_WORLD, &rank_);
  MPI_Comm_size(MPI_COMM_WORLD, &size_);
  MPI_Comm node = MPI_COMM_NULL;
  MPI_Comm_split_type(MPI_COMM_WORLD, MPI_COMM_TYPE_SHARED, rank_, MPI_INFO_NULL, &node);
  MPI_Comm_size(node, &on_this_node_);
  MPI_Comm_free(&node);
  sent_ = std::make_unique<Sent>();
}

Ranks::~Ranks() {
  if (!sent_) return;
  for (auto& parcel : sent_->parcels) wait_sleeping(parcel.request);
  wait_for_all();
  MPI_Finalize();
}

void Ranks::give_up(int status, const std::string& message) const {
  if (rank_ != 0) std::this_thread::sleep_for(std::chrono::seconds(1));
  fmt::print(stderr, "{}\n", message);
  if (size_ > 1) MPI_Abort(MPI_COMM_WORLD, status);
}

void Ranks::send(int to, int kind, std::string text) {
  if (text.size() > static_cast<std::size_t>(std::numeric_limits<int>::max()))
    throw std::length_error("rows of more than 2 GB belong together; MPI cannot send that");
  std::erase_if(sent_->parcels, [](Sent::Parcel& parcel) {
    int done = 0;
    MPI_Test(&parcel.request, &done, MPI_STATUS_IGNORE);
    return done != 0;
  });
  auto& parcel = sent_->parcels.emplace_back();
  parcel.text = std::move(text);
  MPI_Isend(parcel.text.data(), static_cast<int>(parcel.text.size()), MPI_BYTE, to, kind, MPI_COMM_WORLD,
            &parcel.request);
}

std::optional<Letter> Ranks::receive() {
  if (size_ == 1) return {};
  int arrived = 0, length = 0;
  MPI_Status status;
  MPI_Iprobe(MPI_ANY_SOURCE, MPI_ANY_TAG, MPI_COMM_WORLD, &arrived, &status);
  if (arrived == 0) return {};
  MPI_Get_count(&status, MPI_BYTE, &length);
  Letter letter{status.MPI_SOURCE, status.MPI_TAG, std::string(static_cast<std::size_t>(length), '\0')};
  MPI_Recv(letter.text.data(), length, MPI_BYTE, letter.from, letter.kind, MPI_COMM_WORLD, MPI_STATUS_IGNORE);
  return letter;
}

void Ranks::wait_for_all() {
  if (size_ == 1) return;
  MPI_Request all_here = MPI_REQUEST_NULL;
  MPI_Ibarrier(MPI_COMM_WORLD, &all_here);
  wait_sleeping(all_here);
}

#else

struct Ranks::Sent {};

Ranks::Ranks() {
  if (const int processes = started_together().value_or(1); processes > 1)
    throw std::runtime_error(fmt::format(
        "started as one of {} processes, but built without MPI: each would do all of the work. Start it "
        "alone, with --threads, or build it where MPI is installed",
        processes));
}

Ranks::~Ranks() = default;
void Ranks::give_up(int, const std::string& message) const { fmt::print(stderr, "{}\n", message); }
void Ranks::send(int, int, std::string) {}
std::optional<Letter> Ranks::receive() { return {}; }
void Ranks::wait_for_all() {}

#endif

}  // namespace gapstrain::cases
