# Installs to a folder of its own, builds the example against that alone, and holds what it prints against what the
# installed program writes of the same case.
#   cmake -DBUILD=... -DSOURCES=... -DVERSION=... -DCOMPILER=... -P try_package.cmake
cmake_minimum_required(VERSION 3.25)
set(work ${BUILD}/try_package)
set(prefix ${work}/prefix)
set(case ${SOURCES}/cases/examples/minimal.toml)
file(REMOVE_RECURSE ${work})
file(MAKE_DIRECTORY ${work})

# Sets `said` to what it prints.
function(run)
  execute_process(COMMAND ${ARGN} WORKING_DIRECTORY ${work} RESULT_VARIABLE status OUTPUT_VARIABLE out ERROR_VARIABLE err)
  if(NOT status EQUAL 0)
    message(FATAL_ERROR "${ARGN}\nended with ${status}:\n${out}${err}")
  endif()
  set(said "${out}" PARENT_SCOPE)
endfunction()

run(${CMAKE_COMMAND} --install ${BUILD} --prefix ${prefix})

# No header of ours is left behind.
foreach(layer mesh solver models viz cases)
  file(GLOB_RECURSE headers RELATIVE ${SOURCES} ${SOURCES}/${layer}/*.h)
  foreach(header ${headers})
    if(NOT EXISTS ${prefix}/include/gapstrain/${header})
      message(FATAL_ERROR "${header} is not installed")
    endif()
  endforeach()
endforeach()

# Nothing in the package points back to where it was built, or tells users how to compile.
file(GLOB_RECURSE package ${prefix}/*.cmake)
foreach(file ${package})
  file(READ ${file} text)
  foreach(stray "${BUILD}" "${SOURCES}/" "-Werror" "-march" "cmake_pch")
    string(FIND "${text}" "${stray}" found)
    if(NOT found EQUAL -1)
      message(FATAL_ERROR "${file} has \"${stray}\" in it")
    endif()
  endforeach()
endforeach()

# Compiled for any machine of the kind and with Eigen's asserts, which the libraries are not: see DEVELOPERS.md, "Install".
run(${CMAKE_COMMAND} -S ${SOURCES}/tests/install/example -B ${work}/example -G Ninja -DCMAKE_PREFIX_PATH=${prefix}
    -DCMAKE_CXX_COMPILER=${COMPILER} "-DCMAKE_CXX_FLAGS=-O1 -Wall -Wextra -Werror")
run(${CMAKE_COMMAND} --build ${work}/example)
run(${work}/example/assess_case ${case})
message("${said}")
set(printed "${said}")

run(${prefix}/bin/gapstrain --version)
if(NOT said MATCHES "^gapstrain ${VERSION} ")
  message(FATAL_ERROR "the installed program calls itself ${said}")
endif()
run(${prefix}/bin/gapstrain analyse ${case} --quiet --no-pictures --out ${work}/findings)
file(READ ${work}/findings/findings.json json)
string(JSON standing GET "${json}" state standing)
string(JSON factor GET "${json}" margins 0 factor)  # worst first; none of this case is indicative
string(JSON part GET "${json}" margins 0 part)
string(SUBSTRING ${factor} 0 6 factor)
foreach(expected "standing: ${standing}" "least margin: ${factor}" ", ${part}, under")
  string(FIND "${printed}" "${expected}" found)
  if(found EQUAL -1)
    message(FATAL_ERROR "the program says \"${expected}\", the example:\n${printed}")
  endif()
endforeach()

# Another version is not taken for this one.
file(WRITE ${work}/later/CMakeLists.txt
  "cmake_minimum_required(VERSION 3.25)\nproject(later LANGUAGES NONE)\nfind_package(gapstrain 0.2 QUIET)\n"
  "if(gapstrain_FOUND)\n  message(FATAL_ERROR \"found\")\nendif()\n")
run(${CMAKE_COMMAND} -S ${work}/later -B ${work}/later/build -DCMAKE_PREFIX_PATH=${prefix})
