// The house's own rules, read from the tree.
#include <catch2/catch.hpp>

#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;

const fs::path root = GAPSTRAIN_SOURCE_DIR;
const std::vector<std::string> layers = {"mesh", "solver", "models", "viz", "cases"};

// The rooms of each layer that has some, from the lowest to the highest: an include points down or stays.
// Files of the layer's own folder (the program, cautions, version) belong to no room.
const std::map<std::string, std::vector<std::string>> rooms = {
    {"solver", {"precompiled", "elements", "host", "bodies", "motion", "native", "plain"}},
    {"models", {"parts",   "statistics", "geometry", "checks",  "assembly",    "loaded",  "findings",
                "stress",  "measures",   "margins",  "rules",   "race",        "plan",    "catalogue",
                "layouts", "assessment", "words",    "patient", "preparation", "evidence"}},
    {"viz", {"drawing", "construct", "fracture", "study", "plan", "compared"}},
    {"cases",
     {"text", "files", "toml", "figures", "reader", "progress", "study", "outputs/sentences", "outputs/json",
      "outputs/tables", "outputs/pictures", "outputs/studies", "outputs", "answers", "page", "lessons", "new_case",
      "help", "commands"}}};

bool is_source(const fs::path& file) { return file.extension() == ".cpp" || file.extension() == ".h"; }

// By their paths from `tree`.
std::vector<fs::path> sources(const fs::path& tree, const std::string& folder) {
  std::vector<fs::path> files;
  if (!fs::exists(tree / folder)) return files;
  for (const auto& entry : fs::recursive_directory_iterator(tree / folder))
    if (is_source(entry.path())) files.push_back(entry.path().lexically_relative(tree));
  return files;
}

std::vector<fs::path> sources(const std::string& folder) {
  auto files = sources(root, folder);
  REQUIRE_FALSE(files.empty());
  return files;
}

std::vector<std::string> lines(const fs::path& file) {
  std::ifstream stream(file);
  std::vector<std::string> all;
  for (std::string line; std::getline(stream, line);) all.push_back(line);
  return all;
}

std::vector<std::string> included(const fs::path& file, const std::regex& include) {
  std::vector<std::string> all;
  for (const auto& line : lines(file)) {
    std::smatch match;
    if (std::regex_search(line, match, include)) all.push_back(match[1]);
  }
  return all;
}

