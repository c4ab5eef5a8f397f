# SPDX-License-Identifier: GPL-3.0-or-later
# Files that the program writes for people become part of it. Sets nothing but adds to `cli_sources`.
set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS
  ${PROJECT_SOURCE_DIR}/src/cli/new_kit.yaml ${PROJECT_SOURCE_DIR}/kits/kit.schema.json)
file(READ ${PROJECT_SOURCE_DIR}/src/cli/new_kit.yaml NEW_KIT_TEMPLATE)
file(READ ${PROJECT_SOURCE_DIR}/kits/kit.schema.json KIT_SCHEMA)
configure_file(${PROJECT_SOURCE_DIR}/src/cli/new_kit_texts.cpp.in ${PROJECT_BINARY_DIR}/new_kit_texts.cpp @ONLY)
list(APPEND cli_sources ${PROJECT_BINARY_DIR}/new_kit_texts.cpp)
