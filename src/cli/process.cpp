// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/process.hpp"

#include <fcntl.h>
#include <signal.h> // NOLINT(modernize-deprecated-headers): what <csignal> leaves out is used
#include <sys/mman.h>
#include <unistd.h>

#include <initializer_list>

#include <cstddef>
#include <cstring>
#include <initializer_list>
#include <new>

#include "cli/exit_code.hpp"

namespace tuckwright::cli
{

namespace
{

/// Instead of a core dump without a word. Only calls that a signal handler may make.
extern "C" void tell_of_abort(int)
{
    constexpr std::size_t some = std::size_t{16} * 1024 * 1024;
    const bool has_memory =
        ::mmap(nullptr, some, PROT_READ | PROT_WRITE, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0) != MAP_FAILED;
    const char* const text = has_memory ? library_gave_up : not_enough_memory;
    (void)!::write(STDERR_FILENO, text, std::strlen(text));
    ::_exit(has_memory ? our_bug : wrong_input);
}

} // namespace

void prepare_process()
{
    for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) {
        if (::fcntl(stream, F_GETFD) < 0) {
            // The lowest free number is this stream's. Opened the wrong way round, it still fails when it is used.
            (void)::open("/dev/null", stream == STDIN_FILENO ? O_WRONLY : O_RDONLY);
        }
    }
    ::signal(SIGXFSZ, SIG_IGN);
    ::signal(SIGABRT, tell_of_abort);
}

void require_memory_for_drawing()
{
    constexpr std::size_t enough = std::size_t{256} * 1024 * 1024; // with what is set aside for a thread of theirs
    void* const trial = ::mmap(nullptr, enough, PROT_READ | PROT_WRITE, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0);
    if (trial == MAP_FAILED) {
        throw std::bad_alloc();
    }
    ::munmap(trial, enough);
}

} // namespace tuckwright::cli
