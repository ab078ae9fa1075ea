#include "tests/prove/random_layouts.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <random>
#include <vector>

namespace dialplate {
namespace {

using Json = nlohmann::ordered_json;

struct ControllerKind {
    const char* name;
    int serial_bytes_per_pixel;
};
constexpr ControllerKind controllers[] = {
    {"ILI9341", 2}, {"ST7735R", 2}, {"ILI9488", 3}, {"ST7789V", 2}, {"ST7796S", 2}, {"ILI9486", 3}};
constexpr const char* buses[] = {"spi", "spi_timed", "usart_spi", "parallel8"};
constexpr const char* paints[] = {"ground", "panel", "ink", "soft", "glow"};
constexpr int lines_apart = 2;                          // between rows and columns of items, px
constexpr int picture_width = 72, picture_height = 60;  // of layouts/mast*.png

struct MadeFace {
    std::string name;
    int height;
    bool words;  ///< Has letters; segments have digits only.
};

class Maker {
public:
    explicit Maker(std::uint32_t seed) : seed_(seed), random_(seed) {}

    std::string make() {
        hardware();
        colours();
        faces();
        values();
        const int pages = 1 + below(3);
        for (int p = 0; p < pages; ++p) {
            page_names_.push_back("page " + std::to_string(p));
        }
        layout_["pages"] = Json::array();
        for (int p = 0; p < pages; ++p) {
            layout_["pages"].push_back(page(p));
        }
        return layout_.dump(2);
    }

private:
    // Distributions differ between libraries, the generator's numbers do not.
    int below(int count) { return static_cast<int>(random_() % static_cast<unsigned>(count)); }
    int between(int least, int most) { return least + below(most - least + 1); }
    bool often(int percent) { return below(100) < percent; }
    template <class T>
    const T& one_of(const std::vector<T>& list) {
        return list[static_cast<std::size_t>(below(static_cast<int>(list.size())))];
    }
    std::string paint() { return paints[below(static_cast<int>(std::size(paints)))]; }
    std::string colour() {
        char text[8];
        std::snprintf(text, sizeof text, "#%06X", static_cast<unsigned>(random_() & 0xFFFFFF));
        return text;
    }

    void hardware() {
        const std::string bus = buses[seed_ % 4];
        const auto& controller = controllers[seed_ / 3 % std::size(controllers)];
        const int width = between(64, 128), height = between(48, 96);
        layout_["title"] = "Random " + std::to_string(seed_);
        const int order = often(50) ? 8 : 0;  // red and blue exchanged
        const auto turn = [&](int mode, bool exchanged) {
            Json one = {{"address_mode", mode | order}};
            one[exchanged ? "page_offset" : "column_offset"] = column_offset_;
            return one;
        };
        column_offset_ = below(3);
        layout_["display"] = {{"name", "random"},
                              {"controller", controller.name},
                              {"width", width},
                              {"height", height},
                              {"active_width_mm", width / 4.0},
                              {"active_height_mm", height / 4.0},
                              {"memory_width", 132},
                              {"memory_height", 162},
                              {"turns",
                               {{"0", turn(0x00, false)},
                                {"90", turn(0x60, true)},
                                {"180", turn(0xC0, false)},
                                {"270", turn(0xA0, true)}}},
                              {"inverted", often(50)},
                              {"serial_bytes_per_pixel", controller.serial_bytes_per_pixel}};
        const int turned = static_cast<int>(seed_ / 4 % 4) * 90;
        layout_["turn"] = turned;
        width_ = turned % 180 == 0 ? width : height;
        height_ = turned % 180 == 0 ? height : width;
        const int clock = often(25) ? 8 : 16;
        layout_["mcu"] = {{"part", seed_ % 7 == 6 ? "ATmega2560" : "ATmega328P"},
                          {"clock_mhz", clock}};
        // The timed drivers run at half the clock, the polled one at any divider.
        layout_["bus"] = {{"kind", bus},
                          {"clock_mhz", bus == "spi" && often(30) ? clock / 4.0 : clock / 2.0}};
        layout_["touch"] = {{"hold_ms", 20 * between(2, 20)},
                            {"repeat_after_ms", 20 * between(2, 10)},
                            {"repeat_every_ms", 20 * between(1, 5)}};
    }

    Json tones() { return {{"ink", paint()}, {"fill", paint()}, {"edge", paint()}}; }

    void colours() {
        for (const char* name : paints) {
            layout_["paints"][name] = colour();
        }
        for (int p = below(3); p > 0; --p) {
            Json palette = Json::object();
            for (const char* name : paints) {
                if (often(60)) palette[name] = colour();
            }
            layout_["palettes"]["palette " + std::to_string(p)] = palette;
        }
        layout_["looks"]["first"] = {{"idle", tones()}, {"pressed", tones()}};
        layout_["looks"]["second"] = {
            {"idle", tones()}, {"pressed", tones()}, {"active", tones()}, {"disabled", tones()}};
    }

