# SPDX-License-Identifier: GPL-3.0-or-later
# Debian packages by CPack: `tuckwright` (the program) and `libtuckwright-dev` (the library). `cpack -G DEB` in the build
# folder makes them.
set(CPACK_PACKAGE_NAME tuckwright)
set(CPACK_PACKAGE_VENDOR "tuckwright")
set(CPACK_PACKAGE_CONTACT "the makers of tuckwright <tuckwright@localhost>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "pack a small travel kit into the smallest bundle")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_COMPONENTS_ALL program library)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_RELEASE 1)
set(CPACK_DEBIAN_COMPRESSION_TYPE xz)

set(CPACK_COMPONENT_PROGRAM_DESCRIPTION
"Reads pots, cups, stoves, tins and bottles from a file, searches for the
smallest bundle that they pack into, proves with exact numbers that it fits,
and prints step by step how to put it together.")
set(CPACK_DEBIAN_PROGRAM_PACKAGE_NAME tuckwright)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SECTION misc)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SUGGESTS bash-completion)

set(CPACK_COMPONENT_LIBRARY_DESCRIPTION
"This is the library for other programs: static, with its headers, for CMake
(find_package) and pkg-config.")
set(CPACK_DEBIAN_LIBRARY_PACKAGE_NAME libtuckwright-dev)
set(CPACK_DEBIAN_LIBRARY_PACKAGE_SECTION libdevel)
set(CPACK_DEBIAN_LIBRARY_PACKAGE_SHLIBDEPS OFF)
set(CPACK_DEBIAN_LIBRARY_PACKAGE_DEPENDS
    "libfmt-dev, libyaml-cpp-dev, libglpk-dev, libgmp-dev, libmpfr-dev, libcairo2-dev, libpango1.0-dev, pkg-config")
include(CPack)
