// Every key of a lesson file, once: the reader, the help and the messages are all made from this table.
#pragma once

#include "cases/toml/key_table.h"

namespace gapstrain::cases {

const KeyTable& lesson_keys();

}  // namespace gapstrain::cases