    void add_face(const std::string& name, Json face, int height, bool words) {
        if (words && !face.contains("smooth")) {
            face["packing"] = one_of<std::string>({"automatic", "plain", "runs", "context"});
        }
        layout_["faces"][name] = std::move(face);
        faces_.push_back({name, height, words});
    }

    void faces() {
        add_face("small words", {{"file", "legend9.bdf"}, {"size", 9}}, 9, true);
        if (often(40)) add_face("words", {{"file", "legend14.bdf"}, {"size", 14}}, 14, true);
        if (often(40)) add_face("figures", {{"file", "figures16.bdf"}, {"size", 16}}, 16, true);
        if (often(50)) {
            const int scale = between(2, 3);
            add_face("enlarged",
                     {{"file", "legend9.bdf"}, {"size", 9}, {"scale", scale}},
                     9 * scale,
                     true);
        }
        if (often(40)) {
            const int size = between(10, 26);
            add_face("smooth",
                     {{"file", often(50) ? "DejaVuSans-Bold.ttf" : "LiberationSans-Regular.ttf"},
                      {"size", size},
                      {"smooth", true},
                      {"packing", one_of<std::string>({"automatic", "plain", "context"})}},
                     size,
                     true);
        }
        if (often(60)) {
            const int stroke = between(1, 3);
            const int width = 2 * stroke + between(1, 8), height = 3 * stroke + between(2, 16);
            add_face("segments",
                     {{"segments",
                       {{"width", width},
                        {"height", height},
                        {"stroke", stroke},
                        {"gap", between(0, 3)}}}},
                     height,
                     false);
        }
    }

    MadeFace face(bool words, int room) {
        std::vector<MadeFace> fit;
        for (const MadeFace& one : faces_) {
            if ((one.words || !words) && one.height <= room) fit.push_back(one);
        }
        return fit.empty() ? faces_.front() : one_of(fit);
    }

    static Json choices(const std::vector<std::pair<const char*, int>>& of) {
        Json list = Json::array();
        for (const auto& [text, number] : of) {
            list.push_back({{"text", text}, {"number", number}});
        }
        return list;
    }

