# Libraries that bring no CMake package in Debian 12, as targets: for the build, and again for users of what it installs.
foreach(name gmsh cholmod cairo)
  if(NOT TARGET gapstrain::library_${name})
    find_library(gapstrain_${name}_library ${name} REQUIRED)
    mark_as_advanced(gapstrain_${name}_library)
    add_library(gapstrain::library_${name} UNKNOWN IMPORTED GLOBAL)
    set_target_properties(gapstrain::library_${name} PROPERTIES IMPORTED_LOCATION "${gapstrain_${name}_library}")
  endif()
endforeach()
