# `cmake --install`: the program, the libraries, headers by their tree, and a package for find_package(gapstrain).
# Two sets, so that who only computes need not have VTK: `models` with all below it, `cases` with all.
include(GNUInstallDirs)
include(CMakePackageConfigHelpers)

set(gapstrain_headers ${CMAKE_INSTALL_INCLUDEDIR}/gapstrain)
set(gapstrain_package ${CMAKE_INSTALL_LIBDIR}/cmake/gapstrain)
set(models options precompiled mesh elements native plain solver models preparation)
set(cases viz reader cases)
foreach(set models cases)
  foreach(name ${${set}})
    set_target_properties(gapstrain_${name} PROPERTIES EXPORT_NAME ${name})
    install(TARGETS gapstrain_${name} EXPORT gapstrain_${set} ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR}
            INCLUDES DESTINATION ${gapstrain_headers})
  endforeach()
  install(EXPORT gapstrain_${set} NAMESPACE gapstrain:: FILE gapstrain-${set}.cmake DESTINATION ${gapstrain_package})
endforeach()

# Ours are compiled with hidden visibility (root CMakeLists.txt), which is no matter of ours in a user's files: there
# the linker keeps Eigen from Gmsh and VTK. A shared library may have a version script of its own, so it is left alone.
set(map ${gapstrain_package}/eigen_stays_inside.map)
set(is_executable $<STREQUAL:$<TARGET_PROPERTY:TYPE>,EXECUTABLE>)
target_link_options(gapstrain_options INTERFACE
  "$<INSTALL_INTERFACE:$<${is_executable}:LINKER:--version-script=$<INSTALL_PREFIX>/${map}>>")

install(TARGETS gapstrain RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
foreach(layer mesh solver models viz cases)
  install(DIRECTORY ${PROJECT_SOURCE_DIR}/${layer} DESTINATION ${gapstrain_headers}
          FILES_MATCHING PATTERN "*.h" PATTERN "*.inc"
          PATTERN "examples" EXCLUDE PATTERN "package" EXCLUDE)  # no header in them, and no empty folder then
endforeach()
install(FILES ${PROJECT_SOURCE_DIR}/LICENSE ${PROJECT_SOURCE_DIR}/README.md DESTINATION ${CMAKE_INSTALL_DOCDIR})

configure_package_config_file(${CMAKE_CURRENT_LIST_DIR}/gapstrain-config.cmake.in
  ${PROJECT_BINARY_DIR}/gapstrain-config.cmake INSTALL_DESTINATION ${gapstrain_package})
write_basic_package_version_file(${PROJECT_BINARY_DIR}/gapstrain-config-version.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${PROJECT_BINARY_DIR}/gapstrain-config.cmake ${PROJECT_BINARY_DIR}/gapstrain-config-version.cmake
              ${CMAKE_CURRENT_LIST_DIR}/libraries.cmake
              ${CMAKE_CURRENT_LIST_DIR}/eigen_stays_inside.map DESTINATION ${gapstrain_package})
