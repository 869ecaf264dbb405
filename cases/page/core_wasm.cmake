# The core as a WebAssembly module: `cmake --build .build/release --target core_wasm` makes core/core.wasm anew, and
# core/core.digest, the SHA-256 of each file of ours that it was made from. Both are committed, so that no other build
# needs this compiler (bash cases/install_packages.sh emscripten); a test holds them against the sources.
set(core_dir ${CMAKE_BINARY_DIR}/core_wasm)
set(core_flags
    -std=c++20 -O2 -msimd128 -fwasm-exceptions -DNDEBUG -DFMT_HEADER_ONLY -DTOML_HEADER_ONLY=1 -DEIGEN_MAX_ALIGN_BYTES=32
    -DEIGEN_MAX_STATIC_ALIGN_BYTES=32)
# Emscripten's own JavaScript is not used: core_host.js gives the module the few functions it asks for.
set(core_link -O2 -fwasm-exceptions --no-entry -sSTANDALONE_WASM -sALLOW_MEMORY_GROWTH=1 -sINITIAL_MEMORY=33554432
              -sMAXIMUM_MEMORY=1073741824)

# Of the core's targets all, of what writes answers these.
set(core_sources "")
foreach(target gapstrain_elements gapstrain_solver gapstrain_plain gapstrain_models gapstrain_reader)
  get_target_property(sources ${target} SOURCES)
  get_target_property(folder ${target} SOURCE_DIR)
  foreach(source ${sources})
    if(source MATCHES "\\.cpp$" AND NOT IS_ABSOLUTE "${source}")
      file(RELATIVE_PATH path ${PROJECT_SOURCE_DIR} ${folder}/${source})
      list(APPEND core_sources ${path})
    endif()
  endforeach()
endforeach()
file(GLOB answers CONFIGURE_DEPENDS RELATIVE ${PROJECT_SOURCE_DIR} ${PROJECT_SOURCE_DIR}/cases/answers/*.cpp
     ${PROJECT_SOURCE_DIR}/cases/outputs/json/*.cpp)
list(REMOVE_ITEM answers cases/outputs/json/comparison_json.cpp)
list(APPEND core_sources ${answers} cases/page/core_entry.cpp)
foreach(file assessment_lines compression_sentences fracture_remark margins_text review_text state_lines worst_things)
  list(APPEND core_sources cases/outputs/sentences/${file}.cpp)
endforeach()
list(SORT core_sources)

# Libraries that are headers alone; the host's other headers must stay out of a compiler for another machine.
foreach(library boost cereal fmt nlohmann toml++)
  find_path(core_headers_of_${library} NAMES ${library}
            HINTS ${Boost_INCLUDE_DIRS})
  file(MAKE_DIRECTORY ${core_dir}/include)
  file(CREATE_LINK ${core_headers_of_${library}}/${library} ${core_dir}/include/${library} SYMBOLIC)
endforeach()
get_target_property(eigen_headers Eigen3::Eigen INTERFACE_INCLUDE_DIRECTORIES)

list(JOIN core_flags " " flags)
list(JOIN core_link " " link)
set(build "ninja_required_version = 1.3
flags = ${flags}
link = ${link}
rule compile
  command = NODE_PATH=/usr/share/nodejs em++ $flags -I${PROJECT_SOURCE_DIR} -isystem ${eigen_headers} -isystem ${core_dir}/include -MD -MF $out.d -c $in -o $out
  depfile = $out.d
  deps = gcc
  description = $in
rule link
  command = NODE_PATH=/usr/share/nodejs em++ $link $in -o $out
")
set(objects "")
foreach(source ${core_sources})
  string(REPLACE "/" "_" object ${source})
  string(REPLACE ".cpp" ".o" object ${object})
  string(APPEND build "build ${object}: compile ${PROJECT_SOURCE_DIR}/${source}\n")
  string(APPEND objects " ${object}")
endforeach()
string(APPEND build "build core.wasm: link${objects}\ndefault core.wasm\n")
file(CONFIGURE OUTPUT ${core_dir}/build.ninja CONTENT "${build}" @ONLY)
list(JOIN core_sources "\n" lines)
file(CONFIGURE OUTPUT ${core_dir}/sources.txt CONTENT "compile ${flags}\nlink ${link}\n${lines}\n" @ONLY)

set(core_digest -DROOT=${PROJECT_SOURCE_DIR} -DBUILD=${core_dir} -DDIGEST=${CMAKE_CURRENT_LIST_DIR}/core/core.digest)
add_custom_target(core_wasm
  COMMAND ninja -C ${core_dir}
  COMMAND ${CMAKE_COMMAND} -DMODE=write ${core_digest} -P ${CMAKE_CURRENT_LIST_DIR}/core_digest.cmake
  COMMAND ${CMAKE_COMMAND} -E copy ${core_dir}/core.wasm ${CMAKE_CURRENT_LIST_DIR}/core/core.wasm
  USES_TERMINAL VERBATIM)