    void values() {
        Json& all = layout_["values"];
        const bool tuned = often(80);
        const int least = between(1, 40) * 100'000;
        all["frequency"] = {{"type", "number"},
                            {"unit", "Hz"},
                            {"min", least},
                            {"max", between(1, 30) * 1'000'000 + least},
                            {"start", least + between(0, 900'000)}};
        numbers_ = {"frequency"};
        if (tuned) {
            all["frequency"]["role"] = "frequency";
            all["step"] = {{"type", "choice"},
                           {"role", "step"},
                           {"choices", choices({{"10", 10}, {"1k", 1000}, {"5k", 5000}})}};
        }
        all["volume"] = {{"type", "number"}, {"min", often(50) ? -50 : 0}, {"max", 99}};
        numbers_.push_back("volume");
        all["signal"] = {
            {"type", "level"}, {"min", -127}, {"max", -13}, {"start", -80}, {"role", "signal"}};
        all["mode"] = {{"type", "choice"}, {"choices", {"AM", "LSB", "CW"}}, {"start", "LSB"}};
        all["lock"] = {{"type", "flag"}, {"start", often(50)}};
    }

    Json action() {
        switch (below(5)) {
            case 0:
                return {{"set", "mode"}, {"to", one_of<std::string>({"AM", "LSB", "CW"})}};
            case 1:
                return {{"step", one_of(numbers_)}, {"by", often(50) ? 1 : -7}};
            case 2:
                return {{"step", "mode"}, {"by", 1}, {"around", true}};
            case 3:
                return {{"toggle", "lock"}};
            default:
                return {{"page", one_of(page_names_)}};
        }
    }

    Json readout(int, int height) {
        const MadeFace of = face(false, height - 4);
        Json item = {{"value", one_of(numbers_)},
                     {"face", of.name},
                     {"ink", paint()},
                     {"groups", one_of<Json>({{2, 3, 3}, {4, 3}, {3, 2}, {1, 1, 1}, {5}})},
                     {"drop", below(3)},
                     {"least", between(1, 3)},
                     {"align", one_of<std::string>({"left", "centre", "right"})}};
        // The shorter times make digits change by runs.
        if (often(60)) item["within_ms"] = one_of<Json>({0.1, 1, 2.5, 20});
        if (often(60)) item["ground"] = paint();
        if (of.words && often(70)) item["separator"] = often(70) ? "." : " ";
        if (often(30)) {
            item["unit"] = {{"text", "Hz"}, {"face", "small words"}, {"ink", paint()}};
        }
        if (item["value"] == "frequency" && layout_["values"].contains("step") && often(60)) {
            item["tuning"] = {{"value", "step"}, {"mark", often(50) ? "underline" : "invert"}};
        }
        return item;
    }

    Json key(int width, int height) {
        Json item = {{"text", one_of<std::string>({"A", "ok", "4\n0", ""})},
                     {"face", face(true, height - 4).name},
                     {"look", often(50) ? "first" : "second"},
                     {"edge", below(4)},
                     {"radius", below(std::min(width, height) / 2)}};
        if (often(85)) item["tap"] = action();
        if (item.contains("tap") && often(25)) {
            item["repeat"] = true;
        } else if (often(30)) {
            item["hold"] = action();
        }
        if (often(40)) item["active"] = {{"value", "mode"}, {"at", "CW"}};
        if (often(25)) item["enabled_by"] = "lock";
        return item;
    }

    Json legend(int, int height) {
        Json item = {{"text", one_of<std::string>({"dB", "VFO", "S\n9", "Hz -"})},
                     {"face", face(true, height).name},
                     {"ink", paint()},
                     {"align", one_of<std::string>({"left", "centre", "right"})}};
        if (often(50)) item["ground"] = paint();
        return item;
    }

    Json lamp(int width, int height) {
        Json item = {{"face", face(true, height).name},
                     {"lit", tones()},
                     {"unlit", tones()},
                     {"radius", below(std::min(width, height) / 2)},
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
                     {"bar", between(2, std::max(3, height / 3))},
                     {"ink", paint()},
                     {"upright", often(30)}};
        if (often(60)) item["ground"] = paint();
        if (often(60)) item["unlit"] = paint();
        if (often(50)) item["blocks"] = {{"size", between(1, 6)}, {"gap", below(3)}};
        if (item["value"] == "signal") {
            if (often(50)) item["over"] = {{"from", -60}, {"ink", paint()}};
            if (often(50)) {
                item["marks"] = {{{"at", -120}, {"text", "1"}}, {{"at", -60}}};
                item["face"] = "small words";
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
                     {"minor", per_pixel * between(3, 8)},
                     {"divide", 1000},
                     {"decimals", below(3)},
                     {"minor_tick", between(1, height / 3)},
                     {"major_tick", between(1, height / 2)},
                     {"face", face(true, height / 2).name},
                     {"ink", paint()},
                     {"label_ink", paint()},
                     {"pointer_ink", paint()}};
        item["major"] = item["minor"].get<int>() * between(2, 6);
        if (often(60)) item["ground"] = paint();
        return item;
    }

    Json frame(int, int) {
        Json item = {{"ink", paint()}, {"line", below(4)}};
        if (often(60)) item["fill"] = paint();
        return item;
    }

    /// Rows of items that touch neither each other nor the edge.
    Json page(int number) {
        using Make = Json (Maker::*)(int, int);
        struct Kind {
            const char* name;
            Make make;
            int least_width, least_height;
        };
        static const std::vector<Kind> kinds = {{"readout", &Maker::readout, 40, 14},
                                                {"readout", &Maker::readout, 50, 18},
                                                {"key", &Maker::key, 20, 14},
                                                {"key", &Maker::key, 16, 12},
                                                {"legend", &Maker::legend, 16, 10},
                                                {"lamp", &Maker::lamp, 20, 12},
                                                {"meter", &Maker::meter, 24, 16},
                                                {"scale", &Maker::scale, 40, 20},
                                                {"frame", &Maker::frame, 8, 6}};
        Json items = Json::array();
        int top = below(3);
        if (often(25) && width_ >= picture_width && height_ >= picture_height) {
            Json item = {{"kind", "picture"},
                         {"name", std::to_string(number) + ".picture"},
                         {"at", {below(width_ - picture_width + 1), 0}}};
            if (often(50)) {
                item["file"] = "mast-dusk.png";
                item["tones"] = {paint(), paint(), paint(), paint()};
                item["packing"] = one_of<std::string>({"automatic", "plain", "context"});
            } else {
                item["file"] = "mast.png";
                item["ink"] = paint();
                item["ground"] = paint();
                item["packing"] = one_of<std::string>({"automatic", "plain", "runs", "context"});
            }
            items.push_back(std::move(item));
            top = picture_height + lines_apart;
        }
        for (int y = top; y < height_;) {
            const int row = between(12, 34);
            for (int x = below(3); x < width_;) {
                const Kind& kind = one_of(kinds);
                const int width = between(kind.least_width, kind.least_width + 30);
                if (x + width > width_ || kind.least_height > row || y + row > height_) {
                    x += 8;
                    continue;
                }
                const int height = between(kind.least_height, row);
                Json item = {{"kind", kind.name},
                             {"name", std::to_string(number) + '.' + std::to_string(items.size())},
                             {"at", {x, y}},
                             {"size", {width, height}}};
                item.update((this->*kind.make)(width, height));
                items.push_back(std::move(item));
                x += width + lines_apart;
            }
            y += row + lines_apart;
        }
        return {{"name", page_names_[static_cast<std::size_t>(number)]},
                {"ground", paint()},
                {"items", items}};
    }

    std::uint32_t seed_;
    std::mt19937 random_;
    Json layout_;
    int width_ = 0, height_ = 0, column_offset_ = 0;
    std::vector<MadeFace> faces_;
    std::vector<std::string> numbers_, page_names_;
};

}  // namespace

std::string random_layout(std::uint32_t seed) {
    return Maker(seed).make();
}

}  // namespace dialplate
