#include "sim/commands/whole_file.hpp"

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <fcntl.h>
#include <filesystem>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>

namespace dialplate {
namespace {

/// 0, or the error number of the write that failed.
int write_all(int descriptor, std::span<const std::uint8_t> bytes) {
    while (!bytes.empty()) {
        const ssize_t written = ::write(descriptor, bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR) {
            continue;
        }
        if (written < 0) {
            return errno;
        }
        bytes = bytes.subspan(static_cast<std::size_t>(written));
    }
    return 0;
}

std::string sentence(const std::string& path, int error) {
    return "cannot write \"" + path + "\": " + std::strerror(error);
}

std::string write_directly(const std::string& path, std::span<const std::uint8_t> bytes) {
    const int descriptor = ::open(path.c_str(), O_WRONLY | O_CLOEXEC);
    if (descriptor < 0) {
        return sentence(path, errno);
    }
    int error = write_all(descriptor, bytes);
    if (::close(descriptor) != 0 && error == 0) {
        error = errno;
    }
    return error == 0 ? std::string{} : sentence(path, error);
}

}  // namespace

std::string write_whole(const std::string& path, std::span<const std::uint8_t> bytes) {
    if (path == "-") {
        const int error = write_all(STDOUT_FILENO, bytes);
        return error == 0 ? std::string{} : sentence("standard output", error);
    }
    std::error_code trouble;
    const std::filesystem::file_status status = std::filesystem::status(path, trouble);
    if (std::filesystem::is_directory(status)) {
        return sentence(path, EISDIR);
    }
    if (std::filesystem::exists(status) && !std::filesystem::is_regular_file(status)) {
        return write_directly(path, bytes);
    }
    // A link is followed, so that the file it names is replaced and not the link.
    std::filesystem::path target = path;
    if (std::filesystem::exists(status)) {
        target = std::filesystem::canonical(target, trouble);
        if (trouble) {
            return sentence(path, trouble.value());
        }
        // Renaming would replace a file that its owner has protected against writing.
        if (::access(target.c_str(), W_OK) != 0) {
            return sentence(path, errno);
        }
    }
    std::string draft = target.string() + ".XXXXXX";
    const int descriptor = ::mkstemp(draft.data());
    if (descriptor < 0) {
        return sentence(path, errno);
    }
    // mkstemp grants the owner alone; a picture is as readable as the file it replaces, or as any
    // new file.
    const mode_t mask = ::umask(0);
    ::umask(mask);
    struct stat old {};
    const mode_t mode = ::stat(target.c_str(), &old) == 0 ? old.st_mode & 07777U : 0666U & ~mask;
    int error = write_all(descriptor, bytes);
    if (error == 0 && (::fchmod(descriptor, mode) != 0 || ::fsync(descriptor) != 0)) {
        error = errno;
    }
    if (::close(descriptor) != 0 && error == 0) {
        error = errno;
    }
    if (error == 0 && std::rename(draft.c_str(), target.c_str()) != 0) {
        error = errno;
    }
    if (error != 0) {
        ::unlink(draft.c_str());
        return sentence(path, error);
    }
    return {};
}

}  // namespace dialplate
