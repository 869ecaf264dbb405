#include "cases/outputs/pictures/picture_frame.h"

#include "cases/cautions.h"
#include "cases/version.h"

#include <fmt/format.h>

#include <utility>

namespace gapstrain::cases {

viz::PictureFrame picture_frame(const PictureStyle& style, const std::string& subject,
                                const std::string& case_file, std::vector<std::string> alarms) {
  viz::PictureFrame frame;
  frame.subject = subject;
  frame.alarms = std::move(alarms);
  frame.metadata = {{"Title", subject},
                    {"Software", program_and_version()},
                    {"Description", "calculated from " + case_file},
                    {"Disclaimer", fmt::format("{}", fmt::join(cautions, " "))}};
  frame.format = style.format;
  frame.width_px = style.width_px;
  return frame;
}

}  // namespace gapstrain::cases
