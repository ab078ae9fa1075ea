// The display: pages of items, the values they show, and the keys that answer a finger.
//
// A sketch makes one Screen, sets values whenever they change, and calls `service` often. Each call sends
// one slice: at most one glyph or one band of a fill, so that the encoder is never left waiting for long.
#pragma once

#include "ui/image_format.hpp"
#include "ui/job.hpp"
#include "ui/key.hpp"
#include "ui/lamp.hpp"
#include "ui/legend.hpp"
#include "ui/meter.hpp"
#include "ui/parts.hpp"
#include "ui/pen.hpp"
#include "ui/picture.hpp"
#include "ui/readout.hpp"
#include "ui/scale.hpp"
#include "ui/values.hpp"

#include <stdint.h>

namespace dialplate {

enum class KeyEvent : uint8_t { press, hold, repeat, release, slide_off };

/// What a finger did to a key. Keys are numbered through the layout, page by page.
struct Event {
    KeyEvent what;
    bool held;  ///< With `release`: the key's hold was reported before.
    uint16_t key;
};

/// Bus: see bus.hpp. Parts: see parts.hpp.
template <class Bus, class Parts = EveryPart>
class Screen {
public:
    /// @param memory  Bytes for the values and for what the glass shows, zeroed, as many as the image
    ///                needs (the emitted code and the ledger say how many).
    Screen(Bus& bus, Rom image, uint8_t* memory)
        : pen_(bus, image), values_(image, memory), shown_(memory + values_.bytes()) {
        show_page(0);
    }

    /// Draws a page from the next service on.
    void show_page(uint8_t number) {
        const Rom& rom = pen_.rom;
        page_ = number;
        page_at_ = rom.u16(word(rom.u16(header::at_pages) + 2u * number));
        finger_on_ = 0;
        items_left_ = items();
        stage_ = Stage::backdrop;
        changed_ = true;
        pen_.pieces.start();
    }
    uint8_t page() const { return page_; }

    /// Draws the page in another palette from the next service on.
    void use_palette(uint8_t number) {
        pen_.use_palette(number);
        show_page(page_);
    }

    void set(uint8_t value, int32_t to) {
        if (values_.set(value, to)) {
            changed_ = true;
        }
    }
    int32_t get(uint8_t value) const { return values_.get(value); }

    /// The finger is at this place: call for every sample of the touch sheet.
    void touch(Point at);
    /// The finger is gone.
    void lift();

    /// Takes the time into account and sends the next slice.
    /// @param now_ms  Any clock in milliseconds that wraps at 65,536.
    /// @return        Whether more is waiting to be drawn.
    bool service(uint16_t now_ms);

    /// Takes the oldest event not yet taken. False: there is none.
    bool next_event(Event& event) {
        if (event_count_ == 0) {
            return false;
        }
        event = events_[0];
        --event_count_;
        for (uint8_t i = 0; i < event_count_; ++i) {
            events_[i] = events_[i + 1];
        }
        return true;
    }

private:
    using Readout = ReadoutArt<Bus, Parts>;
    using Key = KeyArt<Bus, Parts>;
    using Legend = LegendArt<Bus, Parts>;
    using Lamp = LampArt<Bus, Parts>;
    using Meter = MeterArt<Bus, Parts>;
    using Scale = ScaleArt<Bus, Parts>;
    using Picture = PictureArt<Bus, Parts>;

    // What service is at: the ground of a new page, its items one by one, or changes.
    enum class Stage : uint8_t { backdrop, items, changes };
    static constexpr uint8_t event_places = 4;

    /// An item under the walk.
    struct View {
        uint16_t at;
        uint8_t* shown;
        Kind kind;
        Rect rect;
        Reader rest;
    };

