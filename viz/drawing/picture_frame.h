// What every picture of a run carries besides its own subject: whose it is, how far its result may be trusted, and
// what is written into its file.
#pragma once

#include <string>
#include <utility>
#include <vector>

namespace gapstrain::viz {

inline constexpr int picture_width = 2000;  // of the sheet that pictures are laid out on

// Vectors are pages 210 mm wide, their views of bodies are pixels in them.
enum class PictureFormat { png, svg, pdf };

using Metadata = std::vector<std::pair<std::string, std::string>>;  // name and text

struct PictureFrame {
  std::string subject;              // patient and case, on top of every picture
  std::vector<std::string> alarms;  // lines of a framed banner under it, the worst first; empty: none
  // Text in the file. A name is one of PNG's keywords where one fits: Title, Author, Description, Copyright,
  // Creation Time, Software, Disclaimer, Warning, Source, Comment.
  Metadata metadata;
  PictureFormat format = PictureFormat::png;
  int width_px = picture_width;  // of PNG files; the height follows
};

// All that a file of this frame says: its metadata, and each alarm as a "Warning".
Metadata metadata_of(const PictureFrame& frame);

}  // namespace gapstrain::viz