std::vector<std::string> includes(const fs::path& file) {
  static const std::regex include(R"re(#include "([^"]+)")re");
  return included(file, include);
}

// "stress" of "models/stress/fatigue.h"; empty in the layer's own folder.
std::string room_of(const fs::path& file) {
  return file.parent_path().lexically_relative(*file.begin()).generic_string();
}

// Rooms that are not on the list.
std::vector<std::string> unknown_rooms(const fs::path& tree) {
  std::vector<std::string> faults;
  for (const auto& [layer, known] : rooms)
    for (const auto& file : sources(tree, layer)) {
      const auto room = room_of(file);
      if (room != "." && std::find(known.begin(), known.end(), room) == known.end())
        faults.push_back(file.generic_string());
    }
  return faults;
}

// Includes of a higher room of the same layer, "models/stress/a.h -> models/race/race.h".
std::vector<std::string> against_the_flow(const fs::path& tree) {
  std::vector<std::string> faults;
  for (const auto& [layer, known] : rooms) {
    const auto height = [&known](const fs::path& file) {
      return std::find(known.begin(), known.end(), room_of(file)) - known.begin();
    };
    for (const auto& file : sources(tree, layer)) {
      if (room_of(file) == ".") continue;
      for (const auto& include : includes(tree / file)) {
        const fs::path target = include;
        if (*target.begin() == layer && room_of(target) != "." && height(target) > height(file))
          faults.push_back(file.generic_string() + " -> " + include);
      }
    }
  }
  return faults;
}

// Folders with more than 45 headers and sources, those below not counted.
std::vector<std::string> crowded_folders(const fs::path& tree) {
  constexpr int most = 45;
  std::map<std::string, int> sizes;
  auto folders = layers;
  folders.push_back("tests");
  for (const auto& folder : folders)
    for (const auto& file : sources(tree, folder)) ++sizes[file.parent_path().generic_string()];
  std::vector<std::string> faults;
  for (const auto& [folder, size] : sizes)
    if (size > most) faults.push_back(folder);
  return faults;
}

// What other hosts compile as well: whoever meshes, factors, draws or runs threads is not among it.
const std::vector<std::string> core = {
    "solver/elements",   "solver/host",       "solver/bodies",   "solver/motion",    "solver/plain",
    "models/parts",      "models/statistics", "models/geometry", "models/checks",    "models/assembly",
    "models/loaded",     "models/findings",   "models/stress",   "models/measures",  "models/margins",
    "models/rules",      "models/race",       "models/plan",     "models/catalogue", "models/layouts",
    "models/assessment", "models/words",      "models/patient",  "cases/text",       "cases/toml",
    "cases/figures",     "cases/reader",      "cases/answers"};

// Headers of Gmsh, CHOLMOD, BLAS, VTK, threads and POSIX that a file of the core reads, itself or through others:
// "models/race/race.cpp reads <mutex> in mesh/gmsh_session.h".
std::vector<std::string> hosts_in_core(const fs::path& tree) {
  static const std::regex host(
      R"re(#include <((gmsh|cholmod|Eigen/CholmodSupport|cblas|vtk|cairo|thread|mutex|shared_mutex|future|atomic|)re"
      R"re(condition_variable|semaphore|barrier|latch|stop_token|pthread|omp|unistd|fcntl|signal|dlfcn|malloc|sys/|mpi)[^>]*)>)re");
  std::vector<std::string> faults;
  for (const auto& folder : core)
    for (const auto& file : sources(tree, folder)) {
      std::set<std::string> read{file.generic_string()};
      std::vector<std::string> to_read{file.generic_string()};
      while (!to_read.empty()) {
        const auto next = to_read.back();
        to_read.pop_back();
        for (const auto& header : included(tree / next, host))
          faults.push_back(file.generic_string() + " reads <" + header + "> in " + next);
        for (const auto& include : includes(tree / next))
          if (read.insert(include).second) to_read.push_back(include);
      }
    }
  return faults;
}

// A tree of its own in which a rule is broken on purpose.
class PlantedTree {
 public:
  PlantedTree() : path_(fs::temp_directory_path() / ("gapstrain_structure_" + std::to_string(::getpid()))) {
    fs::remove_all(path_);
  }
  ~PlantedTree() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  PlantedTree(const PlantedTree&) = delete;
  PlantedTree& operator=(const PlantedTree&) = delete;

  const fs::path& path() const { return path_; }
  void write(const fs::path& file, const std::string& text) const {
    fs::create_directories((path_ / file).parent_path());
    std::ofstream(path_ / file) << text;
  }

 private:
  fs::path path_;
};

using Texts = std::vector<std::string>;

}  // namespace

TEST_CASE("an include points to its own layer or to one below it", "[structure]") {
  const std::regex include(R"(#include ["<](\w+)/)");
  for (std::size_t layer = 0; layer < layers.size(); ++layer) {
    for (const auto& file : sources(layers[layer])) {
      for (const auto& line : lines(root / file)) {
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

TEST_CASE("an include points to its own room of a layer or to one below it", "[structure]") {
  CHECK(against_the_flow(root) == Texts{});
  const PlantedTree planted;
  planted.write("models/stress/fatigue.h", "#include \"models/parts/units.h\"\n#include \"models/race/race.h\"\n");
  planted.write("cases/outputs/json/race_json.h", "#include \"cases/outputs/sentences/remark.h\"\n");
  planted.write("cases/outputs/sentences/remark.h", "#include \"cases/outputs/write_outputs.h\"\n");
  CHECK(against_the_flow(planted.path()) ==
        Texts{"cases/outputs/sentences/remark.h -> cases/outputs/write_outputs.h",
              "models/stress/fatigue.h -> models/race/race.h"});
}

TEST_CASE("every room has a name of the list", "[structure]") {
  CHECK(unknown_rooms(root) == Texts{});
  for (const auto& [layer, known] : rooms)
    for (const auto& room : known) {
      INFO(layer << "/" << room);
      CHECK(fs::is_directory(root / layer / room));
    }
  const PlantedTree planted;
  planted.write("models/build/assembly.h", "");
  planted.write("models/assembly/assembly.h", "");
  planted.write("cases/program.h", "");
  CHECK(unknown_rooms(planted.path()) == Texts{"models/build/assembly.h"});
}

TEST_CASE("no folder holds more than 45 headers and sources", "[structure]") {
  CHECK(crowded_folders(root) == Texts{});
  const PlantedTree planted;
  for (int i = 0; i < 46; ++i) planted.write("viz/study/picture_" + std::to_string(i) + ".cpp", "");
  for (int i = 0; i < 45; ++i) planted.write("viz/plan/picture_" + std::to_string(i) + ".h", "");
  CHECK(crowded_folders(planted.path()) == Texts{"viz/study"});
}

TEST_CASE("the core reads no header of a mesher, a factoring library, a screen, threads or POSIX", "[structure]") {
  for (const auto& folder : core) {
    INFO(folder);
    CHECK(fs::is_directory(root / folder));
  }
  CHECK(hosts_in_core(root) == Texts{});
  const PlantedTree planted;
  planted.write("mesh/gmsh_session.h", "#include <mutex>\n");
  planted.write("models/race/race.cpp", "#include \"mesh/gmsh_session.h\"\n");
  planted.write("models/stress/fatigue.cpp", "#include <vector>\n");
  planted.write("cases/reader/read_case.cpp", "#include <sys/resource.h>\n");
  CHECK(hosts_in_core(planted.path()) ==
        Texts{"models/race/race.cpp reads <mutex> in mesh/gmsh_session.h",
              "cases/reader/read_case.cpp reads <sys/resource.h> in cases/reader/read_case.cpp"});
}

TEST_CASE("only mesh knows Gmsh, only viz knows VTK, only the case reader knows TOML", "[structure]") {
  const auto check_private = [](const std::regex& include, const std::string& home) {
    for (const auto& layer : layers)
      for (const auto& file : sources(layer))
        for (const auto& line : lines(root / file)) {
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
      CHECK(lines(root / file).size() <= 400);
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
