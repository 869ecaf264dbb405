// Every key of a study file, once: the reader, the help and the messages are all made from this table.
#pragma once

#include "cases/toml/key_table.h"

namespace gapstrain::cases {

const KeyTable& study_keys();

}  // namespace gapstrain::cases
