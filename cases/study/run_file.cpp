#include "cases/study/run_file.h"

#include "cases/files/program_json.h"

#include <nlohmann/json.hpp>

#include <fstream>

namespace gapstrain::cases {

std::string run_text(const Study& study) {
  const Json run = {{"program", program_json()},
                    {"command", study.command},
                    {"fingerprint", study.fingerprint},
                    {"rows", study.rows},
                    {"part", {study.part.number, study.part.of}},
                    {"estimated", study.estimated}};
  return run.dump(2) + '\n';
}

std::optional<Study> read_run(const std::filesystem::path& folder) try {
  std::ifstream stream(folder / run_file_name);
  const auto run = nlohmann::json::parse(stream);
  if (run.at("program").at("name") != "gapstrain") return {};
  return Study{run.at("command").get<std::string>(),
               run.at("fingerprint").get<std::string>(),
               run.at("rows").get<std::size_t>(),
               {run.at("part").at(0).get<std::size_t>(), run.at("part").at(1).get<std::size_t>()},
               run.value("estimated", std::vector<std::string>{})};
} catch (const nlohmann::json::exception&) {
  return {};
}

}  // namespace gapstrain::cases
