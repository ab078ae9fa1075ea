#include "sim/edit/rescue.hpp"

#include <nlohmann/json.hpp>

#include <cerrno>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <unistd.h>

namespace dialplate {
namespace {

namespace fs = std::filesystem;

std::string absolute(const std::string& file) {
    std::error_code fault;
    const fs::path path = fs::weakly_canonical(file, fault);
    return fault ? file : path.string();
}

/// FNV-1a, 64 bits: the same name for the same path in every run.
/// Source: draft-eastlake-fnv, offset basis and prime.
std::uint64_t number_of(const std::string& text) {
    std::uint64_t number = 14695981039346656037u;
    for (const char c : text) {
        number ^= static_cast<unsigned char>(c);
        number *= 1099511628211u;
    }
    return number;
}

}  // namespace

std::string rescue_file(const std::string& layout_file) {
    const char* state = std::getenv("XDG_STATE_HOME");
    fs::path folder;
    if (state != nullptr && fs::path(state).is_absolute())
        folder = state;
    else if (const char* home = std::getenv("HOME"); home != nullptr && *home != '\0')
        folder = fs::path(home) / ".local" / "state";
    else
        return {};
    char name[32];
    std::snprintf(name,
                  sizeof name,
                  "-%016llx.json",
                  static_cast<unsigned long long>(number_of(absolute(layout_file))));
    return (folder / "dialplate" / (fs::path(layout_file).stem().string() + name)).string();
}

bool keep(const Rescue& rescue) {
    const std::string file = rescue_file(rescue.layout_file);
    if (file.empty()) return false;
    std::error_code fault;
    fs::create_directories(fs::path(file).parent_path(), fault);
    const nlohmann::json document{
        {"layout", absolute(rescue.layout_file)}, {"saved", rescue.saved}, {"text", rescue.text}};
    return write_whole(
               file, document.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace) + "\n")
        .empty();
}

std::optional<Rescue> kept(const std::string& layout_file) {
    const std::string file = rescue_file(layout_file);
    if (file.empty()) return std::nullopt;
    std::ifstream in(file, std::ios::binary);
    if (!in) return std::nullopt;
    const auto document = nlohmann::json::parse(in, nullptr, false);
    if (!document.is_object()) return std::nullopt;
    for (const char* member : {"layout", "saved", "text"})
        if (!document.contains(member) || !document[member].is_string()) return std::nullopt;
    Rescue rescue{document["layout"], document["saved"], document["text"]};
    if (rescue.layout_file != absolute(layout_file)) return std::nullopt;
    return rescue;
}

void forget(const std::string& layout_file) {
    const std::string file = rescue_file(layout_file);
    if (file.empty()) return;
    std::error_code fault;
    fs::remove(file, fault);
}

std::string write_whole(const std::string& file, const std::string& text) {
    std::error_code fault;
    const fs::path there =
        fs::is_symlink(file, fault) ? fs::weakly_canonical(file, fault) : fs::path(file);
    const fs::path young = there.string() + ".new" + std::to_string(getpid());
    std::FILE* out = std::fopen(young.c_str(), "wb");
    if (out == nullptr) return "cannot write " + young.string() + ": " + std::strerror(errno);
    const bool written = std::fwrite(text.data(), 1, text.size(), out) == text.size() &&
                         std::fflush(out) == 0 && fsync(fileno(out)) == 0;
    const int reason = errno;
    if (std::fclose(out) != 0 || !written) {
        fs::remove(young, fault);
        return "cannot write " + young.string() + ": " + std::strerror(reason);
    }
    if (const fs::file_status old = fs::status(there, fault); fs::exists(old))
        fs::permissions(young, old.permissions(), fault);
    fs::rename(young, there, fault);
    if (!fault) return {};
    const std::string words = "cannot write " + there.string() + ": " + fault.message();
    fs::remove(young, fault);
    return words;
}

}  // namespace dialplate
