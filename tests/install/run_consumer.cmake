# cmake -DBUILD= -DCONFIG= -DCONSUMER= -DWORK= -DGENERATOR= -DCOMPILER= [-DSANITIZE=] -P this
cmake_minimum_required(VERSION 3.25)
set(prefix "${WORK}/prefix")
file(REMOVE_RECURSE "${prefix}" "${WORK}/consumer")
string(REPLACE ";" "," sanitize "${SANITIZE}")
set(flags "")
if(sanitize)
  set(flags "-fsanitize=${sanitize}")
endif()

execute_process(COMMAND "${CMAKE_COMMAND}" --install "${BUILD}" --config "${CONFIG}"
  --prefix "${prefix}" OUTPUT_QUIET COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND "${CMAKE_COMMAND}" -S "${CONSUMER}" -B "${WORK}/consumer" -G "${GENERATOR}"
  "-DCMAKE_BUILD_TYPE=${CONFIG}" "-DCMAKE_PREFIX_PATH=${prefix}" "-DCMAKE_CXX_COMPILER=${COMPILER}"
  "-DCMAKE_CXX_COMPILER_LAUNCHER=${LAUNCHER}" "-DCMAKE_CXX_FLAGS=${flags}"
  COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND "${CMAKE_COMMAND}" --build "${WORK}/consumer" --config "${CONFIG}"
  COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND "${WORK}/consumer/consumer" COMMAND_ERROR_IS_FATAL ANY)

# The installed program works from where it was put, and nothing installed names the build folder.
execute_process(COMMAND "${prefix}/bin/cutback" --version COMMAND_ERROR_IS_FATAL ANY)
file(GLOB_RECURSE scripts "${prefix}/*.cmake")
foreach(script IN LISTS scripts)
  file(READ "${script}" text)
  string(FIND "${text}" "${BUILD}" at)
  if(NOT at EQUAL -1)
    message(FATAL_ERROR "${script} names the build folder")
  endif()
endforeach()
