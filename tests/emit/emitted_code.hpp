// Emitted code on disk, and the compilers that it is put through.
#pragma once

#include "sim/emit/write_directory.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <string>

namespace dialplate {

struct Ran {
    int status = -1;
    std::string output;  ///< Standard output and error.
};

inline Ran run_shell(const std::string& command) {
    Ran ran;
    FILE* const pipe = ::popen(("( " + command + " ) 2>&1").c_str(), "r");
    if (pipe == nullptr) return ran;
    std::array<char, 4096> part{};
    for (std::size_t n = 0; (n = std::fread(part.data(), 1, part.size(), pipe)) > 0;) {
        ran.output.append(part.data(), n);
    }
    ran.status = ::pclose(pipe);
    return ran;
}

/// A fresh directory of that name with the code in it.
inline std::filesystem::path emitted_into(const std::string& name, const Emission& emission) {
    const std::filesystem::path directory = std::filesystem::path(DIALPLATE_OUT) / "emit" / name;
    std::filesystem::remove_all(directory);
    const DirectoryWritten done = write_directory(directory, emission, false);
    EXPECT_EQ(done.error, "");
    return directory;
}

}  // namespace dialplate
