#include "tests/firmware/timed_layouts.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <random>
#include <vector>

namespace dialplate {
namespace {

using Json = nlohmann::ordered_json;

constexpr const char* paints[] = {"ground", "panel", "ink", "soft", "glow", "even"};
constexpr int lines_apart = 2;                          // between rows and columns of items, px
constexpr int picture_width = 72, picture_height = 60;  // of layouts/mast.png

struct DrawnFace {
    std::string name;
    int height;
    int digit;   ///< Columns of one, at most.
    bool words;  ///< Has letters; segments have digits only.
};

struct FontFile {
    const char* file;
    int size, digit;
};
constexpr FontFile fonts[] = {{"legend9.bdf", 9, 7},
                              {"legend14.bdf", 14, 10},
                              {"figures16.bdf", 16, 11},
                              {"figures24.bdf", 24, 16},
                              {"figures32.bdf", 32, 21}};

class Maker {
public:
    explicit Maker(std::uint32_t seed) : seed_(seed), random_(seed) {}

    std::string make() {
        const bool upright = often(30);
        width_ = upright ? 240 : 320;
        height_ = upright ? 320 : 240;
        layout_["title"] = "Timed " + std::to_string(seed_);
        layout_["display"] = "2.8in-ILI9341";
        layout_["turn"] = upright ? 0 : 90;
        layout_["mcu"] = {{"part", "ATmega328P"}, {"clock_mhz", 16}};
        layout_["bus"] = {{"kind", "spi_timed"}, {"clock_mhz", 8}};
        colours();
        faces();
        values();
        page_names_ = {"first"};
        if (often(50)) page_names_.push_back("second");
        layout_["pages"] = Json::array();
        for (const std::string& name : page_names_) {
            layout_["pages"].push_back(page(name));
        }
        return layout_.dump(1);
    }

private:
    // Distributions differ between libraries, the generator's numbers do not.
    int below(int count) { return static_cast<int>(random_() % static_cast<unsigned>(count)); }
    int between(int least, int most) { return least + below(std::max(0, most - least) + 1); }
    bool often(int percent) { return below(100) < percent; }
    template <class T>
    T one_of(const std::vector<T>& list) {
        return list[static_cast<std::size_t>(below(static_cast<int>(list.size())))];
    }
    std::string paint() { return paints[below(static_cast<int>(std::size(paints)))]; }

    Json tones() { return {{"ink", paint()}, {"fill", paint()}, {"edge", paint()}}; }

    void colours() {
        for (const char* name : paints) {
            char text[8];
            std::snprintf(text, sizeof text, "#%06X", static_cast<unsigned>(random_() & 0xFFFFFF));
            layout_["paints"][name] = text;
        }
        layout_["paints"]["even"] = often(50) ? "#000000" : "#FFFFFF";
        layout_["looks"]["first"] = {{"idle", tones()}, {"pressed", tones()}};
        layout_["looks"]["second"] = {
            {"idle", tones()}, {"pressed", tones()}, {"active", tones()}, {"disabled", tones()}};
    }

    void faces() {
        const std::string all_in = one_of<std::string>({"", "", "plain", "runs", "context"});
        const std::vector<std::string> packings = {"plain", "runs", "context"};
        const bool enlarge = often(45);
        for (int f = 0, count = between(2, 3); f < count; ++f) {
            const FontFile& font =
                fonts[f == 0 ? below(2) : below(static_cast<int>(std::size(fonts)))];
            const int scale =
                enlarge && f > 0 && often(70) ? between(2, font.size > 16 ? 2 : 4) : 1;
            const std::string name = "face " + std::to_string(f);
            Json face = {{"file", font.file}, {"size", font.size}, {"scale", scale}};
            face["packing"] = all_in.empty() ? one_of(packings) : all_in;
            layout_["faces"][name] = face;
            faces_.push_back({name, font.size * scale, font.digit * scale, true});
        }
        // Large pixels: digits that change by what differs.
        if (often(40)) {
            const FontFile& font = fonts[often(50) ? 2 : 3];
            const int scale = font.size > 16 ? 2 : 3;
            layout_["faces"]["changing"] = {{"file", font.file},
                                            {"size", font.size},
                                            {"scale", scale},
                                            {"packing", often(50) ? "plain" : "runs"}};
            faces_.push_back({"changing", font.size * scale, font.digit * scale, true});
        }
        if (often(50)) {
            const int size = between(12, 44);
            layout_["faces"]["smooth"] = {
                {"file", often(50) ? "DejaVuSans-Bold.ttf" : "LiberationSans-Regular.ttf"},
                {"size", size},
                {"smooth", true},
                {"packing", often(60) ? "context" : "plain"}};
            faces_.push_back({"smooth", size, 2 * size / 3, true});
        }
        if (often(45)) {
            const int stroke = between(2, 8);
            const int width = 2 * stroke + between(4, 22), height = 3 * stroke + between(8, 40);
            layout_["faces"]["segments"] = {{"segments",
                                             {{"width", width},
                                              {"height", height},
                                              {"stroke", stroke},
                                              {"gap", between(1, 6)}}}};
            faces_.push_back({"segments", height, width + 6, false});
        }
    }

