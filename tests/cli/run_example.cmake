# The example of the estimator: cmake -DPROGRAM= -DEXAMPLE= -DWORK= -P run_example.cmake
# Its schedule is what its script writes, and its results are the files that stand beside it.
file(MAKE_DIRECTORY "${WORK}")
execute_process(COMMAND python3 "${EXAMPLE}/make_schedule.py"
  OUTPUT_FILE "${WORK}/schedule.csv" RESULT_VARIABLE made)
if(NOT made EQUAL 0)
  message(FATAL_ERROR "make_schedule.py failed")
endif()
execute_process(COMMAND "${CMAKE_COMMAND}" -E env "CUTBACK=${PROGRAM}" "LC_ALL=C.UTF-8"
    sh "${EXAMPLE}/run.sh" "${WORK}"
  RESULT_VARIABLE status ERROR_VARIABLE said)
if(NOT status EQUAL 1)
  message(FATAL_ERROR "exit status ${status}: ${said}")
endif()
foreach(name schedule.csv results.csv takeoff.csv exceptions.csv stock_takeoff.csv
    stock_exceptions.csv kit.txt)
  execute_process(COMMAND "${CMAKE_COMMAND}" -E compare_files
      "${EXAMPLE}/${name}" "${WORK}/${name}" RESULT_VARIABLE differs)
  if(differs)
    message(FATAL_ERROR "${name} differs from ${WORK}/${name}; when it should, copy it")
  endif()
endforeach()
