#include "viz/drawing/picture_metadata.h"

#include <cairo-pdf.h>
#include <boost/locale/encoding_utf.hpp>

#include <string_view>

namespace gapstrain::viz {

namespace {

// All but what `apart` says goes elsewhere.
std::string lines_of(const Metadata& metadata, std::initializer_list<std::string_view> apart) {
  std::string lines;
  for (const auto& [name, text] : metadata) {
    bool elsewhere = false;
    for (const auto& other : apart) elsewhere = elsewhere || name == other;
    if (!elsewhere) lines += (lines.empty() ? "" : "\n") + name + ": " + text;
  }
  return lines;
}

std::string escaped(const std::string& text) {
  std::string safe;
  for (const char letter : text) {
    if (letter == '&')
      safe += "&amp;";
    else if (letter == '<')
      safe += "&lt;";
    else if (letter == '>')
      safe += "&gt;";
    else if (static_cast<unsigned char>(letter) >= 0x20 || letter == '\n')  // XML allows no other control letters
      safe += letter;
  }
  return safe;
}

}  // namespace

Metadata metadata_of(const PictureFrame& frame) {
  Metadata metadata = frame.metadata;
  for (const auto& alarm : frame.alarms) metadata.emplace_back("Warning", alarm);
  // Other bytes than UTF-8 would keep a picture from being written at all.
  for (auto& [name, text] : metadata) text = boost::locale::conv::utf_to_utf<char>(text);
  return metadata;
}

std::string latin_1(const std::string& text) {
  std::string letters;
  for (const char32_t letter : boost::locale::conv::utf_to_utf<char32_t>(text))
    letters += letter < 0x100 ? static_cast<char>(letter) : '?';
  return letters;
}

void set_pdf_metadata(cairo_surface_t* pdf, const Metadata& metadata) {
  for (const auto& [name, text] : metadata) {
    if (name == "Title") cairo_pdf_surface_set_metadata(pdf, CAIRO_PDF_METADATA_TITLE, text.c_str());
    if (name == "Software") cairo_pdf_surface_set_metadata(pdf, CAIRO_PDF_METADATA_CREATOR, text.c_str());
  }
  if (const std::string rest = lines_of(metadata, {"Title", "Software"}); !rest.empty())
    cairo_pdf_surface_set_metadata(pdf, CAIRO_PDF_METADATA_SUBJECT, rest.c_str());
}

std::string with_svg_metadata(std::string svg, const Metadata& metadata) {
  std::string told;
  for (const auto& [name, text] : metadata)
    if (name == "Title") told += "<title>" + escaped(text) + "</title>\n";
  if (const std::string rest = lines_of(metadata, {"Title"}); !rest.empty())
    told += "<desc>" + escaped(rest) + "</desc>\n";
  const auto root = svg.find("<svg");
  const auto inside = root == std::string::npos ? root : svg.find('>', root);
  if (inside != std::string::npos) svg.insert(inside + 1, "\n" + told);
  return svg;
}

}  // namespace gapstrain::viz
