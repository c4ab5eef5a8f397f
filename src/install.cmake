# SPDX-License-Identifier: GPL-3.0-or-later
# What `cmake --install` puts where. Components: `program` (what people run) and `library` (for other CMake projects).
include(CMakePackageConfigHelpers)

install(TARGETS tuckwright RUNTIME COMPONENT program)
set(told ${PROJECT_BINARY_DIR}/told)
add_custom_command(TARGET tuckwright POST_BUILD COMMAND ${CMAKE_COMMAND}
  -DPROGRAM=$<TARGET_FILE:tuckwright> -DFOLDER=${told} -P ${PROJECT_SOURCE_DIR}/src/describe.cmake VERBATIM)
install(FILES ${told}/tuckwright.1 DESTINATION ${CMAKE_INSTALL_MANDIR}/man1 COMPONENT program)
install(FILES ${told}/tuckwright.bash DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions
        RENAME tuckwright COMPONENT program)
install(FILES ${told}/_tuckwright DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/vendor-completions COMPONENT program)
install(FILES ${told}/tuckwright.fish DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d COMPONENT program)
set(data_folder ${CMAKE_INSTALL_DATADIR}/tuckwright)
install(DIRECTORY ${PROJECT_SOURCE_DIR}/kits DESTINATION ${data_folder} COMPONENT program)

set(package_folder ${CMAKE_INSTALL_LIBDIR}/cmake/tuckwright)
install(TARGETS tuckwright_library EXPORT tuckwright-targets ARCHIVE COMPONENT library)
install(DIRECTORY ${PROJECT_SOURCE_DIR}/include/tuckwright DESTINATION ${CMAKE_INSTALL_INCLUDEDIR} COMPONENT library)
install(EXPORT tuckwright-targets NAMESPACE tuckwright:: DESTINATION ${package_folder} COMPONENT library)
configure_package_config_file(${PROJECT_SOURCE_DIR}/src/tuckwright-config.cmake.in
  ${PROJECT_BINARY_DIR}/tuckwright-config.cmake INSTALL_DESTINATION ${package_folder})
# Before 1.0 what is in the headers may change with each minor version.
write_basic_package_version_file(${PROJECT_BINARY_DIR}/tuckwright-config-version.cmake
  COMPATIBILITY SameMinorVersion)
install(FILES ${PROJECT_BINARY_DIR}/tuckwright-config.cmake ${PROJECT_BINARY_DIR}/tuckwright-config-version.cmake
        DESTINATION ${package_folder} COMPONENT library)

# The prefix is found from where the file lies, so that the whole may be moved.
file(RELATIVE_PATH TUCKWRIGHT_PC_PREFIX /${CMAKE_INSTALL_LIBDIR}/pkgconfig /)
configure_file(${PROJECT_SOURCE_DIR}/src/tuckwright.pc.in ${PROJECT_BINARY_DIR}/tuckwright.pc @ONLY)
install(FILES ${PROJECT_BINARY_DIR}/tuckwright.pc DESTINATION ${CMAKE_INSTALL_LIBDIR}/pkgconfig COMPONENT library)

# Licence and author, where Debian looks for them.
foreach(package tuckwright libtuckwright-dev)
  set(component program)
  if(package STREQUAL libtuckwright-dev)
    set(component library)
  endif()
  install(FILES ${PROJECT_SOURCE_DIR}/src/copyright DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/${package}
          COMPONENT ${component})
endforeach()

# A small program to begin with, as the tests build it.
install(FILES ${PROJECT_SOURCE_DIR}/tests/package/CMakeLists.txt ${PROJECT_SOURCE_DIR}/tests/package/berry_tin.cpp
        DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/libtuckwright-dev/examples COMPONENT library)

if(PROJECT_IS_TOP_LEVEL)
  include(${PROJECT_SOURCE_DIR}/src/package.cmake)
  include(${PROJECT_SOURCE_DIR}/src/reference.cmake)
endif()
