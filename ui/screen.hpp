// The display: pages of items, the values they show, and the keys that answer a finger.
//
// A sketch makes one Screen, sets values whenever they change, and calls `service` often. Each call sends
// one slice: as many pixels as the layout says, or a single glyph that has more, so that the encoder is never
// left waiting for long.
#pragma once

#include "ui/box.hpp"
#include "ui/image_format.hpp"
#include "ui/job.hpp"
#include "ui/meter.hpp"
#include "ui/parts.hpp"
#include "ui/pen.hpp"
#include "ui/picture.hpp"
#include "ui/readout.hpp"
#include "ui/scale.hpp"
#include "ui/values.hpp"

#include <stdint.h>

namespace dialplate {

enum class KeyMotion : uint8_t { press, hold, repeat, release, slide_off };

/// What a finger did to a key. Keys are numbered through the layout, page by page.
struct Event {
    KeyMotion what;
    bool held;  ///< With `release`: the key's hold was reported before.
    uint16_t key;
};

/// Bus: see bus.hpp. Parts: see parts.hpp.
template <class Bus, class Parts = EveryPart>
class Screen {
public:
    using Image = Rom<typename Parts::Bytes>;

    /// @param memory  Bytes for the values and for what the glass shows, zeroed, as many as the image
    ///                needs (the emitted code and the ledger say how many).
    Screen(const Bus& bus, const Image& image, uint8_t* memory)
        : pen_(bus, image), values_(image, memory), shown_(memory + values_.bytes()) {
        show_page(0);
    }

    /// Turns to a page, and draws it from the next service on. A finger that is down has no key then.
    void show_page(uint8_t number) {
        page_ = number;
        page_at_ = rom().u16(word(rom().u16(header::at_pages) + 2u * number));
        finger_on_ = 0;
        if (Parts::meter && Parts::peak) {
            // What the memory holds of them is another page's.
            Spot spot = first_item();
            for (uint16_t n = item_count(); n != 0; --n, spot = after(spot)) {
                if (kind(spot) == Kind::meter) {
                    Meter::forget(spot);
                }
            }
        }
        draw_again();
    }
    /// Draws the whole page again from the next service on.
    void draw_again() {
        stage_ = Stage::fills;
        changed_ = true;
        pen_.pieces.start();
    }
    uint8_t page() const { return page_; }

