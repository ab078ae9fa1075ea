#include "tests/desk/window/stage.hpp"

#include <array>
#include <chrono>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <fcntl.h>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace dialplate {

using namespace std::chrono_literals;

Process::~Process() {
    stop();
}

void Process::stop() {
    if (!running()) return;
    ask_to_end();
    if (wait(3) == -2) {
        kill(id_, SIGKILL);
        wait(3);
    }
}

void Process::start(const std::vector<std::string>& words,
                    const std::vector<std::string>& environment,
                    const std::string& output) {
    status_ = -2;
    id_ = fork();
    if (id_ != 0) return;
    for (const std::string& setting : environment) {
        const std::size_t equals = setting.find('=');
        const std::string name = setting.substr(0, equals), value = setting.substr(equals + 1);
        if (value.empty())
            unsetenv(name.c_str());
        else
            setenv(name.c_str(), value.c_str(), 1);
    }
    if (!output.empty()) {
        const int file = open(output.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0644);
        dup2(file, 1);
        dup2(file, 2);
    }
    std::vector<char*> arguments;
    for (const std::string& word : words)
        arguments.push_back(const_cast<char*>(word.c_str()));
    arguments.push_back(nullptr);
    execvp(arguments[0], arguments.data());
    _exit(127);
}

bool Process::running() {
    return id_ > 0 && wait(0) == -2;
}

void Process::ask_to_end() {
    if (id_ > 0) kill(id_, SIGTERM);
}

void Process::end_at_once() {
    if (id_ > 0) kill(id_, SIGKILL);
}

int Process::wait(int seconds) {
    const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(seconds);
    while (status_ == -2 && id_ > 0) {
        int how = 0;
        if (waitpid(id_, &how, WNOHANG) == id_) {
            status_ = WIFEXITED(how) ? WEXITSTATUS(how) : -1;
            id_ = -1;
            break;
        }
        if (std::chrono::steady_clock::now() >= end) break;
        std::this_thread::sleep_for(5ms);
    }
    return status_;
}

std::string output_of(const std::string& command) {
    std::string output;
    FILE* pipe = popen(command.c_str(), "r");
    if (pipe == nullptr) return output;
    std::array<char, 65536> piece;
    while (const std::size_t size = fread(piece.data(), 1, piece.size(), pipe))
        output.append(piece.data(), size);
    pclose(pipe);
    return output;
}

std::string Stage::raise(WindowSize size) {
    camera_.reset();
    server_.stop();
    // The server finds a free number by itself and tells it once it listens. Without -noreset it would begin anew
    // whenever the last connection closes, and refuse others meanwhile.
    int ends[2];
    if (pipe(ends) != 0) return "no pipe to Xvfb";
    server_.start({"Xvfb",
                   "-displayfd",
                   std::to_string(ends[1]),
                   "-noreset",
                   "-nolisten",
                   "tcp",
                   "-dpi",
                   "96",
                   "-screen",
                   "0",
                   std::to_string(size.width) + "x" + std::to_string(size.height) + "x24"},
                  {},
                  "/dev/null");
    close(ends[1]);
    std::string number;
    for (char digit = 0; read(ends[0], &digit, 1) == 1 && digit != '\n';)
        number += digit;
    close(ends[0]);
    if (number.empty()) return "Xvfb does not start";
    display_ = ":" + number;
    camera_ = std::make_unique<Camera>(display_);
    return {};
}

std::string Stage::hands(const std::string& words) const {
    return output_of("DISPLAY=" + display_ + " xdotool " + words + " 2>&1");
}

}  // namespace dialplate
