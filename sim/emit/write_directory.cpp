#include "sim/emit/write_directory.hpp"

#include "sim/emit/manifest.hpp"

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <iterator>
#include <optional>
#include <set>
#include <sys/stat.h>
#include <system_error>
#include <utility>

namespace dialplate {
namespace {

namespace fs = std::filesystem;

std::string quoted(const fs::path& path) {
    return '"' + path.string() + '"';
}

/// Where a step failed, and why.
struct Failure {
    std::string sentence;
};

[[noreturn]] void fail(const std::string& what, const fs::path& path, int error) {
    throw Failure{"cannot " + what + ' ' + quoted(path) + ": " + std::strerror(error)};
}

std::optional<std::string> content_of(const fs::path& file) {
    std::error_code trouble;
    if (!fs::is_regular_file(fs::symlink_status(file, trouble))) return std::nullopt;
    std::ifstream in(file, std::ios::binary);
    std::string text{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
    if (!in) return std::nullopt;
    return text;
}

void write_file(const fs::path& file, const std::string& text) {
    FILE* out = std::fopen(file.c_str(), "wxb");
    if (out == nullptr) fail("write", file, errno);
    int error = std::fwrite(text.data(), 1, text.size(), out) == text.size() ? 0 : errno;
    if (std::fclose(out) != 0 && error == 0) error = errno;
    if (error != 0) fail("write", file, error);
}

void move(const fs::path& from, const fs::path& to) {
    if (std::rename(from.c_str(), to.c_str()) != 0) fail("write", to, errno);
}

/// Names of all that is not a directory, in order.
std::set<std::string> files_in(const fs::path& directory) {
    std::set<std::string> names;
    for (const auto& entry : fs::recursive_directory_iterator(directory)) {
        if (entry.is_symlink() || !entry.is_directory()) {
            names.insert(entry.path().lexically_relative(directory).generic_string());
        }
    }
    return names;
}

std::string listed(const std::vector<std::string>& names) {
    constexpr std::size_t most = 3;
    std::string text;
    for (std::size_t i = 0; i < names.size() && i < most; ++i) {
        text += (i == 0 ? "" : ", ") + names[i];
    }
    return names.size() > most ? text + " and " + std::to_string(names.size() - most) + " more"
                               : text;
}

/// A directory that is removed with all that is still in it.
class Stage {
public:
    explicit Stage(const fs::path& beginning) {
        std::string name = beginning.string() + "XXXXXX";
        if (::mkdtemp(name.data()) == nullptr) fail("write into", beginning.parent_path(), errno);
        path_ = name;
    }
    ~Stage() {
        std::error_code trouble;
        if (!path_.empty()) fs::remove_all(path_, trouble);
    }
    Stage(const Stage&) = delete;
    Stage& operator=(const Stage&) = delete;

    [[nodiscard]] const fs::path& path() const { return path_; }
    void leave() { path_.clear(); }

private:
    fs::path path_;
};

/// Directories made on the way to one, and taken away again unless all goes well.
class MadeDirectories {
public:
    MadeDirectories() = default;
    ~MadeDirectories() {
        std::error_code trouble;
        for (auto it = made_.rbegin(); it != made_.rend(); ++it)
            fs::remove(*it, trouble);
    }
    MadeDirectories(const MadeDirectories&) = delete;
    MadeDirectories& operator=(const MadeDirectories&) = delete;

    void make(const fs::path& directory) {
        std::error_code trouble;
        if (directory.empty() || fs::is_directory(directory, trouble)) return;
        make(directory.parent_path());
        if (::mkdir(directory.c_str(), 0777) != 0) fail("make the directory", directory, errno);
        made_.push_back(directory);
    }
    void keep() { made_.clear(); }

private:
    std::vector<fs::path> made_;
};

/// Files moved into place; moved back unless all goes well.
class Moves {
public:
    /// @param old  Directory for what was in the places.
    explicit Moves(fs::path old) : old_(std::move(old)) {}
    ~Moves() {
        for (auto it = done_.rbegin(); it != done_.rend(); ++it) {
            std::rename(it->first.c_str(), it->second.c_str());
        }
    }
    Moves(const Moves&) = delete;
    Moves& operator=(const Moves&) = delete;

    /// Takes what is at `place` away, if there is something.
    void clear(const fs::path& place) {
        std::error_code trouble;
        const fs::file_status status = fs::symlink_status(place, trouble);
        if (!fs::exists(status)) return;
        if (fs::is_directory(status)) fail("write", place, EISDIR);
        const fs::path to = old_ / std::to_string(done_.size());
        move(place, to);
        done_.emplace_back(to, place);
    }
    void put(const fs::path& from, const fs::path& place) {
        clear(place);
        move(from, place);
        done_.emplace_back(place, from);
    }
    void keep() { done_.clear(); }

private:
    fs::path old_;
    std::vector<std::pair<fs::path, fs::path>> done_;  // Where it is now, where it was.
};

/// What is to be done, decided before anything is touched.
struct Plan {
    std::vector<const EmittedFile*> write;
    Manifest manifest;
};

Plan plan(const fs::path& directory,
          const Emission& emission,
          bool force,
          DirectoryWritten& result) {
    Plan plan;
    std::set<std::string> present;
    std::optional<Manifest> before;
    if (fs::exists(directory)) {
        present = files_in(directory);
        if (const auto text = content_of(directory / manifest_name)) before = read_manifest(*text);
    }
    const Manifest known = before.value_or(Manifest{});
    std::vector<std::string> foreign;
    for (const std::string& name : present) {
        if (!known.contains(name) && !(before && name == manifest_name)) foreign.push_back(name);
    }
    if (!foreign.empty() && !force) {
        throw Failure{quoted(directory) + " holds files that dialplate did not write (" +
                      listed(foreign) +
                      "): choose another directory, or --force to write there all the same"};
    }
    const auto changed = [&](const std::string& name) {
        const auto entry = known.find(name);
        if (entry == known.end() || !present.contains(name)) return false;
        const auto text = content_of(directory / name);
        return !text || fingerprint(*text) != entry->second;
    };
    std::vector<std::string> spoilt;
    for (const EmittedFile& file : emission.files) {
        const std::string print = fingerprint(file.text);
        if (present.contains(file.name) && content_of(directory / file.name) == file.text) {
            result.unchanged.push_back(file.name);
            plan.manifest[file.name] = print;
            continue;
        }
        if (changed(file.name)) {
            if (file.authors) {
                result.kept.push_back(file.name);
                plan.manifest[file.name] = known.find(file.name)->second;
                continue;
            }
            spoilt.push_back(file.name);
        }
        plan.write.push_back(&file);
        plan.manifest[file.name] = print;
    }
    if (!spoilt.empty() && !force) {
        throw Failure{listed(spoilt) + " in " + quoted(directory) +
                      (spoilt.size() == 1 ? " was" : " were") +
                      " changed since dialplate wrote there: --force writes over the changes"};
    }
    for (const auto& [name, print] : known) {
        if (plan.manifest.contains(name) || !present.contains(name)) continue;
        if (changed(name)) {
            result.kept.push_back(name);
            plan.manifest[name] = print;
        } else {
            result.removed.push_back(name);
        }
    }
    return plan;
}

void stage_files(const fs::path& root, const Plan& plan) {
    for (const EmittedFile* file : plan.write) {
        const fs::path place = root / file->name;
        std::error_code trouble;
        fs::create_directories(place.parent_path(), trouble);
        if (trouble) fail("make the directory", place.parent_path(), trouble.value());
        write_file(place, file->text);
    }
    write_file(root / manifest_name, manifest_text(plan.manifest));
}

void write_new(const fs::path& directory, const Plan& plan) {
    MadeDirectories made;
    made.make(directory.parent_path());
    Stage stage(directory.parent_path() / ('.' + directory.filename().string() + '.'));
    stage_files(stage.path(), plan);
    // mkdtemp grants the owner alone; a new directory is as open as any other.
    const mode_t mask = ::umask(0);
    ::umask(mask);
    if (::chmod(stage.path().c_str(), 0777U & ~mask) != 0) fail("write", directory, errno);
    move(stage.path(), directory);
    stage.leave();
    made.keep();
}

void write_into(const fs::path& directory, const Plan& plan, const DirectoryWritten& result) {
    Stage stage(directory / ".emit.");
    const fs::path fresh = stage.path() / "new", old = stage.path() / "old";
    for (const fs::path& folder : {fresh, old}) {
        if (::mkdir(folder.c_str(), 0777) != 0) fail("write", folder, errno);
    }
    stage_files(fresh, plan);
    MadeDirectories made;
    Moves moves(old);
    for (const EmittedFile* file : plan.write) {
        made.make((directory / file->name).parent_path());
        moves.put(fresh / file->name, directory / file->name);
    }
    for (const std::string& name : result.removed) {
        moves.clear(directory / name);
    }
    moves.put(fresh / manifest_name, directory / manifest_name);
    moves.keep();
    made.keep();
    for (const std::string& name : result.removed) {
        // Folders that have become empty; one that is not stays.
        std::error_code trouble;
        for (fs::path folder = fs::path(name).parent_path();
             !folder.empty() && fs::remove(directory / folder, trouble);
             folder = folder.parent_path()) {
        }
    }
}

}  // namespace

DirectoryWritten write_directory(const fs::path& given, const Emission& emission, bool force) {
    DirectoryWritten result;
    try {
        // Without the slash at its end, and through a link, so that the directory itself is meant.
        fs::path directory = fs::weakly_canonical(fs::absolute(given));
        if (!directory.has_filename()) directory = directory.parent_path();
        if (fs::exists(directory) && !fs::is_directory(directory)) {
            fail("write into", given, ENOTDIR);
        }
        const Plan steps = plan(directory, emission, force, result);
        if (fs::exists(directory)) {
            write_into(directory, steps, result);
        } else {
            write_new(directory, steps);
        }
        for (const EmittedFile* file : steps.write)
            result.written.push_back(file->name);
    } catch (const Failure& failure) {
        result = {};
        result.error = failure.sentence;
    } catch (const fs::filesystem_error& error) {
        result = {};
        result.error = "cannot write into " + quoted(given) + ": " + error.code().message();
    }
    return result;
}

}  // namespace dialplate
