# SPDX-License-Identifier: GPL-3.0-or-later
# The library as other projects use it: all rooms in one archive, target tuckwright::tuckwright. Of the libraries within,
# those that are headers alone are not needed any more; the others are what its user links.
get_property(rooms GLOBAL PROPERTY TUCKWRIGHT_ROOMS)
set(room_objects ${rooms})
list(TRANSFORM room_objects REPLACE "(.+)" "$<TARGET_OBJECTS:\\1>")
add_library(tuckwright_library STATIC ${room_objects})
add_library(tuckwright::tuckwright ALIAS tuckwright_library)
set_target_properties(tuckwright_library PROPERTIES
  OUTPUT_NAME tuckwright EXPORT_NAME tuckwright LINKER_LANGUAGE CXX)
target_compile_features(tuckwright_library INTERFACE cxx_std_20)
target_include_directories(tuckwright_library INTERFACE
  $<BUILD_INTERFACE:${PROJECT_SOURCE_DIR}/include> $<INSTALL_INTERFACE:${CMAKE_INSTALL_INCLUDEDIR}>)
target_link_libraries(tuckwright_library PRIVATE
  fmt::fmt yaml-cpp PkgConfig::PANGOCAIRO Threads::Threads
  $<BUILD_INTERFACE:${GLPK_LIBRARY}> $<BUILD_INTERFACE:CGAL::CGAL> $<INSTALL_INTERFACE:glpk> $<INSTALL_INTERFACE:gmp>
  $<INSTALL_INTERFACE:mpfr>)
if(TUCKWRIGHT_SANITIZE STREQUAL "thread")
  target_link_options(tuckwright_library INTERFACE -fsanitize=thread)
elseif(TUCKWRIGHT_SANITIZE)
  target_link_options(tuckwright_library INTERFACE -fsanitize=address,undefined)
endif()
