#include "viz/construct/write_fields.h"

#include "tests/viz/picture_file.h"
#include "tests/viz/sample.h"

#include <vtkCellData.h>
#include <vtkCellType.h>
#include <vtkDataArray.h>
#include <vtkFieldData.h>
#include <vtkIdList.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <vtkPolyData.h>
#include <vtkStringArray.h>
#include <vtkUnstructuredGrid.h>
#include <vtkXMLPolyDataReader.h>
#include <vtkXMLUnstructuredGridReader.h>
#include <catch2/catch.hpp>

#include <fstream>

using namespace gapstrain;
namespace fs = std::filesystem;

namespace {

template <typename Matrix>
void check_array(vtkDataSetAttributes* data, const char* name, const Matrix& expected) {
  CAPTURE(name);
  vtkDataArray* array = data->GetArray(name);
  REQUIRE(array != nullptr);
  REQUIRE(array->GetNumberOfTuples() == expected.rows());
  REQUIRE(array->GetNumberOfComponents() == expected.cols());
  bool same = true;
  for (Eigen::Index i = 0; i < expected.rows(); ++i)
    for (Eigen::Index j = 0; j < expected.cols(); ++j)
      same = same && array->GetComponent(i, static_cast<int>(j)) == expected(i, j);
  CHECK(same);
}

}  // namespace

TEST_CASE("the bodies' files give back every node, cell and value", "[viz][write_fields]") {
  const tests::OwnFolder folder;
  auto fields = tests::sample_fields();
  // A triangle as well, and a thickness that differs from node to node.
  mesh::ShellMesh mesh = *fields.shells[0].mesh;
  const auto split = mesh.quads.back();
  mesh.quads.pop_back();
  mesh.triangles = {{split[0], split[1], split[2]}, {split[0], split[2], split[3]}};
  mesh.thickness.array() += 0.01 * mesh.nodes.col(0).array();
  fields.shells[0].mesh = std::make_shared<mesh::ShellMesh>(mesh);

  const auto files = viz::write_fields(fields, {}, folder.path, "2_axial");
  REQUIRE(files.size() == 4);
  CHECK(files[0] == folder.path / "2_axial_plate.vtu");
  CHECK(files[1] == folder.path / "2_axial_proximal_fragment.vtu");
  CHECK(files[2] == folder.path / "2_axial_distal_fragment.vtu");

  for (std::size_t s = 0; s < fields.shells.size(); ++s) {
    const auto& shell = fields.shells[s];
    vtkNew<vtkXMLUnstructuredGridReader> reader;
    reader->SetFileName(files[s].c_str());
    reader->Update();
    vtkUnstructuredGrid* grid = reader->GetOutput();
    REQUIRE(grid->GetNumberOfPoints() == shell.mesh->nodes.rows());
    for (Eigen::Index i = 0; i < shell.mesh->nodes.rows(); i += 11)
      CHECK(Eigen::RowVector3d(grid->GetPoint(i)) == shell.mesh->nodes.row(i));
    const auto quads = shell.mesh->quads.size(), triangles = shell.mesh->triangles.size();
    REQUIRE(grid->GetNumberOfCells() == static_cast<vtkIdType>(quads + triangles));
    vtkNew<vtkIdList> nodes;
    for (std::size_t c = 0; c < quads; c += 13) {
      CHECK(grid->GetCellType(static_cast<vtkIdType>(c)) == VTK_QUAD);
      grid->GetCellPoints(static_cast<vtkIdType>(c), nodes);
      for (std::size_t k = 0; k < 4; ++k)
        CHECK(nodes->GetId(static_cast<vtkIdType>(k)) == shell.mesh->quads[c][k]);
    }
    for (std::size_t c = 0; c < triangles; ++c) {
      CHECK(grid->GetCellType(static_cast<vtkIdType>(quads + c)) == VTK_TRIANGLE);
      grid->GetCellPoints(static_cast<vtkIdType>(quads + c), nodes);
      for (std::size_t k = 0; k < 3; ++k)
        CHECK(nodes->GetId(static_cast<vtkIdType>(k)) == shell.mesh->triangles[c][k]);
    }
    vtkPointData* data = grid->GetPointData();
    check_array(data, "displacement (mm)", shell.displacements);
    check_array(data, "rotation (rad)", shell.rotations);
    check_array(data, "von Mises top (MPa)", shell.von_mises_top);
    check_array(data, "von Mises middle (MPa)", shell.von_mises_middle);
    check_array(data, "von Mises bottom (MPa)", shell.von_mises_bottom);
    check_array(data, "stress top (MPa)", shell.stress_top);
    check_array(data, "stress middle (MPa)", shell.stress_middle);
    check_array(data, "stress bottom (MPa)", shell.stress_bottom);
    check_array(data, "thickness (mm)", shell.mesh->thickness);
    check_array(data, "director", shell.mesh->directors);
    CHECK(std::string(data->GetArray("stress top (MPa)")->GetComponentName(2)) == "s12");
  }
}

