// Which program this is: what every output names, so that a result can be traced to the sources that made it.
#pragma once

#include <string>

namespace gapstrain::cases {

// "0.1.0".
const char* version();

// Of the sources it was built from: twelve hexadecimal digits, with "-modified" behind them where files differed
// from that commit; "unknown" outside a git checkout.
const char* commit();

// Of that commit, as 2026-01-31; empty where the commit is unknown.
const char* commit_date();

// "gapstrain 0.1.0 (commit 0123456789ab)".
std::string program_and_version();

}  // namespace gapstrain::cases
