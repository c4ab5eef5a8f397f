# SPDX-License-Identifier: GPL-3.0-or-later
# Runs a command; what it says is in `said` then. If it fails, so does the test.
function(run what)
  execute_process(COMMAND ${ARGN} RESULT_VARIABLE result OUTPUT_VARIABLE said ERROR_VARIABLE said)
  if(NOT result EQUAL 0)
    message(FATAL_ERROR "${what} failed:\n${said}")
  endif()
  set(said "${said}" PARENT_SCOPE)
endfunction()
