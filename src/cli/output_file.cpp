// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/output_file.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>

namespace tuckwright::cli
{

namespace
{

namespace fs = std::filesystem;

Problem failed(const std::string& path, int error)
{
    return {path, 0, 0, "cannot be written: " + std::generic_category().message(error),
            "check the folder and its permissions"};
}

/// Where the bytes go: a link is followed, so that it stays a link.
fs::path target_of(const std::string& path)
{
    std::error_code error;
    const auto whole = fs::absolute(path, error); // so that the folder has a name
    auto target = fs::weakly_canonical(whole, error);
    return error ? whole : target;
}

constexpr const char* opened = "/proc/self/fd/"; ///< where a file without a name can be given one

/// What is written, gone again unless it took the target's place. Until it is whole it has no name, where the file system
/// can do that: then nothing of it is left if the program is killed. Elsewhere it lies beside the target.
class Beside
{
public:
    explicit Beside(const fs::path& target) : target_(target)
    {
        if (::access(opened, X_OK) == 0) {
            file_ = ::open(target.parent_path().c_str(), O_WRONLY | O_TMPFILE | O_CLOEXEC, 0666);
        }
        if (file_ < 0) {
            give_name([this] { return file_ = ::open(path_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666); });
        }
    }
    Beside(const Beside&) = delete;
    Beside& operator=(const Beside&) = delete;
    ~Beside()
    {
        if (file_ >= 0) {
            ::close(file_);
        }
        if (named_) {
            ::unlink(path_.c_str());
        }
    }

    int error() const { return error_; }

    bool write(std::string_view text)
    {
        while (!text.empty()) {
            const auto written = ::write(file_, text.data(), text.size());
            if (written < 0 && errno != EINTR) {
                return note();
            }
            text.remove_prefix(written > 0 ? static_cast<std::size_t>(written) : 0);
        }
        return ::fsync(file_) == 0 || note();
    }

    bool take_its_place()
    {
        struct ::stat old {
        };
        if (::stat(target_.c_str(), &old) == 0 && ::fchmod(file_, old.st_mode & 07777U) != 0) {
            return note();
        }
        const std::string nameless = opened + std::to_string(file_);
        if (!named_ && !give_name([&] {
                return ::linkat(AT_FDCWD, nameless.c_str(), AT_FDCWD, path_.c_str(), AT_SYMLINK_FOLLOW);
            })) {
            return false;
        }
        if (::rename(path_.c_str(), target_.c_str()) != 0) {
            return note();
        }
        named_ = false;
        return true;
    }

private:
    /// Names may be left over from a run that was killed.
    template <class Make> bool give_name(Make make)
    {
        constexpr int most_tries = 100;
        for (int i = 0; i < most_tries && !named_; ++i) {
            path_ = target_.parent_path() / ("." + target_.filename().string().substr(0, 100) + "." +
                                             std::to_string(::getpid()) + "-" + std::to_string(i));
            named_ = make() >= 0;
            error_ = named_ ? 0 : errno;
            if (!named_ && error_ != EEXIST) {
                return false;
            }
        }
        return named_;
    }
    bool note()
    {
        error_ = errno;
        return false;
    }

    fs::path target_, path_;
    int file_ = -1, error_ = 0;
    bool named_ = false; ///< beside the target, by path_
};

/// So that the new name, too, is on the disk. Not every file system can; then nothing is lost but speed of recovery.
void sync_folder(const fs::path& folder)
{
    const int file = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (file >= 0) {
        (void)::fsync(file);
        ::close(file);
    }
}

} // namespace

std::optional<Problem> cannot_write(const std::string& path, const std::string& source)
{
    std::error_code error;
    const fs::path target = target_of(path);
    if (fs::is_directory(target, error)) {
        return Problem{path, 0, 0, "is a folder, not a file", "name a file in it"};
    }
    if (fs::exists(target, error)) {
        if (fs::equivalent(target, source, error)) {
            return Problem{path, 0, 0, "is the file that is read, and would be lost",
                           "name another file for the output"};
        }
        if (!fs::is_regular_file(target, error)) {
            return Problem{path, 0, 0, "is not an ordinary file", "give - for standard output"};
        }
        if (::access(target.c_str(), W_OK) != 0) {
            return failed(path, errno);
        }
    } else if (target.filename().empty()) {
        return Problem{path, 0, 0, "names no file", "name a file in that folder"};
    } else if (error == std::errc::filename_too_long) {
        return failed(path, error.value());
    }
    if (!fs::is_directory(target.parent_path(), error)) {
        return Problem{path, 0, 0, "cannot be written: there is no folder " + target.parent_path().string(),
                       "make the folder first"};
    }
    const Beside trial(target);
    return trial.error() != 0 ? std::optional(failed(path, trial.error())) : std::nullopt;
}

std::optional<Problem> write_file(const std::string& path, std::string_view text)
{
    const fs::path target = target_of(path);
    Beside fresh(target);
    if (fresh.error() != 0 || !fresh.write(text) || !fresh.take_its_place()) {
        return failed(path, fresh.error());
    }
    sync_folder(target.parent_path());
    return std::nullopt;
}

} // namespace tuckwright::cli
