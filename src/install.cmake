# SPDX-License-Identifier: GPL-3.0-or-later
# What `cmake --install` puts where. Components: `program` (what people run) and `library` (for other CMake projects).
include(CMakePackageConfigHelpers)

install(TARGETS tuckwright RUNTIME COMPONENT program)
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
