#include "sim/emit/write_directory.hpp"

#include "sim/emit/manifest.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <chrono>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <string>
#include <sys/resource.h>

namespace dialplate {
namespace {

namespace fs = std::filesystem;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

Emission small_emission() {
    Emission emission;
    emission.sketch = "small";
    emission.files = {{"layout.hpp", "layout one\n", false},
                      {"small.ino", "sketch one\n", true},
                      {"src/dialplate/screen.hpp", "engine\n", false},
                      {"wiring.hpp", "pins one\n", true}};
    return emission;
}

class WriteDirectory : public testing::Test {
protected:
    void SetUp() override {
        root_ = fs::path(DIALPLATE_OUT) / "write_directory" /
                testing::UnitTest::GetInstance()->current_test_info()->name();
        fs::remove_all(root_);
        fs::create_directories(root_);
    }

    [[nodiscard]] fs::path at(const std::string& name) const { return root_ / name; }

    void write(const std::string& name, const std::string& text) const {
        fs::create_directories(at(name).parent_path());
        std::ofstream(at(name), std::ios::binary) << text;
    }

    /// Everything below the test's folder: a file with its content, a directory as "/".
    [[nodiscard]] std::map<std::string, std::string> tree() const {
        std::map<std::string, std::string> all;
        for (const auto& entry : fs::recursive_directory_iterator(root_)) {
            std::ifstream in(entry.path(), std::ios::binary);
            all[entry.path().lexically_relative(root_).string()] =
                entry.is_directory() ? "/"
                                     : std::string{std::istreambuf_iterator<char>(in),
                                                   std::istreambuf_iterator<char>()};
        }
        return all;
    }

