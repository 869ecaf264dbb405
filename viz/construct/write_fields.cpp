#include "viz/construct/write_fields.h"

#include "viz/drawing/replace_file.h"

#include <fmt/format.h>
#include <vtkCellArray.h>
#include <vtkCellData.h>
#include <vtkCellType.h>
#include <vtkDoubleArray.h>
#include <vtkFieldData.h>
#include <vtkIntArray.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <vtkPoints.h>
#include <vtkPolyData.h>
#include <vtkSmartPointer.h>
#include <vtkStringArray.h>
#include <vtkUnstructuredGrid.h>
#include <vtkXMLPolyDataWriter.h>
#include <vtkXMLUnstructuredGridWriter.h>

#include <algorithm>
#include <cassert>

namespace gapstrain::viz {

namespace {

// Rows become tuples.
template <typename Matrix>
vtkSmartPointer<vtkDoubleArray> array_of(const std::string& name, const Matrix& rows) {
  auto array = vtkSmartPointer<vtkDoubleArray>::New();
  array->SetName(name.c_str());
  array->SetNumberOfComponents(static_cast<int>(rows.cols()));
  array->SetNumberOfTuples(rows.rows());
  for (Eigen::Index i = 0; i < rows.rows(); ++i)
    for (Eigen::Index j = 0; j < rows.cols(); ++j) array->SetTypedComponent(i, static_cast<int>(j), rows(i, j));
  return array;
}

vtkSmartPointer<vtkDoubleArray> stress_array(const std::string& name, const Eigen::MatrixX3d& stress) {
  auto array = array_of(name, stress);
  array->SetComponentName(0, "s11");
  array->SetComponentName(1, "s22");
  array->SetComponentName(2, "s12");
  return array;
}

template <typename Cell>
void insert_cells(vtkUnstructuredGrid& grid, int type, const std::vector<Cell>& cells) {
  for (const auto& cell : cells) {
    std::array<vtkIdType, std::tuple_size_v<Cell>> ids{};
    std::copy(cell.begin(), cell.end(), ids.begin());
    grid.InsertNextCell(type, static_cast<vtkIdType>(ids.size()), ids.data());
  }
}

vtkSmartPointer<vtkUnstructuredGrid> grid_of(const models::ShellField& shell) {
  const mesh::ShellMesh& mesh = *shell.mesh;
  auto grid = vtkSmartPointer<vtkUnstructuredGrid>::New();
  vtkNew<vtkPoints> points;
  points->SetData(array_of("places (mm)", mesh.nodes));
  grid->SetPoints(points);
  insert_cells(*grid, VTK_QUAD, mesh.quads);
  insert_cells(*grid, VTK_TRIANGLE, mesh.triangles);
  vtkPointData* data = grid->GetPointData();
  data->AddArray(array_of("displacement (mm)", shell.displacements));
  data->AddArray(array_of("rotation (rad)", shell.rotations));
  data->AddArray(array_of("von Mises top (MPa)", shell.von_mises_top));
  data->AddArray(array_of("von Mises middle (MPa)", shell.von_mises_middle));
  data->AddArray(array_of("von Mises bottom (MPa)", shell.von_mises_bottom));
  data->AddArray(stress_array("stress top (MPa)", shell.stress_top));
  data->AddArray(stress_array("stress middle (MPa)", shell.stress_middle));
  data->AddArray(stress_array("stress bottom (MPa)", shell.stress_bottom));
  data->AddArray(array_of("thickness (mm)", mesh.thickness));
  data->AddArray(array_of("director", mesh.directors));
  return grid;
}

// One polyline a screw, from head to tip.
vtkSmartPointer<vtkPolyData> lines_of(const std::vector<models::ScrewField>& screws) {
  vtkNew<vtkPoints> points;
  points->SetDataTypeToDouble();
  vtkNew<vtkCellArray> lines;
  vtkNew<vtkDoubleArray> displacement, stress, core, head;
  vtkNew<vtkIntArray> hole;
  vtkNew<vtkStringArray> label;
  displacement->SetName("displacement (mm)");
  displacement->SetNumberOfComponents(3);
  stress->SetName("largest fibre stress (MPa)");
  core->SetName("core radius (mm)");
  head->SetName("head radius (mm)");
  hole->SetName("hole");
  label->SetName("label");
  for (const auto& screw : screws) {
    assert(screw.displacements.size() == screw.axis.size() && screw.stress.size() == screw.axis.size());
    lines->InsertNextCell(static_cast<vtkIdType>(screw.axis.size()));
    for (std::size_t i = 0; i < screw.axis.size(); ++i) {
      lines->InsertCellPoint(points->InsertNextPoint(screw.axis[i].data()));
      displacement->InsertNextTuple(screw.displacements[i].data());
      stress->InsertNextValue(screw.stress[i]);
    }
    core->InsertNextValue(screw.core_radius);
    head->InsertNextValue(screw.head_radius);
    hole->InsertNextValue(screw.hole);
    label->InsertNextValue(screw.label);
  }
  auto data = vtkSmartPointer<vtkPolyData>::New();
  data->SetPoints(points);
  data->SetLines(lines);
  for (vtkAbstractArray* array :
       {static_cast<vtkAbstractArray*>(displacement), static_cast<vtkAbstractArray*>(stress)})
    data->GetPointData()->AddArray(array);
  for (vtkAbstractArray* array : {static_cast<vtkAbstractArray*>(core), static_cast<vtkAbstractArray*>(head),
                                  static_cast<vtkAbstractArray*>(hole), static_cast<vtkAbstractArray*>(label)})
    data->GetCellData()->AddArray(array);
  return data;
}

void add_metadata(vtkDataSet& data, const Metadata& metadata) {
  vtkFieldData* texts = data.GetFieldData();
  for (const auto& [name, text] : metadata) {
    auto* array = vtkStringArray::SafeDownCast(texts->GetAbstractArray(name.c_str()));
    if (array == nullptr) {
      vtkNew<vtkStringArray> own;
      own->SetName(name.c_str());
      texts->AddArray(own);
      array = own;
    }
    array->InsertNextValue(text);
  }
}

template <typename Writer>
void write(vtkDataSet* data, const Metadata& metadata, const std::filesystem::path& path) {
  add_metadata(*data, metadata);
  vtkNew<Writer> writer;
  writer->SetInputData(data);
  writer->SetDataModeToAppended();
  writer->EncodeAppendedDataOff();
  writer->SetCompressorTypeToZLib();
  writer->WriteToOutputStringOn();
  writer->Write();
  replace_file(path, writer->GetOutputString());
}

std::string file_word(std::string name) {
  std::replace(name.begin(), name.end(), ' ', '_');
  return name;
}

}  // namespace

std::vector<std::filesystem::path> write_fields(const models::LoadFields& fields, const Metadata& metadata,
                                                const std::filesystem::path& folder, const std::string& stem) {
  std::vector<std::filesystem::path> written;
  for (const auto& shell : fields.shells) {
    written.push_back(folder / fmt::format("{}_{}.vtu", stem, file_word(shell.name)));
    write<vtkXMLUnstructuredGridWriter>(grid_of(shell), metadata, written.back());
  }
  written.push_back(folder / fmt::format("{}_screws.vtp", stem));
  write<vtkXMLPolyDataWriter>(lines_of(fields.screws), metadata, written.back());
  return written;
}

}  // namespace gapstrain::viz
