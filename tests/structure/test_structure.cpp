// The house's own rules, read from the tree.
#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;

const fs::path root = GAPSTRAIN_SOURCE_DIR;
const std::vector<std::string> layers = {"mesh", "solver", "models", "viz", "cases"};

std::vector<fs::path> sources(const std::string& folder) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::recursive_directory_iterator(root / folder)) {
    const auto extension = entry.path().extension();
    if (extension == ".cpp" || extension == ".h") files.push_back(entry.path());
  }
  REQUIRE_FALSE(files.empty());
  return files;
}

std::vector<std::string> lines(const fs::path& file) {
  std::ifstream stream(file);
  std::vector<std::string> all;
  for (std::string line; std::getline(stream, line);) all.push_back(line);
  return all;
}

}  // namespace

TEST_CASE("an include points to its own layer or to one below it", "[structure]") {
  const std::regex include(R"(#include ["<](\w+)/)");
  for (std::size_t layer = 0; layer < layers.size(); ++layer) {
    for (const auto& file : sources(layers[layer])) {
      for (const auto& line : lines(file)) {
        std::smatch match;
        if (!std::regex_search(line, match, include)) continue;
        const auto target = std::find(layers.begin(), layers.end(), match[1].str()) - layers.begin();
        const bool is_tests = match[1].str() == "tests";
        INFO(file << ": " << line);
        CHECK_FALSE(is_tests);
        if (target < static_cast<std::ptrdiff_t>(layers.size()))
          CHECK(target <= static_cast<std::ptrdiff_t>(layer));
      }
    }
  }
}

TEST_CASE("only mesh knows Gmsh, only viz knows VTK, only the case reader knows TOML", "[structure]") {
  const auto check_private = [](const std::regex& include, const std::string& home) {
    for (const auto& layer : layers)
      for (const auto& file : sources(layer))
        for (const auto& line : lines(file)) {
          INFO(file << ": " << line);
          if (std::regex_search(line, include)) CHECK(layer == home);
        }
  };
  check_private(std::regex(R"(#include [<"]gmsh)"), "mesh");
  check_private(std::regex(R"(#include [<"]vtk)"), "viz");
  check_private(std::regex(R"(#include [<"]toml\+\+)"), "cases");
}

TEST_CASE("no source file is longer than 400 lines", "[structure]") {
  auto folders = layers;
  folders.push_back("tests");
  for (const auto& folder : folders)
    for (const auto& file : sources(folder)) {
      INFO(file);
      CHECK(lines(file).size() <= 400);
    }
}

TEST_CASE("the top level holds what the design card names and nothing else", "[structure]") {
  const std::set<std::string> allowed = {"CMakeLists.txt", "README.md", "DEVELOPERS.md", "LICENSE", "solver",
                                         "mesh",           "models",    "cases",         "tests",   "viz"};
  for (const auto& entry : fs::directory_iterator(root)) {
    const std::string name = entry.path().filename().string();
    INFO(name);
    if (name.front() != '.') CHECK(allowed.contains(name));
  }
}