TEST_CASE("the screws' file gives back every axis with its values and labels", "[viz][write_fields]") {
  const tests::OwnFolder folder;
  const auto fields = tests::sample_fields();
  const auto files = viz::write_fields(fields, {}, folder.path, "load");
  vtkNew<vtkXMLPolyDataReader> reader;
  reader->SetFileName(files.back().c_str());
  reader->Update();
  vtkPolyData* lines = reader->GetOutput();
  REQUIRE(lines->GetNumberOfLines() == static_cast<vtkIdType>(fields.screws.size()));
  auto* labels = vtkStringArray::SafeDownCast(lines->GetCellData()->GetAbstractArray("label"));
  REQUIRE(labels != nullptr);
  vtkDataArray* stress = lines->GetPointData()->GetArray("largest fibre stress (MPa)");
  vtkDataArray* moved = lines->GetPointData()->GetArray("displacement (mm)");
  REQUIRE(stress != nullptr);
  REQUIRE(moved != nullptr);
  vtkNew<vtkIdList> nodes;
  for (std::size_t s = 0; s < fields.screws.size(); ++s) {
    const auto& screw = fields.screws[s];
    const auto cell = static_cast<vtkIdType>(s);
    CHECK(labels->GetValue(cell) == screw.label);
    CHECK(lines->GetCellData()->GetArray("hole")->GetTuple1(cell) == screw.hole);
    CHECK(lines->GetCellData()->GetArray("core radius (mm)")->GetTuple1(cell) == screw.core_radius);
    CHECK(lines->GetCellData()->GetArray("head radius (mm)")->GetTuple1(cell) == screw.head_radius);
    lines->GetCellPoints(cell, nodes);
    REQUIRE(nodes->GetNumberOfIds() == static_cast<vtkIdType>(screw.axis.size()));
    for (std::size_t i = 0; i < screw.axis.size(); ++i) {
      const vtkIdType node = nodes->GetId(static_cast<vtkIdType>(i));
      CHECK(Eigen::Vector3d(lines->GetPoint(node)) == screw.axis[i]);
      CHECK(stress->GetTuple1(node) == screw.stress[i]);
      CHECK(Eigen::Vector3d(moved->GetTuple3(node)) == screw.displacements[i]);
    }
  }
}

TEST_CASE("field files are appended, raw and compressed", "[viz][write_fields]") {
  const tests::OwnFolder folder;
  const auto files = viz::write_fields(tests::sample_fields(), {}, folder.path, "load");
  for (const auto& file : files) {
    std::ifstream stream(file, std::ios::binary);
    const std::string text((std::istreambuf_iterator<char>(stream)), {});
    CHECK(text.find("compressor=\"vtkZLibDataCompressor\"") != std::string::npos);
    CHECK(text.find("<AppendedData encoding=\"raw\">") != std::string::npos);
  }
}

TEST_CASE("a folder that is not there is a fault that names the file", "[viz][write_fields]") {
  const fs::path folder = "/nowhere/at all";
  CHECK_THROWS_WITH(viz::write_fields(tests::sample_fields(), {}, folder, "load"),
                    Catch::Contains("/nowhere/at all/load_plate.vtu"));
}

TEST_CASE("every field file says where it comes from and what is wrong with it", "[viz][write_fields]") {
  const tests::OwnFolder folder;
  const viz::Metadata metadata{
      {"Title", "Größe"}, {"Warning", "FAILS: screw S1"}, {"Warning", "ESTIMATE: bone.cortex"}};
  const auto files = viz::write_fields(tests::sample_fields(), metadata, folder.path, "load");
  const auto check = [](vtkDataSet* data) {
    auto* title = vtkStringArray::SafeDownCast(data->GetFieldData()->GetAbstractArray("Title"));
    auto* warning = vtkStringArray::SafeDownCast(data->GetFieldData()->GetAbstractArray("Warning"));
    REQUIRE(title != nullptr);
    REQUIRE(warning != nullptr);
    CHECK(title->GetValue(0) == "Größe");
    REQUIRE(warning->GetNumberOfValues() == 2);
    CHECK(warning->GetValue(0) == "FAILS: screw S1");
    CHECK(warning->GetValue(1) == "ESTIMATE: bone.cortex");
  };
  REQUIRE(files.size() == 4);
  for (std::size_t f = 0; f < 3; ++f) {
    vtkNew<vtkXMLUnstructuredGridReader> reader;
    reader->SetFileName(files[f].c_str());
    reader->Update();
    check(reader->GetOutput());
  }
  vtkNew<vtkXMLPolyDataReader> reader;
  reader->SetFileName(files[3].c_str());
  reader->Update();
  check(reader->GetOutput());
}
