# cmake -DBUILD= -DCONFIG= -DCONSUMER= -DGLANDS= -DWORK= -DGENERATOR= -DCOMPILER= [-DSANITIZE=] -P this
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
# The two answers that its README shows.
foreach(case "14.9+15.1;0;the longest core ends 154 mm" "44.9+45.1;1;ARM-16-M20: no-fit")
  list(GET case 0 sheath)
  list(GET case 1 expected)
  list(GET case 2 words)
  execute_process(COMMAND "${WORK}/consumer/check_cable" "${GLANDS}" "${sheath}" 9.9+10.1 0.9
    RESULT_VARIABLE status OUTPUT_VARIABLE answer)
  string(FIND "${answer}" "${words}" at)
  if(NOT status STREQUAL expected OR at EQUAL -1)
    message(FATAL_ERROR "sheath ${sheath}: status ${status}\n${answer}")
  endif()
endforeach()

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

# The second half is found from a prefix that was moved, too.
set(moved "${WORK}/moved elsewhere")
file(REMOVE_RECURSE "${moved}")
file(RENAME "${prefix}" "${moved}")
execute_process(COMMAND "${moved}/bin/cutback" sheet --od 15.3+15.1 --bedding 10.6+10.7 --wire 0.9
  --entry M20 --svg --quiet RESULT_VARIABLE status OUTPUT_VARIABLE drawing)
if(NOT status LESS 2 OR NOT drawing MATCHES "<svg")
  message(FATAL_ERROR "the second program does not run from a moved prefix: ${status}")
endif()
foreach(page cutback cutback-fit cutback-schedule)
  if(NOT EXISTS "${moved}/share/man/man1/${page}.1.gz")
    message(FATAL_ERROR "no manual page of ${page}")
  endif()
endforeach()
execute_process(COMMAND "${moved}/bin/cutback" rules --data "${moved}/share/cutback/standards"
  OUTPUT_QUIET COMMAND_ERROR_IS_FATAL ANY)
