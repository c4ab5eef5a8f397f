# SPDX-License-Identifier: GPL-3.0-or-later
# Installs the build into a folder of its own, moves that, and uses the library from there: by find_package, and by
# pkg-config where there is one. Given: BUILD, SOURCE, WORK, VERSION, COMPILER, LIBDIR.
include(${CMAKE_CURRENT_LIST_DIR}/run.cmake)

# What the example prints: the spoon of 109 x 30 x 12 mm lies flat on the pot of 90 mm, and is sqrt(109^2 + 30^2) mm from
# corner to corner.
function(expect_answer program)
  run("the example" ${program})
  foreach(line "Pot: standing in the bundle" "Berry tin: [a-z]+ in Pot" "113 x 102 mm, 3 steps")
    if(NOT said MATCHES "${line}")
      message(FATAL_ERROR "the example does not say '${line}' but:\n${said}")
    endif()
  endforeach()
endfunction()

file(REMOVE_RECURSE ${WORK})
run("installing" ${CMAKE_COMMAND} --install ${BUILD} --prefix ${WORK}/staging)
file(RENAME ${WORK}/staging ${WORK}/moved)
set(found -DCMAKE_PREFIX_PATH=${WORK}/moved -DCMAKE_CXX_COMPILER=${COMPILER})
run("configuring" ${CMAKE_COMMAND} -S ${SOURCE}/tests/package -B ${WORK}/build ${found} -DTUCKWRIGHT_WANTED=${VERSION})
run("building" ${CMAKE_COMMAND} --build ${WORK}/build)
expect_answer(${WORK}/build/berry_tin)

# A version that is not there is not found.
execute_process(COMMAND ${CMAKE_COMMAND} -S ${SOURCE}/tests/package -B ${WORK}/refused ${found} -DTUCKWRIGHT_WANTED=99.0
                RESULT_VARIABLE result OUTPUT_QUIET ERROR_VARIABLE said)
if(result EQUAL 0 OR NOT said MATCHES "version: ${VERSION}")
  message(FATAL_ERROR "version 99.0 should not be found:\n${said}")
endif()

find_program(PKG_CONFIG pkg-config)
if(PKG_CONFIG)
  set(ENV{PKG_CONFIG_PATH} ${WORK}/moved/${LIBDIR}/pkgconfig)
  run("pkg-config" ${PKG_CONFIG} --modversion tuckwright)
  if(NOT said MATCHES "^${VERSION}")
    message(FATAL_ERROR "pkg-config tells version ${said}")
  endif()
  run("pkg-config" ${PKG_CONFIG} --cflags --libs tuckwright)
  separate_arguments(flags UNIX_COMMAND "${said}")
  run("compiling" ${COMPILER} -std=c++20 ${SOURCE}/tests/package/berry_tin.cpp -o ${WORK}/by_pkg_config ${flags})
  expect_answer(${WORK}/by_pkg_config)
endif()

run("the installed program" ${WORK}/moved/bin/tuckwright --version)
if(NOT said MATCHES "tuckwright ${VERSION}")
  message(FATAL_ERROR "the installed program says ${said}")
endif()
