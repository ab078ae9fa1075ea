// The CRC-32 of IEEE 802.3 (reflected, 0xEDB88320, begun and ended with all ones), half a byte at a time.
#pragma once

#include <stdint.h>

/// What half a byte does to it.
constexpr uint32_t crc32_of_half[16] = {0x00000000,
                                        0x1DB71064,
                                        0x3B6E20C8,
                                        0x26D930AC,
                                        0x76DC4190,
                                        0x6B6B51F4,
                                        0x4DB26158,
                                        0x5005713C,
                                        0xEDB88320,
                                        0xF00F9344,
                                        0xD6D6A3E8,
                                        0xCB61B38C,
                                        0x9B64C2B0,
                                        0x86D3D2D4,
                                        0xA00AE278,
                                        0xBDBDF21C};

class Crc32 {
public:
    void add(uint8_t byte) {
        state_ = state_ >> 4 ^ crc32_of_half[(state_ ^ byte) & 0xF];
        state_ = state_ >> 4 ^ crc32_of_half[(state_ ^ static_cast<uint32_t>(byte >> 4)) & 0xF];
        ++bytes_;
    }
    uint32_t value() const { return ~state_; }
    uint32_t bytes() const { return bytes_; }

private:
    uint32_t state_ = 0xFFFFFFFF;
    uint32_t bytes_ = 0;
};
