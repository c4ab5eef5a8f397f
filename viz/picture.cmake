# SPDX-License-Identifier: GPL-3.0-or-later
# The turning picture's script, bundled by Node from npm's packages and made part of the library. Without Node or npm's
# registry the library is built without it, and says so. Sets TUCKWRIGHT_PICTURE_SOURCE, and TUCKWRIGHT_PICTURE_MODULES
# where the picture is there.
option(TUCKWRIGHT_PICTURE "the turning picture, where Node 18 or later and npm's registry are there" ON)

# Packages go into the build folder, once for each state of the lock file. Sets `why` to what is missing, or to nothing.
function(fetch_picture_packages folder why)
  find_program(NODE_PROGRAM NAMES node nodejs)
  find_program(NPM_PROGRAM npm)
  if(NOT TUCKWRIGHT_PICTURE)
    set(${why} "TUCKWRIGHT_PICTURE is off" PARENT_SCOPE)
    return()
  endif()
  if(NOT NODE_PROGRAM OR NOT NPM_PROGRAM)
    set(${why} "node and npm were not found" PARENT_SCOPE)
    return()
  endif()
  execute_process(COMMAND ${NODE_PROGRAM} --version OUTPUT_VARIABLE version OUTPUT_STRIP_TRAILING_WHITESPACE)
  string(REGEX REPLACE "^v" "" version "${version}")
  if(version VERSION_LESS 18)
    set(${why} "node is ${version}, and 18 or later is needed" PARENT_SCOPE)
    return()
  endif()
  file(SHA256 ${PROJECT_SOURCE_DIR}/viz/package-lock.json lock)
  set(stamp ${folder}/fetched-${lock})
  if(NOT EXISTS ${stamp})
    file(MAKE_DIRECTORY ${folder})
    foreach(name package.json package-lock.json .npmrc)
      configure_file(${PROJECT_SOURCE_DIR}/viz/${name} ${folder}/${name} COPYONLY)
    endforeach()
    execute_process(COMMAND ${NPM_PROGRAM} ci --ignore-scripts --fetch-retries=1 --fetch-timeout=30000
                    WORKING_DIRECTORY ${folder} TIMEOUT 240 RESULT_VARIABLE result OUTPUT_QUIET ERROR_VARIABLE said)
    if(NOT result EQUAL 0)
      string(REGEX REPLACE "\n.*" "" said "${said}")
      set(${why} "npm could not fetch its packages (${said})" PARENT_SCOPE)
      return()
    endif()
    file(TOUCH ${stamp})
  endif()
  set(${why} "" PARENT_SCOPE)
endfunction()

set(picture_folder ${PROJECT_BINARY_DIR}/viz)
fetch_picture_packages(${picture_folder} picture_missing)
if(picture_missing STREQUAL "")
  message(STATUS "The turning picture is part of this build")
  set(TUCKWRIGHT_PICTURE_MODULES ${picture_folder})
  set(TUCKWRIGHT_PICTURE_SOURCE ${picture_folder}/picture_script.cpp)
  file(GLOB picture_sources CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/viz/src/*)
  add_custom_command(OUTPUT ${TUCKWRIGHT_PICTURE_SOURCE}
    COMMAND ${NODE_PROGRAM} ${PROJECT_SOURCE_DIR}/viz/build.mjs ${picture_folder} ${TUCKWRIGHT_PICTURE_SOURCE}
    DEPENDS ${picture_sources} ${PROJECT_SOURCE_DIR}/viz/build.mjs ${PROJECT_SOURCE_DIR}/viz/package-lock.json
    COMMENT "Bundling the turning picture" VERBATIM)
else()
  message(STATUS "The turning picture is LEFT OUT of this build: ${picture_missing}")
  set(TUCKWRIGHT_PICTURE_SOURCE ${PROJECT_BINARY_DIR}/no_picture_script.cpp)
  file(CONFIGURE OUTPUT ${TUCKWRIGHT_PICTURE_SOURCE} CONTENT
    "#include \"card/picture_script.hpp\"\n\nstd::string_view tuckwright::card::picture_script() { return {}; }\n")
endif()
