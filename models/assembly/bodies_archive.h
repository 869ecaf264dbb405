// Prepared bodies written down and read back: who has neither a mesher nor the time then works on them with the
// same answers, to the last bit.
#pragma once

#include "models/assembly/prepared_bodies.h"

#include <iosfwd>
#include <memory>
#include <stdexcept>
#include <string_view>

namespace gapstrain::models {

// What is read is no archive of bodies, one of another version, or damaged; one sentence.
struct ArchiveError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

// The construct they were made for, its candidates, meshes, ports and compliances; about 1.5 kB a node and 8 bytes
// a pair of port motions. Numbers lie as little-endian machines have them, sizes in 64 bits whatever the machine's
// own. @throw ArchiveError when the stream fails
void write_bodies(std::ostream& stream, const PreparedBodies& prepared);

enum class WholeBodies {
  left_out,  // BuiltBody::body is null: links, outcomes and figures read off forces alone
  factored   // all of them, side by side: fields as well; takes as long as factoring does
};

// @throw ArchiveError, solver::NotElasticError
std::shared_ptr<const PreparedBodies> read_bodies(std::istream& stream, WholeBodies bodies);
// Of bytes that are in memory already.
std::shared_ptr<PreparedBodies> read_bodies(std::string_view bytes, WholeBodies bodies);

// The same without what is read of plates' stress off port forces (LaidPlate::sample), which is most of an
// archive: who reads it factors the bodies, reads stress off fields, and has no PeakStress.
PreparedBodies without_plate_probes(const PreparedBodies& prepared);

// Body number `body` factored, for who read them without: the others as they are. @throw solver::NotElasticError
void factor_body(PreparedBodies& prepared, std::size_t body);

}  // namespace gapstrain::models