    uint16_t items() const { return pen_.rom.u16(word(page_at_ + page::items)); }
    uint16_t first_item() const {
        uint16_t at = word(page_at_ + page::backdrop);
        for (uint16_t groups = pen_.rom.u16(word(page_at_ + page::groups)); groups != 0; --groups) {
            at = word(at + 2u + static_cast<uint32_t>(pen_.rom.u8(word(at + 1u))) * rect_bytes);
        }
        return at;
    }
    View view(Spot spot) const {
        Reader from(pen_.rom, word(static_cast<uint32_t>(spot.at) + item::kind));
        const Kind kind = static_cast<Kind>(from.u8());
        const Rect rect = read_rect(from);
        return View{spot.at, spot.shown, kind, rect, from};
    }
    static uint8_t shown_bytes(Kind kind) {
        switch (kind) {
            case Kind::readout:
                return Readout::shown_bytes;
            case Kind::key:
                return Key::shown_bytes;
            case Kind::lamp:
                return Lamp::shown_bytes;
            case Kind::meter:
                return Meter::shown_bytes;
            case Kind::scale:
                return Scale::shown_bytes;
            default:
                return 0;
        }
    }
    Spot after(Spot spot) const {
        const Kind kind =
            static_cast<Kind>(pen_.rom.u8(word(static_cast<uint32_t>(spot.at) + item::kind)));
        return Spot{word(static_cast<uint32_t>(spot.at) + pen_.rom.u8(spot.at)),
                    spot.shown + shown_bytes(kind)};
    }

    bool draw_backdrop();
    bool draw_item(const View& v);
    bool find_change();
    bool differs(const View& v);
    void begin(const View& v);
    void commit(const View& v);
    uint8_t state_of_key(const View& v) const {
        return static_cast<uint8_t>(Key::state(v.rest, values_, finger_on_ == v.at && inside_));
    }

    void report(KeyEvent what) {
        if (event_count_ < event_places) {
            events_[event_count_++] = Event{what, held_, finger_key_};
        }
    }
    void press();
    void watch_hold();

    Pen<Bus, Parts> pen_;
    Values values_;
    uint8_t* shown_;
    uint16_t page_at_ = 0;
    uint8_t page_ = 0;
    Stage stage_ = Stage::backdrop;
    bool changed_ = true;
    bool drawing_ = false;
    bool waiting_ = false;     // a peak will fall by itself
    Spot spot_{};              // item being drawn, or where the search for changes goes on
    uint16_t items_left_ = 0;  // of the page, from spot_ on
    Job job_{};
    uint16_t now_ = 0;