    /// The largest as often as any other that fits.
    DrawnFace face(bool words, int room) {
        std::vector<DrawnFace> fit;
        for (const DrawnFace& one : faces_) {
            if ((one.words || !words) && one.height <= room) fit.push_back(one);
        }
        if (fit.empty()) return faces_.front();
        return often(50) ? *std::max_element(fit.begin(),
                                             fit.end(),
                                             [](const DrawnFace& a, const DrawnFace& b) {
                                                 return a.height < b.height;
                                             })
                         : one_of(fit);
    }

    void values() {
        Json& all = layout_["values"];
        const int least = one_of<int>({0, 1'000, 150'000, 3'000'000});
        all["frequency"] = {{"type", "number"},
                            {"unit", "Hz"},
                            {"min", least},
                            {"max", least + one_of<int>({9'000, 900'000, 26'000'000})},
                            {"start", least + between(0, 8'000)},
                            {"role", "frequency"}};
        all["step"] = {{"type", "choice"},
                       {"role", "step"},
                       {"choices",
                        {{{"text", "10"}, {"number", 10}},
                         {{"text", "1k"}, {"number", 1000}},
                         {{"text", "5k"}, {"number", 5000}}}}};
        all["volume"] = {{"type", "number"}, {"min", often(50) ? -50 : 0}, {"max", 99}};
        all["signal"] = {
            {"type", "level"}, {"min", -127}, {"max", -13}, {"start", -80}, {"role", "signal"}};
        all["mode"] = {{"type", "choice"}, {"choices", {"AM", "LSB", "CW"}}, {"start", "LSB"}};
        all["lock"] = {{"type", "flag"}, {"start", often(50)}};
        tuned_ = often(60);
    }

    Json action() {
        switch (below(4)) {
            case 0:
                return {{"set", "mode"}, {"to", one_of<std::string>({"AM", "LSB", "CW"})}};
            case 1:
                return {{"step", "volume"}, {"by", often(50) ? 1 : -7}};
            case 2:
                return {{"step", "mode"}, {"by", 1}, {"around", true}};
            default:
                return {{"toggle", "lock"}};
        }
    }

    Json readout(int width, int height) {
        const DrawnFace of = face(false, height - 4);
        std::vector<Json> groups;
        for (const Json& one : {Json{1},
                                Json{2},
                                Json{3},
                                Json{1, 1},
                                Json{3, 2},
                                Json{2, 3},
                                Json{4, 3},
                                Json{2, 3, 3},
                                Json{3, 3, 2}}) {
            int cells = 0;
            for (const Json& group : one)
                cells += group.get<int>() + 1;
            if ((cells + 1) * of.digit <= width) groups.push_back(one);
        }
        if (groups.empty()) groups.push_back(Json{1});
        Json item = {{"value", often(75) ? "frequency" : "volume"},
                     {"face", of.name},
                     {"ink", paint()},
                     {"groups", often(60) ? groups.back() : one_of(groups)},
                     {"drop", below(3)},
                     {"least", 1},
                     {"align", one_of<std::string>({"left", "centre", "right"})}};
        // Sooner than any digit can be drawn whole: it changes by runs if that is faster.
        if (often(60)) item["within_ms"] = 0.1;
        if (often(60)) item["ground"] = paint();
        if (of.words && often(70)) item["separator"] = often(70) ? "." : " ";
        if (item["value"] == "frequency" && tuned_) {
            item["tuning"] = {{"value", "step"}, {"mark", often(60) ? "underline" : "invert"}};
        }
        return item;
    }

    Json key(int width, int height) {
        Json item = {{"text", one_of<std::string>({"A", "ok", "4\n0", ""})},
                     {"face", face(true, (height - 4) / 2).name},
                     {"look", often(50) ? "first" : "second"},
                     {"edge", below(4)},
                     {"radius", often(60) ? below(std::min({width, height, 40}) / 2) : 0},
                     {"tap", action()}};
        if (often(30)) item["hold"] = action();
        if (often(40)) item["active"] = {{"value", "mode"}, {"at", "CW"}};
        if (often(25)) item["enabled_by"] = "lock";
        return item;
    }

    Json legend(int, int height) {
        Json item = {{"text", one_of<std::string>({"dB", "VFO", "S\n9", "Hz -"})},
                     {"face", face(true, height / 2).name},
                     {"ink", paint()},
                     {"align", one_of<std::string>({"left", "centre", "right"})}};
        if (often(50)) item["ground"] = paint();
        return item;
    }

    Json lamp(int width, int height) {
        Json item = {{"face", face(true, height - 2).name},
                     {"lit", tones()},
                     {"unlit", tones()},
                     {"radius", often(60) ? below(std::min(width, height) / 2) : 0},
                     {"edge", below(3)}};
        switch (below(3)) {
            case 0:
                item["value"] = "lock";
                item["text"] = "ON";
                break;
            case 1:
                item["value"] = "mode";
                item["when"] = one_of<std::string>({"AM", "CW"});
                break;
            default:
                item["value"] = "mode";
                break;
        }
        return item;
    }

    Json meter(int, int height) {
        Json item = {{"value", often(70) ? "signal" : "volume"},
                     {"bar", between(2, std::max(3, height / 2))},
                     {"ink", paint()},
                     {"upright", often(30)}};
        if (often(60)) item["ground"] = paint();
        if (often(60)) item["unlit"] = paint();
        if (often(50)) item["blocks"] = {{"size", between(1, 8)}, {"gap", below(3)}};
        if (item["value"] == "signal") {
            if (often(50)) item["over"] = {{"from", -60}, {"ink", paint()}};
            if (often(50)) {
                item["marks"] = {{{"at", -120}, {"text", "1"}}, {{"at", -60}}};
                item["face"] = "face 0";
                item["mark_ink"] = paint();
                item["tick"] = below(4);
            }
        }
        if (often(40)) item["peak"] = {{"ink", paint()}, {"hold_ms", 20 * between(1, 20)}};
        return item;
    }

    Json scale(int, int height) {
        const int per_pixel = one_of<int>({10, 100, 500});
        Json item = {{"value", "frequency"},
                     {"moves", often(60) ? "tape" : "pointer"},
                     {"per_pixel", per_pixel},
                     {"minor", per_pixel * between(3, 12)},
                     {"divide", 1000},
                     {"decimals", below(3)},
                     {"minor_tick", between(1, height / 3)},
                     {"major_tick", between(1, height / 2)},
                     {"face", face(true, height / 2).name},
                     {"ink", paint()},
                     {"label_ink", paint()},
                     {"pointer_ink", paint()}};
        item["major"] = item["minor"].get<int>() * between(2, 10);
        if (often(60)) item["ground"] = paint();
        return item;
    }

    Json frame(int, int) {
        Json item = {{"ink", paint()}, {"line", below(4)}};
        if (often(60)) item["fill"] = paint();
        return item;
    }

    /// Rows of items that touch neither each other nor the edge.
    Json page(const std::string& name) {
        using Make = Json (Maker::*)(int, int);
        struct Kind {
            const char* name;
            Make make;
            int least_width, most_width, least_height;
        };
        static const Kind all_kinds[] = {{"readout", &Maker::readout, 60, 310, 14},
                                         {"key", &Maker::key, 24, 110, 14},
                                         {"legend", &Maker::legend, 16, 90, 10},
                                         {"lamp", &Maker::lamp, 20, 100, 12},
                                         {"meter", &Maker::meter, 24, 200, 16},
                                         {"scale", &Maker::scale, 60, 310, 20},
                                         {"frame", &Maker::frame, 8, 60, 6}};
        std::vector<Kind> kinds;
        for (const Kind& kind : all_kinds) {
            if (often(65)) kinds.push_back(kind);
        }
        if (kinds.empty()) kinds.push_back(all_kinds[0]);
        Json items = Json::array();
        int top = below(3);
        if (often(25) && width_ >= picture_width && height_ >= picture_height) {
            Json item = {{"kind", "picture"},
                         {"name", name + ".picture"},
                         {"at", {below(width_ - picture_width + 1), 0}}};
            if (often(40)) {
                item["file"] = "mast-dusk.png";
                item["tones"] = {paint(), paint(), paint(), paint()};
                item["packing"] = often(50) ? "plain" : "context";
            } else {
                item["file"] = "mast.png";
                item["ink"] = paint();
                item["ground"] = paint();
                item["packing"] = one_of<std::string>({"plain", "runs", "context"});
            }
            items.push_back(std::move(item));
            top = picture_height + lines_apart;
        }
        for (int y = top; y < height_;) {
            const int row = between(14, 70);
            for (int x = below(3); x < width_;) {
                const Kind& kind =
                    kinds[static_cast<std::size_t>(below(static_cast<int>(kinds.size())))];
                const int width = between(kind.least_width, kind.most_width);
                if (x + width > width_ || kind.least_height > row || y + row > height_) {
                    x += 8;
                    continue;
                }
                const int height = between(std::max(kind.least_height, row / 2), row);
                Json item = {{"kind", kind.name},
                             {"name", name + '.' + std::to_string(items.size())},
                             {"at", {x, y}},
                             {"size", {width, height}}};
                item.update((this->*kind.make)(width, height));
                items.push_back(std::move(item));
                x += width + lines_apart;
            }
            y += row + lines_apart;
        }
        return {{"name", name}, {"ground", paint()}, {"items", items}};
    }

    std::uint32_t seed_;
    std::mt19937 random_;
    Json layout_;
    int width_ = 0, height_ = 0;
    bool tuned_ = false;
    std::vector<DrawnFace> faces_;
    std::vector<std::string> page_names_;
};

}  // namespace

std::string timed_layout(std::uint32_t seed) {
    return Maker(seed).make();
}

}  // namespace dialplate