    fs::path root_;
};

TEST_F(WriteDirectory, MakesItWithAllFilesAndTheirManifest) {
    const DirectoryWritten done = write_directory(at("a/b/"), small_emission(), false);
    EXPECT_EQ(done.error, "");
    EXPECT_THAT(done.written,
                ElementsAre("layout.hpp", "small.ino", "src/dialplate/screen.hpp", "wiring.hpp"));
    const auto all = tree();
    EXPECT_EQ(all.size(), 9U);  // a, b, src, dialplate, four files, the manifest
    EXPECT_EQ(all.at("a/b/src/dialplate/screen.hpp"), "engine\n");
    EXPECT_EQ(read_manifest(all.at("a/b/emitted.txt"))->at("wiring.hpp"),
              fingerprint("pins one\n"));
    const fs::perms mode = fs::status(at("a/b")).permissions();
    EXPECT_EQ(mode, fs::status(root_).permissions()) << "as open as any new directory";
}

TEST_F(WriteDirectory, WritesIntoAnEmptyOne) {
    fs::create_directories(at("d"));
    EXPECT_EQ(write_directory(at("d"), small_emission(), false).error, "");
    EXPECT_EQ(tree().size(), 8U);
}

TEST_F(WriteDirectory, RefusesForeignFiles) {
    write("d/notes.txt", "mine\n");
    const auto before = tree();
    const DirectoryWritten done = write_directory(at("d"), small_emission(), false);
    EXPECT_THAT(done.error, HasSubstr("notes.txt"));
    EXPECT_THAT(done.error, HasSubstr("--force"));
    EXPECT_EQ(tree(), before);
}

TEST_F(WriteDirectory, RefusesForeignFilesBesideItsOwnAndInFolders) {
    ASSERT_EQ(write_directory(at("d"), small_emission(), false).error, "");
    write("d/src/mine.cpp", "mine\n");
    const auto before = tree();
    EXPECT_THAT(write_directory(at("d"), small_emission(), false).error, HasSubstr("src/mine.cpp"));
    EXPECT_EQ(tree(), before);
}

TEST_F(WriteDirectory, TakesAForgedManifestForAForeignFile) {
    write("d/emitted.txt", "whatever\n");
    EXPECT_THAT(write_directory(at("d"), small_emission(), false).error, HasSubstr("emitted.txt"));
}

TEST_F(WriteDirectory, LeavesForeignFilesAloneWhenForced) {
    write("d/notes.txt", "mine\n");
    write("d/layout.hpp", "mine, of the same name\n");
    EXPECT_EQ(write_directory(at("d"), small_emission(), true).error, "");
    const auto all = tree();
    EXPECT_EQ(all.at("d/notes.txt"), "mine\n");
    EXPECT_EQ(all.at("d/layout.hpp"), "layout one\n");
}

TEST_F(WriteDirectory, TouchesNothingThatIsTheSame) {
    ASSERT_EQ(write_directory(at("d"), small_emission(), false).error, "");
    const auto time = fs::last_write_time(at("d/wiring.hpp"));
    fs::last_write_time(at("d/wiring.hpp"), time - std::chrono::hours(1));
    const DirectoryWritten done = write_directory(at("d"), small_emission(), false);
    EXPECT_EQ(done.error, "");
    EXPECT_THAT(done.written, IsEmpty());
    EXPECT_EQ(done.unchanged.size(), 4U);
    EXPECT_EQ(fs::last_write_time(at("d/wiring.hpp")), time - std::chrono::hours(1));
}

TEST_F(WriteDirectory, KeepsWhatTheAuthorChanged) {
    ASSERT_EQ(write_directory(at("d"), small_emission(), false).error, "");
    write("d/wiring.hpp", "my pins\n");
    Emission next = small_emission();
    next.files[0].text = "layout two\n";
    next.files[3].text = "pins two\n";
    for (int again = 0; again < 2; ++again) {
        const DirectoryWritten done = write_directory(at("d"), next, false);
        EXPECT_EQ(done.error, "");
        EXPECT_THAT(done.kept, ElementsAre("wiring.hpp"));
        EXPECT_EQ(tree().at("d/wiring.hpp"), "my pins\n");
        EXPECT_EQ(tree().at("d/layout.hpp"), "layout two\n");
    }
    fs::remove(at("d/wiring.hpp"));
    EXPECT_EQ(write_directory(at("d"), next, false).error, "");
    EXPECT_EQ(tree().at("d/wiring.hpp"), "pins two\n");
}

TEST_F(WriteDirectory, RefusesToWriteOverChangesElsewhere) {
    ASSERT_EQ(write_directory(at("d"), small_emission(), false).error, "");
    write("d/layout.hpp", "patched\n");
    Emission next = small_emission();
    next.files[0].text = "layout two\n";
    const auto before = tree();
    EXPECT_THAT(write_directory(at("d"), next, false).error, HasSubstr("layout.hpp"));
    EXPECT_EQ(tree(), before);
    EXPECT_EQ(write_directory(at("d"), next, true).error, "");
    EXPECT_EQ(tree().at("d/layout.hpp"), "layout two\n");
}

TEST_F(WriteDirectory, RemovesWhatIsNoLongerPartOfIt) {
    Emission first = small_emission();
    first.files.push_back({"src/old/driver.hpp", "old\n", false});
    ASSERT_EQ(write_directory(at("d"), first, false).error, "");
    const DirectoryWritten done = write_directory(at("d"), small_emission(), false);
    EXPECT_EQ(done.error, "");
    EXPECT_THAT(done.removed, ElementsAre("src/old/driver.hpp"));
    EXPECT_FALSE(fs::exists(at("d/src/old")));
    EXPECT_TRUE(fs::exists(at("d/src/dialplate/screen.hpp")));
}

TEST_F(WriteDirectory, RefusesAFileInItsPlace) {
    write("d", "a file\n");
    EXPECT_THAT(write_directory(at("d"), small_emission(), true).error, HasSubstr("cannot write"));
    EXPECT_EQ(tree().at("d"), "a file\n");
}

/// While it lives, no file may grow beyond so many bytes: a full disk on demand.
class FileSizeLimit {
public:
    explicit FileSizeLimit(rlim_t bytes) : signal_(std::signal(SIGXFSZ, SIG_IGN)) {
        getrlimit(RLIMIT_FSIZE, &before_);
        const rlimit limit{bytes, before_.rlim_max};
        setrlimit(RLIMIT_FSIZE, &limit);
    }
    ~FileSizeLimit() {
        setrlimit(RLIMIT_FSIZE, &before_);
        std::signal(SIGXFSZ, signal_);
    }
    FileSizeLimit(const FileSizeLimit&) = delete;
    FileSizeLimit& operator=(const FileSizeLimit&) = delete;

private:
    void (*signal_)(int);
    rlimit before_{};
};

Emission large_emission() {
    Emission emission = small_emission();
    emission.files[2].text.assign(10000, 'e');
    return emission;
}

TEST_F(WriteDirectory, LeavesNothingBehindWhenADiskIsFull) {
    DirectoryWritten done;
    {
        const FileSizeLimit limit(4096);
        done = write_directory(at("a/b"), large_emission(), false);
    }
    EXPECT_THAT(done.error, HasSubstr("cannot write"));
    EXPECT_THAT(done.written, IsEmpty());
    EXPECT_THAT(tree(), IsEmpty());
}

TEST_F(WriteDirectory, LeavesTheOldOneWhenADiskIsFull) {
    ASSERT_EQ(write_directory(at("d"), small_emission(), false).error, "");
    const auto before = tree();
    DirectoryWritten done;
    {
        const FileSizeLimit limit(4096);
        done = write_directory(at("d"), large_emission(), false);
    }
    EXPECT_THAT(done.error, HasSubstr("cannot write"));
    EXPECT_EQ(tree(), before);
}

TEST_F(WriteDirectory, MovesEverythingBackWhenOnePlaceIsBlocked) {
    ASSERT_EQ(write_directory(at("d"), small_emission(), false).error, "");
    // A directory where the last file belongs: all other files are in place by then.
    fs::remove(at("d/wiring.hpp"));
    write("d/wiring.hpp/inside.txt", "mine\n");
    const auto before = tree();
    Emission next = small_emission();
    for (EmittedFile& file : next.files)
        file.text += "two\n";
    next.files.insert(next.files.begin(), {"added/first.hpp", "new\n", false});
    EXPECT_THAT(write_directory(at("d"), next, true).error, HasSubstr("wiring.hpp"));
    EXPECT_EQ(tree(), before);
}

}  // namespace
}  // namespace dialplate
