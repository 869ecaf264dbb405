# Writes version.cpp for the sources as they are now; untouched when it would stay the same, so that nothing is rebuilt.
#   cmake -DSOURCES=... -DVERSION=... -DTEMPLATE=... -DRESULT=... -P write_version.cmake
find_program(GIT git)

# Sets `variable` to what git answers in the sources; empty when it cannot.
function(ask_git variable)
  set(answer "")
  if(GIT)
    execute_process(COMMAND "${GIT}" -C "${SOURCES}" ${ARGN} OUTPUT_VARIABLE answer ERROR_QUIET RESULT_VARIABLE status
                    OUTPUT_STRIP_TRAILING_WHITESPACE)
    if(NOT status EQUAL 0)
      set(answer "")
    endif()
  endif()
  set(${variable} "${answer}" PARENT_SCOPE)
endfunction()

# Sources unpacked inside a checkout of something else have no commit of their own.
ask_git(tracked ls-files --error-unmatch CMakeLists.txt cases/version.cpp.in)
if(tracked)
  ask_git(COMMIT describe --always --dirty=-modified --abbrev=12 --exclude=*)
  ask_git(COMMIT_DATE show --no-patch --format=%cs HEAD)
endif()
if(NOT COMMIT)
  set(COMMIT unknown)
  set(COMMIT_DATE "")
endif()
configure_file("${TEMPLATE}" "${RESULT}" @ONLY)