    bool finger_ = false, inside_ = false, held_ = false;
    uint16_t finger_on_ = 0;  // item under the finger; 0: none
    uint16_t finger_key_ = 0;
    uint16_t finger_since_ = 0;
    Event events_[event_places] = {};
    uint8_t event_count_ = 0;
};

template <class Bus, class Parts>
bool Screen<Bus, Parts>::service(uint16_t now_ms) {
    now_ = now_ms;
    if (Parts::touch) {
        watch_hold();
    }
    pen_.pieces.slice();
    if (stage_ == Stage::backdrop) {
        if (draw_backdrop()) {
            return true;
        }
        stage_ = Stage::items;
        spot_ = Spot{first_item(), shown_};
        drawing_ = false;
    }
    while (stage_ == Stage::items) {
        if (items_left_ == 0) {
            stage_ = Stage::changes;
            break;
        }
        const View v = view(spot_);
        if (!drawing_) {
            pen_.pieces.start();
            pen_.pieces.slice();
            job_.whole = true;
            begin(v);
            drawing_ = true;
        }
        if (draw_item(v)) {
            return true;
        }
        commit(v);
        drawing_ = false;
        spot_ = after(spot_);
        --items_left_;
        pen_.pieces.slice();
    }
    while (changed_) {
        if (!drawing_) {
            if (!find_change()) {
                return false;
            }
            pen_.pieces.start();
            pen_.pieces.slice();
            job_.whole = false;
            begin(view(spot_));
            drawing_ = true;
        }
        const View v = view(spot_);
        if (draw_item(v)) {
            return true;
        }
        commit(v);
        drawing_ = false;
    }
    return false;
}

// The ground of the page and its frames, rectangle by rectangle. False: complete.
template <class Bus, class Parts>
bool Screen<Bus, Parts>::draw_backdrop() {
    const Rom& rom = pen_.rom;
    uint16_t at = word(page_at_ + page::backdrop);
    uint16_t skip = pen_.pieces.turn();
    for (uint16_t groups = rom.u16(word(page_at_ + page::groups)); groups != 0; --groups) {
        Reader group(rom, at);
        const uint8_t paint = group.u8(), count = group.u8();
        if (skip < count) {
            Reader place(rom, word(group.at() + static_cast<uint32_t>(skip) * rect_bytes));
            pen_.pieces.go_straight_to_it();
            pen_.fill(read_rect(place), pen_.colour(paint));
            return true;
        }
        skip = word(skip - static_cast<uint32_t>(count));
        at = word(group.at() + static_cast<uint32_t>(count) * rect_bytes);
    }
    return false;
}

// Sends a slice of the item. False: there was nothing left to send.
template <class Bus, class Parts>
bool Screen<Bus, Parts>::draw_item(const View& v) {
    if (Parts::readout && v.kind == Kind::readout) {
        Readout::draw(pen_, v.rect, v.rest, values_, v.shown, job_);
    } else if (Parts::key && v.kind == Kind::key) {
        Key::draw(pen_, v.rect, v.rest, values_, static_cast<KeyState>(job_.mark));
    } else if (Parts::legend && v.kind == Kind::legend) {
        Legend::draw(pen_, v.rect, v.rest);
    } else if (Parts::lamp && v.kind == Kind::lamp) {
        Lamp::draw(pen_, v.rect, v.rest, job_.mark);
    } else if (Parts::meter && v.kind == Kind::meter) {
        Meter::draw(pen_, v.rect, v.rest, v.shown, job_);
    } else if (Parts::scale && v.kind == Kind::scale) {
        Scale::draw(pen_, v.rect, v.rest, v.shown, job_);
    } else if (Parts::picture && v.kind == Kind::picture) {
        Picture::draw(pen_, v.rect, v.rest);
    }
    return pen_.pieces.spent();
}

// Goes round the page from where the last change was found. False: the glass shows everything.
template <class Bus, class Parts>
bool Screen<Bus, Parts>::find_change() {
    waiting_ = false;
    for (uint16_t n = items(); n != 0; --n) {
        if (items_left_ == 0) {
            spot_ = Spot{first_item(), shown_};
            items_left_ = items();
        } else {
            spot_ = after(spot_);
            if (--items_left_ == 0) {
                spot_ = Spot{first_item(), shown_};
                items_left_ = items();
            }
        }
        if (differs(view(spot_))) {
            return true;
        }
    }
    changed_ = waiting_;
    return false;
}

template <class Bus, class Parts>
bool Screen<Bus, Parts>::differs(const View& v) {
    if (Parts::readout && v.kind == Kind::readout) {
        return Readout::differs(v.rest, values_, v.shown);
    }
    if (Parts::key && v.kind == Kind::key) {
        return state_of_key(v) != *v.shown;
    }
    if (Parts::lamp && v.kind == Kind::lamp) {
        return Lamp::state(v.rest, values_) != *v.shown;
    }
    if (Parts::meter && v.kind == Kind::meter) {
        return Meter::differs(v.rest, values_, now_, v.shown, waiting_);
    }
    if (Parts::scale && v.kind == Kind::scale) {
        return Scale::differs(v.rest, values_, v.shown);
    }
    return false;
}

template <class Bus, class Parts>
void Screen<Bus, Parts>::begin(const View& v) {
    if (Parts::readout && v.kind == Kind::readout) {
        Readout::begin(v.rest, pen_.rom, values_, v.shown, job_);
    } else if (Parts::key && v.kind == Kind::key) {
        job_.mark = state_of_key(v);
    } else if (Parts::lamp && v.kind == Kind::lamp) {
        job_.mark = Lamp::state(v.rest, values_);
    } else if (Parts::meter && v.kind == Kind::meter) {
        Meter::begin(v.rest, values_, now_, v.shown, job_);
    } else if (Parts::scale && v.kind == Kind::scale) {
        Scale::begin(v.rest, values_, job_);
    }
}

template <class Bus, class Parts>
void Screen<Bus, Parts>::commit(const View& v) {
    if (Parts::readout && v.kind == Kind::readout) {
        Readout::commit(job_, v.shown);
    } else if ((Parts::key && v.kind == Kind::key) || (Parts::lamp && v.kind == Kind::lamp)) {
        *v.shown = job_.mark;
    } else if (Parts::meter && v.kind == Kind::meter) {
        Meter::commit(job_, v.shown);
    } else if (Parts::scale && v.kind == Kind::scale) {
        Scale::commit(job_, v.shown);
    }
}

template <class Bus, class Parts>
void Screen<Bus, Parts>::touch(Point at) {
    if (!finger_) {
        finger_ = true;
        finger_key_ = pen_.rom.u16(word(page_at_ + page::first_key));
        Spot spot{first_item(), shown_};
        for (uint16_t n = items(); n != 0; --n, spot = after(spot)) {
            const View v = view(spot);
            if (v.kind != Kind::key) {
                continue;
            }
            if (v.rect.contains(at.x, at.y)) {
                Reader from = v.rest;
                if (Key::manner(from, values_).enabled) {
                    finger_on_ = v.at;
                    press();
                }
                return;
            }
            ++finger_key_;
        }
        return;
    }
    if (finger_on_ == 0) {
        return;
    }
    const bool inside = view(Spot{finger_on_, shown_}).rect.contains(at.x, at.y);
    if (inside && !inside_) {
        press();
    } else if (!inside && inside_) {
        inside_ = false;
        changed_ = true;
        report(KeyEvent::slide_off);
    }
}

template <class Bus, class Parts>
void Screen<Bus, Parts>::press() {
    inside_ = true;
    held_ = false;
    finger_since_ = now_;
    changed_ = true;
    report(KeyEvent::press);
}

template <class Bus, class Parts>
void Screen<Bus, Parts>::lift() {
    finger_ = false;
    if (finger_on_ == 0) {
        return;
    }
    Reader from = view(Spot{finger_on_, shown_}).rest;
    const auto manner = Key::manner(from, values_);
    finger_on_ = 0;
    changed_ = true;
    if (!inside_) {
        return;
    }
    report(KeyEvent::release);
    const bool tapped = !held_ || (manner.flags & key_flag::holds) == 0;
    if (tapped && (manner.flags & key_flag::page)) {
        show_page(manner.tap_page);
    }
}

// Reports a hold once, and repeats, while the finger stays on a key.
template <class Bus, class Parts>
void Screen<Bus, Parts>::watch_hold() {
    if (finger_on_ == 0 || !inside_) {
        return;
    }
    const uint16_t since = word(static_cast<uint32_t>(now_) - finger_since_);
    Reader from = view(Spot{finger_on_, shown_}).rest;
    const auto manner = Key::manner(from, values_);
    const bool repeats = (manner.flags & key_flag::repeats) != 0;
    if (!held_) {
        const uint8_t ticks = pen_.rom.u8(repeats ? header::repeat_after : header::hold);
        if (since >= word(static_cast<uint32_t>(ticks) * clock_tick_ms)) {
            held_ = true;
            finger_since_ = now_;
            report(repeats ? KeyEvent::repeat : KeyEvent::hold);
            if (manner.flags & key_flag::hold_page) {
                show_page(manner.hold_page);
            }
        }
    } else if (repeats && since >= word(static_cast<uint32_t>(pen_.rom.u8(header::repeat_every)) *
                                        clock_tick_ms)) {
        finger_since_ = now_;
        report(KeyEvent::repeat);
    }
}

}  // namespace dialplate
