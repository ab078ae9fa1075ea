#include "sim/emit/manifest.hpp"

#include <gtest/gtest.h>

namespace dialplate {
namespace {

TEST(Manifest, FingerprintsAsPublished) {
    struct Row {
        const char* text;
        const char* print;
    };
    // Source: test vectors of the authors of FNV-1a, 64 bits (from memory).
    const Row rows[] = {
        {"", "cbf29ce484222325"},
        {"a", "af63dc4c8601ec8c"},
        {"foobar", "85944171f73967e8"},
    };
    for (const Row& row : rows) {
        EXPECT_EQ(fingerprint(row.text), row.print) << row.text;
    }
}

TEST(Manifest, ReadsBackWhatItWrote) {
    const Manifest manifest = {{"layout.hpp", fingerprint("a")},
                               {"src/dialplate/two words.hpp", fingerprint("b")}};
    EXPECT_EQ(read_manifest(manifest_text(manifest)), manifest);
    EXPECT_EQ(read_manifest(manifest_text({})), Manifest{});
}

TEST(Manifest, RejectsWhatItDidNotWrite) {
    const std::string good = manifest_text({{"a.hpp", fingerprint("a")}});
    for (std::size_t n = 0; n < good.size(); ++n) {
        const auto cut = read_manifest(good.substr(0, n));
        EXPECT_TRUE(!cut || cut->empty()) << n;
    }
    for (const char* name : {"../a", "/etc/passwd", "a/../../b", "a//b", "./a", "", "a/"}) {
        EXPECT_FALSE(read_manifest(manifest_text({{name, fingerprint("a")}}))) << name;
    }
}

}  // namespace
}  // namespace dialplate
