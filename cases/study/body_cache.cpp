#include "cases/study/body_cache.h"

#include "models/preparation/prepare_bodies.h"

#include <algorithm>

namespace gapstrain::cases {

std::shared_ptr<const BodyCache::Bodies> BodyCache::get(const models::Construct& construct,
                                                        const std::vector<models::Screw>& candidates) {
  std::promise<std::shared_ptr<const Bodies>> promise;
  {
    std::unique_lock lock(mutex_);
    const auto found = std::find_if(entries_.begin(), entries_.end(), [&](const Entry& entry) {
      return models::have_same_bodies(entry.construct, entry.candidates, construct, candidates);
    });
    if (found != entries_.end()) {
      entries_.splice(entries_.begin(), entries_, found);
      const auto bodies = entries_.front().bodies;
      lock.unlock();
      return bodies.get();
    }
    entries_.push_front({construct, candidates, promise.get_future().share()});
    if (entries_.size() > kept_) entries_.pop_back();
  }
  try {
    const auto prepared = models::prepare_bodies(models::with_moduli_of(construct, reference_), candidates);
    auto bodies = std::make_shared<const Bodies>(
        Bodies{prepared, models::PeakStress(*prepared, models::PlatePlaces::likely_and_sample)});
    promise.set_value(bodies);
    return bodies;
  } catch (...) {
    promise.set_exception(std::current_exception());
    throw;
  }
}

}  // namespace gapstrain::cases
