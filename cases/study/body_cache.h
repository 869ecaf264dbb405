// The bodies of a study's rows, made once a geometry and shared by all threads.
#pragma once

#include "models/stress/peak_stress.h"

#include <future>
#include <list>
#include <memory>
#include <mutex>
#include <vector>

namespace gapstrain::cases {

// Holds the geometries that were asked for last. What a row gets depends on its own construct alone.
class BodyCache {
 public:
  // `reference`: the construct whose moduli all bodies are factored with; kept: geometries held at a time.
  BodyCache(const models::Construct& reference, std::size_t kept) : reference_(reference), kept_(kept) {}

  struct Bodies {
    std::shared_ptr<const models::PreparedBodies> prepared;
    models::PeakStress peak;
  };

  // Makes them, waits for a thread that is making them, or has them. @throw what prepare_bodies throws
  std::shared_ptr<const Bodies> get(const models::Construct& construct,
                                    const std::vector<models::Screw>& candidates);

 private:
  struct Entry {
    models::Construct construct;
    std::vector<models::Screw> candidates;
    std::shared_future<std::shared_ptr<const Bodies>> bodies;
  };
  models::Construct reference_;
  std::size_t kept_;
  std::mutex mutex_;
  std::list<Entry> entries_;  // the last asked for first
};

}  // namespace gapstrain::cases
