# SPDX-License-Identifier: GPL-3.0-or-later
# The library as a folder of another project: no tests, no installed files and no warnings as errors come with it, and its
# lowest room builds. With WHOLE set, all is built and run, which takes as long as the build itself. Given: SOURCE, WORK,
# COMPILER.
include(${CMAKE_CURRENT_LIST_DIR}/run.cmake)

file(REMOVE_RECURSE ${WORK})
run("configuring" ${CMAKE_COMMAND} -S ${SOURCE}/tests/package -B ${WORK} -DTUCKWRIGHT_FOLDER=${SOURCE}
    -DTUCKWRIGHT_PICTURE=OFF -DCMAKE_BUILD_TYPE=Release -DCMAKE_CXX_COMPILER=${COMPILER})
if(EXISTS ${WORK}/tuckwright/tests)
  message(FATAL_ERROR "the tests came along")
endif()
run("building a room" ${CMAKE_COMMAND} --build ${WORK} --target tuckwright_base)
if(WHOLE)
  run("building" ${CMAKE_COMMAND} --build ${WORK} --target berry_tin --parallel 2)
  run("the example" ${WORK}/berry_tin)
  if(NOT said MATCHES "113 x 102 mm, 3 steps")
    message(FATAL_ERROR "the example says ${said}")
  endif()
endif()