    /// Draws the page in another palette from the next service on.
    void use_palette(uint8_t number) {
        pen_.use_palette(number);
        draw_again();
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
    using Box = BoxArt<Bus, Parts>;
    using Meter = MeterArt<Bus, Parts>;
    using Scale = ScaleArt<Bus, Parts>;
    using Picture = PictureArt<Bus, Parts>;

    // What service is at: what never changes on a new page (fills, texts), its items one by one, or changes.
    enum class Stage : uint8_t { fills, texts, items, changes };
    static constexpr uint8_t event_places = 4;

    const Image& rom() const { return pen_.rom; }
    uint16_t page_word(uint8_t which) const { return rom().u16(word(page_at_ + which)); }
    uint16_t item_count() const { return page_word(page::count); }
    Spot first_item() const { return Spot{page_word(page::items), shown_}; }
    Kind kind(Spot spot) const { return static_cast<Kind>(rom().u8(word(spot.at + item::kind))); }
    // Bytes of what the glass shows of an item.
    uint8_t shown_bytes(Spot spot) const {
        const Kind k = kind(spot);
        return Parts::readout && k == Kind::readout ? Readout::shown_bytes
               : Parts::box && k == Kind::box       ? Box::shown_bytes
               : Parts::meter && k == Kind::meter   ? Meter::shown_bytes
               : Parts::scale && k == Kind::scale   ? Scale::shown_bytes
                                                    : uint8_t{0};
    }
    Spot after(Spot spot) const {
        const uint8_t kept =
            Parts::meter && kind(spot) == Kind::meter ? Meter::kept_bytes : uint8_t{0};
        return Spot{word(spot.at + rom().u8(spot.at)), spot.shown + shown_bytes(spot) + kept};
    }
    uint8_t box_state(Spot spot) const {
        return Box::state(pen_, values_, spot.at, Parts::touch && finger_on_ == spot.at && inside_);
    }

    // Of a readout it is known that all is drawn even though the slice is full.
    bool job_is_done() const {
        return Parts::readout && kind(spot_) == Kind::readout && (job_.cells | job_.marks) == 0;
    }

    void draw_fills();
    void draw_texts();
    void draw_item();
    bool find_change();
    bool plan();
    void begin(bool whole);
    void commit();

    void report(KeyMotion what) {
        if (event_count_ < event_places) {
            events_[event_count_++] = Event{what, held_, finger_key_};
        }
    }
    bool under_finger(uint16_t at, Point finger) const {
        return read_rect(rom(), word(at + item::place)).contains(finger.x, finger.y);
    }
    void find_key(Point at);
    void press();
    void watch_hold();

    Pen<Bus, Parts> pen_;
    Values<Image> values_;
    uint8_t* shown_;
    uint16_t page_at_ = 0;
    uint8_t page_ = 0;
    Stage stage_ = Stage::fills;
    bool changed_ = true;      // something may differ from the glass
    bool waiting_ = false;     // a peak will fall by itself
    bool drawing_ = false;     // job_ is under way
    Spot spot_{};              // item being drawn, or where the search for changes goes on
    uint16_t items_left_ = 0;  // of the page, from spot_ on
    Job job_{};
    uint16_t now_ = 0;

    bool finger_ = false, inside_ = false, held_ = false;
    uint16_t finger_on_ = 0;  // key under the finger; 0: none
    uint16_t finger_key_ = 0;
    uint16_t finger_since_ = 0;
    Event events_[event_places] = {};
    uint8_t event_count_ = 0;
};

template <class Bus, class Parts>
bool Screen<Bus, Parts>::service(uint16_t now_ms) {
    now_ = now_ms;
    if (Parts::touch && Parts::hold) {
        watch_hold();
    }
    pen_.slice();
    if (stage_ == Stage::fills) {
        draw_fills();
        if (pen_.pieces.full()) {
            return true;
        }
        stage_ = Stage::texts;
        pen_.pieces.start();
        pen_.pieces.name_again();
    }
    if (stage_ == Stage::texts) {
        draw_texts();
        if (pen_.pieces.full()) {
            return true;
        }
        stage_ = Stage::items;
        spot_ = first_item();
        items_left_ = item_count();
        drawing_ = false;
    }
    for (;;) {
        if (!drawing_) {
            if (stage_ == Stage::items && items_left_ != 0) {
                plan();
                begin(true);
            } else {
                stage_ = Stage::changes;
                if (!changed_ || !find_change()) {
                    return false;
                }
                begin(false);
            }
        }
        draw_item();
        if (pen_.pieces.full() && !job_is_done()) {
            return true;
        }
        commit();
        drawing_ = false;
        if (stage_ == Stage::items) {
            spot_ = after(spot_);
            --items_left_;
        }
    }
}

// Ground, frames, and all that never changes but text: groups of rectangles of one paint.
template <class Bus, class Parts>
void Screen<Bus, Parts>::draw_fills() {
    uint16_t at = word(page_at_ + page::bytes);
    uint16_t turn = pen_.pieces.turn();
    for (uint16_t groups = page_word(page::fills); groups != 0; --groups) {
        const uint8_t count = rom().u8(word(at + 1u));
        for (; turn < count; ++turn) {
            pen_.pieces.go_straight_to_it();
            pen_.fill(read_rect(rom(), word(at + 2u + turn * rect_bytes)), pen_.colour_at(at));
            if (pen_.pieces.full()) {
                return;
            }
        }
        turn = word(turn - count);
        at = word(at + 2u + static_cast<unsigned>(count) * rect_bytes);
    }
}

// Texts that never change: groups of one face and two paints.
template <class Bus, class Parts>
void Screen<Bus, Parts>::draw_texts() {
    uint16_t at = page_word(page::texts);
    for (; at < page_word(page::items); at = word(at + text_group::bytes)) {
        const uint16_t face_at = pen_.face_at(rom().u8(word(at + text_group::face)));
        const Colours colours{pen_.colour_at(word(at + text_group::ink)),
                              pen_.colour_at(word(at + text_group::ground))};
        for (uint8_t count = rom().u8(word(at + text_group::count)); count != 0; --count) {
            const uint16_t text = rom().u16(word(at + text_group::bytes + point_bytes));
            if (!pen_.pieces.passes(rom().u8(text))) {
                Box::draw_text(
                    pen_, read_point(rom(), word(at + text_group::bytes)), face_at, text, colours);
                if (pen_.pieces.full()) {
                    return;
                }
            }
            at = word(at + text_group::each);
        }
    }
}

// Sends what the slice has room for. If it is not full then, the item is complete.
template <class Bus, class Parts>
void Screen<Bus, Parts>::draw_item() {
    pen_.pieces.name_again();
    const Kind k = kind(spot_);
    if (Parts::readout && k == Kind::readout) {
        Readout::draw(pen_, spot_, job_);
    } else if (Parts::box && k == Kind::box) {
        Box::draw(pen_, values_, spot_.at, job_.next[0]);
    } else if (Parts::meter && k == Kind::meter) {
        Meter::draw(pen_, spot_, job_);
    } else if (Parts::scale && k == Kind::scale) {
        Scale::draw(pen_, spot_, job_);
    } else if (Parts::picture && k == Kind::picture) {
        if (job_.whole) {
            Picture::draw(pen_, spot_.at);
        }
    }
}

// Goes round the page from where the last change was found. False: the glass shows everything.
template <class Bus, class Parts>
bool Screen<Bus, Parts>::find_change() {
    waiting_ = false;
    for (uint16_t n = item_count(); n != 0; --n) {
        if (items_left_ > 1) {
            spot_ = after(spot_);
            --items_left_;
        } else {
            spot_ = first_item();
            items_left_ = item_count();
        }
        if (plan()) {
            return true;
        }
    }
    changed_ = waiting_;
    return false;
}

// Finds what the glass is to show of the item. Returns whether it shows something else.
template <class Bus, class Parts>
bool Screen<Bus, Parts>::plan() {
    const Kind k = kind(spot_);
    if (Parts::readout && k == Kind::readout) {
        Readout::plan(rom(), values_, spot_.at, job_);
    } else if (Parts::box && k == Kind::box) {
        job_.next[0] = box_state(spot_);
    } else if (Parts::meter && k == Kind::meter) {
        Meter::plan(rom(), values_, now_, spot_, job_, waiting_);
    } else if (Parts::scale && k == Kind::scale) {
        Scale::plan(rom(), values_, spot_.at, job_);
    }
    bool differs = false;
    for (uint8_t i = shown_bytes(spot_); i-- != 0;) {
        differs = differs || job_.next[i] != spot_.shown[i];
    }
    return differs;
}

template <class Bus, class Parts>
void Screen<Bus, Parts>::begin(bool whole) {
    drawing_ = true;
    pen_.pieces.start();
    job_.whole = whole;
    const Kind k = kind(spot_);
    if (Parts::readout && k == Kind::readout) {
        Readout::begin(rom(), spot_, job_);
    } else if (Parts::scale && k == Kind::scale) {
        Scale::begin(job_);
    }
}

template <class Bus, class Parts>
void Screen<Bus, Parts>::commit() {
    for (uint8_t i = shown_bytes(spot_); i-- != 0;) {
        spot_.shown[i] = job_.next[i];
    }
}

template <class Bus, class Parts>
void Screen<Bus, Parts>::touch(Point at) {
    if (!finger_) {
        finger_ = true;
        find_key(at);
    } else if (finger_on_ != 0) {
        const bool inside = under_finger(finger_on_, at);
        if (inside && !inside_) {
            press();
        } else if (!inside && inside_) {
            inside_ = false;
            changed_ = true;
            report(KeyMotion::slide_off);
        }
    }
}

template <class Bus, class Parts>
void Screen<Bus, Parts>::find_key(Point at) {
    finger_key_ = page_word(page::first_key);
    Spot spot = first_item();
    for (uint16_t n = item_count(); n != 0; --n, spot = after(spot)) {
        if (kind(spot) != Kind::box || (rom().u8(word(spot.at + box::flags)) & box::key) == 0) {
            continue;
        }
        if (under_finger(spot.at, at)) {
            if (Box::manner(pen_, values_, spot.at).enabled) {
                finger_on_ = spot.at;
                press();
            }
            return;
        }
        ++finger_key_;
    }
}

template <class Bus, class Parts>
void Screen<Bus, Parts>::press() {
    inside_ = true;
    held_ = false;
    finger_since_ = now_;
    changed_ = true;
    report(KeyMotion::press);
}

template <class Bus, class Parts>
void Screen<Bus, Parts>::lift() {
    finger_ = false;
    if (finger_on_ == 0) {
        return;
    }
    const auto manner = Box::manner(pen_, values_, finger_on_);
    finger_on_ = 0;
    changed_ = true;
    if (!inside_) {
        return;
    }
    report(KeyMotion::release);
    const bool tapped = !held_ || (manner.flags & box::holds) == 0;
    if (Parts::pages && tapped && (manner.flags & box::tap_page)) {
        show_page(manner.tap_page);
    }
}

// Reports a hold once, and repeats, while the finger stays on a key.
template <class Bus, class Parts>
void Screen<Bus, Parts>::watch_hold() {
    if (finger_on_ == 0 || !inside_) {
        return;
    }
    const auto manner = Box::manner(pen_, values_, finger_on_);
    const bool repeats = (manner.flags & box::repeats) != 0;
    if (held_ && !repeats) {
        return;
    }
    const uint8_t ticks = rom().u8(held_     ? header::repeat_every
                                   : repeats ? header::repeat_after
                                             : header::hold);
    if (word(now_ - finger_since_) < word(static_cast<unsigned>(ticks) * clock_tick_ms)) {
        return;
    }
    held_ = true;
    finger_since_ = now_;
    report(repeats ? KeyMotion::repeat : KeyMotion::hold);
    if (Parts::pages && (manner.flags & box::hold_page)) {
        show_page(manner.hold_page);
    }
}

}  // namespace dialplate
