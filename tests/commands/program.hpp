// The program as people and scripts run it, in a folder of its own for each test.
#pragma once

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <sys/wait.h>
#include <utility>

namespace dialplate {

inline const std::string coast = DIALPLATE_TREE "/layouts/coast-listener.json";
inline const std::string crowded = DIALPLATE_TREE "/layouts/crowded.json";

inline std::string content(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    std::stringstream out;
    out << in.rdbuf();
    return out.str();
}

struct Outcome {
    int status = -1;
    std::string out, err;
};

class Program : public testing::Test {
protected:
    Program() {
        const auto* info = testing::UnitTest::GetInstance()->current_test_info();
        folder_ = std::filesystem::path(DIALPLATE_OUT) / (std::string{"commands."} + info->name());
        std::filesystem::remove_all(folder_);
        std::filesystem::create_directories(folder_);
    }

    /// @param rest  Arguments for a shell, and where input comes from.
    Outcome run(const std::string& rest, const std::string& environment = "NO_COLOR=1") {
        const std::string out = (folder_ / "out").string();
        const std::string err = (folder_ / "err").string();
        const std::string command = "cd '" + folder_.string() + "' && " + environment + " '" +
                                    DIALPLATE_PROGRAM "' " + rest + " >'" + out + "' 2>'" + err +
                                    "'";
        const int status = std::system(command.c_str());
        return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, content(out), content(err)};
    }

    std::filesystem::path write(const std::string& name, const std::string& text) {
        std::ofstream(folder_ / name, std::ios::binary) << text;
        return folder_ / name;
    }

    std::filesystem::path folder_;
};

/// Width and height from a PNG header; zeros if it is none.
/// Source: PNG specification (ISO/IEC 15948), 5.2 signature and 11.2.2 IHDR.
inline std::pair<int, int> size_of_png(const std::string& bytes) {
    if (bytes.size() < 24 || bytes.substr(0, 8) != "\x89PNG\r\n\x1a\n") {
        return {0, 0};
    }
    const auto number = [&bytes](std::size_t at) {
        int n = 0;
        for (std::size_t i = at; i < at + 4; ++i) {
            n = n << 8 | static_cast<unsigned char>(bytes[i]);
        }
        return n;
    };
    return {number(16), number(20)};
}

}  // namespace dialplate
