# One golden case: cmake -DPROGRAM= -DCASE= -DWORK= [-DAPPROVE=ON] -P run_case.cmake
# CASE holds args (one argument a line) and, where they are not empty or 0, stdout, stderr, exit
# and env (NAME=value lines), and pipe, what comes through a pipe on stdin. The case's folder is the
# working folder.
file(STRINGS "${CASE}/args" args ENCODING UTF-8)
file(MAKE_DIRECTORY "${WORK}")

set(environment "LC_ALL=C.UTF-8" "TZ=UTC" "--unset=CUTBACK_GLANDS" "--unset=CUTBACK_DATA"
  "XDG_CONFIG_HOME=/nonexistent"
  "--unset=NO_COLOR" "--unset=SOURCE_DATE_EPOCH")
if(EXISTS "${CASE}/env")
  file(STRINGS "${CASE}/env" own)
  list(APPEND environment ${own})
endif()

set(feed "")
if(EXISTS "${CASE}/pipe")
  set(feed COMMAND "${CMAKE_COMMAND}" -E cat "${CASE}/pipe")
endif()

execute_process(
  ${feed}
  COMMAND "${CMAKE_COMMAND}" -E env ${environment} "${PROGRAM}" ${args}
  WORKING_DIRECTORY "${CASE}"
  OUTPUT_FILE "${WORK}/stdout" ERROR_FILE "${WORK}/stderr"
  RESULT_VARIABLE status)
file(WRITE "${WORK}/exit" "${status}\n")

set(bad "")
foreach(stream stdout stderr exit)
  set(golden "${CASE}/${stream}")
  if(EXISTS "${golden}")
    file(READ "${golden}" want)
  elseif(stream STREQUAL "exit")
    set(want "0\n")
  else()
    set(want "")
  endif()
  file(READ "${WORK}/${stream}" got)
  if(NOT got STREQUAL want)
    if(APPROVE)
      if(got STREQUAL "" OR (stream STREQUAL "exit" AND got STREQUAL "0\n"))
        file(REMOVE "${golden}")
      else()
        file(WRITE "${golden}" "${got}")
      endif()
    else()
      string(APPEND bad "\n--- ${stream}: wanted\n${want}\n+++ ${stream}: got\n${got}")
    endif()
  endif()
endforeach()
if(bad)
  message(FATAL_ERROR "${CASE}: differs from the golden files (build target approve accepts)${bad}")
endif()
