// Reading a resistive sheet through a 12-bit serial converter (the ADS7846 class: start bit, three
// address bits, mode, reference, two power bits; 24 clocks a conversion), bit-banged on any four pins and
// the pen line. Bit-banged, because the converter's clock limit is far below the display's (standards
// SAF-05: about 2.5 MHz) and the display keeps its own lines.
//
// Figures from the converters' data sheets, from memory: the control byte is taken at rising clocks;
// after its eighth clock one more passes, then each falling clock brings the next bit, highest first;
// half a clock lasts 200 ns at least.
#pragma once

#include "ui/touch_reading.hpp"

#include <util/delay.h>

#include <stdint.h>

namespace dialplate {

/// Figures of a sheet and of what counts as a press.
struct UsualSheet {
    static constexpr uint16_t plate_ohm =
        400;  ///< x plate, end to end; 200..900 (makers' pages, memory).
    static constexpr uint16_t most_ohm = 1500;  ///< Contact at or above this is no press (memory).
    static constexpr uint8_t settle_us =
        20;  ///< After the drive changed (standards RES-11: 10..1000).
};

/// @tparam Clock, In, Out, Select, Pen  Pins; In and Out as the converter names them. Select is low while
///                                      the converter listens, Pen is low while the sheet is touched.
/// @tparam Sheet                        Constants as UsualSheet has them.
template <class Clock, class In, class Out, class Select, class Pen, class Sheet = UsualSheet>
struct TouchSerial {
    static void begin() {
        Select::high();
        Select::output();
        Clock::low();
        Clock::output();
        In::low();
        In::output();
        Out::input();
        Out::low();
        Pen::input();
        Pen::high();  // Pull-up: the converter only pulls down.
    }

    static bool touched() { return !Pen::read(); }

    /// One filtered reading.
    /// @return false, and `raw` spoilt, if the sheet is not touched, not firmly enough, or was let go
    ///         meanwhile.
    static bool read(RawTouch& raw) {
        if (!touched()) {
            return false;
        }
        Select::low();
        raw.y = axis(measure_y);
        raw.x = axis(measure_x);
        PressReading press;
        press.position = raw.x;
        press.z1 = settled(measure_z1);
        press.z2 = settled(measure_z2);
        convert(power_down);
        Select::high();
        return touched() && touch_ohm(press, Sheet::plate_ohm, 12) < Sheet::most_ohm;
    }

private:
    // Start, channel, 12 bits, differential; converter stays on and the drive with it, or both go off
    // and the pen line comes back.
    static constexpr uint8_t stay_on = 0x01;
    static constexpr uint8_t measure_y = 0x90 | stay_on;
    static constexpr uint8_t measure_z1 = 0xB0 | stay_on;
    static constexpr uint8_t measure_z2 = 0xC0 | stay_on;
    static constexpr uint8_t measure_x = 0xD0 | stay_on;
    static constexpr uint8_t power_down = 0x90;

    /// The first sample switches the drive and is not used.
    static uint16_t settled(uint8_t control) {
        convert(control);
        _delay_us(Sheet::settle_us);
        return convert(control);
    }

    static uint16_t axis(uint8_t control) {
        uint16_t samples[touch_samples];
        samples[0] = settled(control);
        for (uint8_t i = 1; i < touch_samples; ++i) {
            samples[i] = convert(control);
        }
        return middle_of(samples);
    }

    __attribute__((noinline)) static uint16_t convert(uint8_t control) {
        for (uint8_t bit = 0x80; bit != 0; bit = static_cast<uint8_t>(bit >> 1)) {
            if (control & bit) {
                In::high();
            } else {
                In::low();
            }
            tick();
        }
        In::low();
        tick();
        uint16_t value = 0;
        for (uint8_t bit = 0; bit < 12; ++bit) {
            value = static_cast<uint16_t>(value << 1);
            if (Out::read()) {
                value |= 1;
            }
            tick();
        }
        tick();
        tick();
        tick();
        return value;
    }

    static void tick() {
        _delay_us(0.2);
        Clock::high();
        _delay_us(0.2);
        Clock::low();
    }
};

}  // namespace dialplate
