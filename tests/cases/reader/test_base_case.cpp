// Cases given as changes to a base case, as files on the disk.
#include "cases/reader/read_case.h"
#include "tests/cases/as_a_user/run_program.h"

#include <catch2/catch.hpp>

#include <filesystem>

using namespace gapstrain;
using namespace gapstrain::cases;

namespace {

namespace fs = std::filesystem;
using Catch::Matchers::Contains;

const fs::path examples = GAPSTRAIN_EXAMPLES;

// The shortest example and a file of changes beside it.
class Changed {
 public:
  explicit Changed(const std::string& changes) {
    fs::copy_file(examples / "minimal.toml", folder_.path() / "minimal.toml");
    write("changed.toml", changes);
  }

  void write(const std::string& name, const std::string& text) const {
    gapstrain::tests::write_file(folder_.path() / name, text);
  }
  CaseFile read() const { return read_case(folder_.path() / "changed.toml"); }
  std::string fault() const {
    try {
      read();
    } catch (const CaseError& error) {
      return error.what();
    }
    return "no fault";
  }

 private:
  gapstrain::tests::ScratchFolder folder_;
};

}  // namespace

TEST_CASE("a case of changes is its base with the changes made", "[cases][reader]") {
  const auto base = read_case(examples / "minimal.toml").construct;
  const Changed file("base = \"minimal.toml\"\n[fracture]\ngap = \"1.25 mm\"\n[plate]\nstandoff = \"0.7 mm\"\n");
  const auto changed = file.read().construct;
  CHECK(only(changed.fractures).gap.value() == 1.25);
  CHECK(only(changed.fractures).position == only(base.fractures).position);
  CHECK(only(changed.plates).standoff.value() == 0.7);
  CHECK(only(changed.plates).holes == only(base.plates).holes);
  CHECK(changed.bone == base.bone);
  CHECK(changed.screws == base.screws);
}

TEST_CASE("a list of changes takes the place of the base's list", "[cases][reader]") {
  const Changed file("base = \"minimal.toml\"\n[[screw]]\nholes = [1, 2, 8]\nsize = \"locking 3.5\"\n");
  CHECK(file.read().construct.screws.size() == 3);
}

TEST_CASE("keys named in without fall away from the base", "[cases][reader]") {
  const Changed file(
      "base = \"minimal.toml\"\nwithout = [\"plate.holes\", \"plate.pitch\", \"plate.hole_diameter\"]\n"
      "[[plate.hole]]\nposition = \"3 mm\"\ndiameter = \"3 mm\"\n");
  CHECK_THAT(file.fault(), !Contains("belongs to a row of holes"));
  const Changed kept("base = \"minimal.toml\"\n[[plate.hole]]\nposition = \"3 mm\"\ndiameter = \"3 mm\"\n");
  CHECK_THAT(kept.fault(), Contains("belongs to a row of holes"));
}

TEST_CASE("the text of a case put together is the whole case", "[cases][reader]") {
  const Changed file("base = \"minimal.toml\"\nname = \"with \\\"quotes\\\"\"\n[fracture]\ngap = \"1.25 mm\"\n");
  const CaseFile changed = file.read();
  const CaseFile again = read_case_text("whole.toml", changed.text);
  CHECK(again.construct.name == "with \"quotes\"");
  CHECK(only(again.construct.fractures) == only(changed.construct.fractures));
  CHECK(only(again.construct.plates) == only(changed.construct.plates));
  CHECK(again.construct.screws == changed.construct.screws);
  CHECK(again.text == changed.text);
}

TEST_CASE("faults of a base case stand in the file they are in", "[cases][reader]") {
  const Changed file("base = \"wrong.toml\"\n");
  CHECK_THAT(file.fault(), Contains("wrong.toml\", but there is no such file"));
  file.write("wrong.toml", "name = \"x\"\n[bone]\nlenght = \"3 mm\"\n");
  CHECK_THAT(file.fault(), Contains("wrong.toml:3:1: bone.lenght: unknown key; did you mean"));
}

TEST_CASE("faults of changes stand in the file of changes", "[cases][reader]") {
  CHECK_THAT(Changed("base = \"minimal.toml\"\n[fracture]\ngap = \"-1 mm\"\n").fault(),
             Contains("changed.toml:3:7: fracture.gap"));
  CHECK_THAT(Changed("base = 3\n").fault(), Contains("found 3; the name of a case file is wanted"));
  CHECK_THAT(Changed("base = \"changed.toml\"\n").fault(), Contains("must not be its own base"));
  CHECK_THAT(Changed("without = [\"step\"]\n").fault(), Contains("can only fall away from a base case"));
  CHECK_THAT(Changed("base = \"minimal.toml\"\nwithout = [\"plaet.holes\"]\n").fault(),
             Contains("the base case has no \"plaet\"; it has: "));
  CHECK_THAT(Changed("base = \"minimal.toml\"\nwithout = 7\n").fault(),
             Contains("a list of keys of the base case is wanted"));
}
