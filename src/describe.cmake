# SPDX-License-Identifier: GPL-3.0-or-later
# Writes what the program tells of itself: the manual page, and what shells complete. Given: PROGRAM, FOLDER.
function(write_told file)
  execute_process(COMMAND ${PROGRAM} ${ARGN} OUTPUT_FILE ${FOLDER}/${file} RESULT_VARIABLE result)
  if(NOT result EQUAL 0)
    message(FATAL_ERROR "${PROGRAM} ${ARGN} failed: ${result}")
  endif()
endfunction()

file(MAKE_DIRECTORY ${FOLDER})
write_told(tuckwright.1 manual)
write_told(tuckwright.bash completion bash)
write_told(_tuckwright completion zsh)
write_told(tuckwright.fish completion fish)
