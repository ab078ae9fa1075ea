// Reading a resistive sheet of four wires with the microcontroller's own 10-bit converter. Two of the
// wires must be converter inputs, the other two are any pins; all four may be lines of the display's
// parallel bus, as long as its write line rests: they are put back as they were.
//
// Source: standards RES-01 (drive one plate end to end, read the other), RES-02 (pressure), RES-11
// (settling, first sample discarded). ADC clock 50..200 kHz for all ten bits (ATmega328P data sheet, memory).
#pragma once

#include "ui/mcu/touch_serial.hpp"
#include "ui/touch_reading.hpp"

#include <avr/io.h>
#include <util/delay.h>

#include <stdint.h>

namespace dialplate {

/// Direction and level of a pin, put back at the end of the block.
template <class Wire>
class Kept {
public:
    Kept() : output_(Wire::is_output()), high_(Wire::is_high()) {}
    ~Kept() {
        if (high_) {
            Wire::high();
        } else {
            Wire::low();
        }
        if (output_) {
            Wire::output();
        } else {
            Wire::input();
        }
    }
    Kept(const Kept&) = delete;
    Kept& operator=(const Kept&) = delete;

private:
    bool output_, high_;
};

/// @tparam XPlus, XMinus, YPlus, YMinus  Pins at the ends of the two plates.
/// @tparam x_minus_channel, y_plus_channel  Converter inputs 0..7 of the pins XMinus and YPlus.
/// @tparam Sheet                         Constants as UsualSheet has them.
template <class XPlus,
          class XMinus,
          class YPlus,
          class YMinus,
          uint8_t x_minus_channel,
          uint8_t y_plus_channel,
          class Sheet = UsualSheet>
struct TouchFourWire {
    static void begin() {
        ADCSRA = _BV(ADEN) | prescale();
        ADMUX = _BV(REFS0);
    }

    /// One filtered reading, 0..1023 each: x rises towards XPlus, y towards YPlus.
    /// @return false, and `raw` spoilt, if the sheet is not touched or not firmly enough.
    static bool read(RawTouch& raw) {
        const Kept<XPlus> x_plus;
        const Kept<XMinus> x_minus;
        const Kept<YPlus> y_plus;
        const Kept<YMinus> y_minus;

        // Current through the contact: y plate high at its minus end, x plate low at its plus end. The
        // free ends carry none and show the contact's two sides.
        drive<YMinus, XPlus>();
        listen<YPlus>();
        listen<XMinus>();
        PressReading press;
        press.z1 = settled(x_minus_channel);
        press.z2 = settled(y_plus_channel);
        if (press.z1 == 0) {
            return false;
        }

        listen<YMinus>();
        drive<XPlus, XMinus>();
        raw.x = axis(y_plus_channel);

        listen<XPlus>();
        listen<XMinus>();
        drive<YPlus, YMinus>();
        raw.y = axis(x_minus_channel);

        // The plus end of the x plate was the low one.
        press.position = static_cast<uint16_t>(1023 - raw.x);
        return touch_ohm(press, Sheet::plate_ohm, 10) < Sheet::most_ohm;
    }

private:
    template <class High, class Low>
    static void drive() {
        High::high();
        High::output();
        Low::low();
        Low::output();
    }

    template <class Wire>
    static void listen() {
        Wire::input();
        Wire::low();  // No pull-up.
    }

    static constexpr uint8_t prescale() {
        return F_CPU <= 1600000UL    ? 3   // 8
               : F_CPU <= 3200000UL  ? 4   // 16
               : F_CPU <= 6400000UL  ? 5   // 32
               : F_CPU <= 12800000UL ? 6   // 64
                                     : 7;  // 128: 125 kHz at 16 MHz
    }

    static uint16_t settled(uint8_t channel) {
        ADMUX = static_cast<uint8_t>(_BV(REFS0) | channel);
        _delay_us(Sheet::settle_us);
        convert();
        return convert();
    }

    static uint16_t axis(uint8_t channel) {
        uint16_t samples[touch_samples];
        samples[0] = settled(channel);
        for (uint8_t i = 1; i < touch_samples; ++i) {
            samples[i] = convert();
        }
        return middle_of(samples);
    }

    __attribute__((noinline)) static uint16_t convert() {
        ADCSRA |= _BV(ADSC);
        while (ADCSRA & _BV(ADSC)) {
        }
        return ADC;
    }
};

}  // namespace dialplate
