// Drawing in slices without remembering how far each drawing has come.
//
// A drawing names its pieces in order: fills and glyphs. Each slice names them all again, but only those
// whose turn it is reach the bus, until the slice has sent as many pixels as it may; a tall fill takes several
// slices, a band of rows each. As long as the same pieces are named in the same order, nothing is drawn
// twice or left out.
#pragma once

#include "ui/rom.hpp"

#include <stdint.h>

namespace dialplate {

class Pieces {
public:
    /// Begins a new drawing.
    void start() {
        turn_ = 0;
        row_ = 0;
    }
    /// Begins a slice.
    /// @param pixels  How much it may send, at least 1; a piece that cannot be cut may be larger and goes
    ///                out alone.
    void slice(uint16_t pixels) {
        left_ = pixels;
        fresh_ = true;
        name_again();
    }
    /// The pieces are named from the first one on.
    void name_again() { named_ = 0; }
    /// Names a piece. True: draw it now, if it fits, then say `drawn` or `drawn_rows`.
    bool mine() { return named_++ == turn_ && left_ != 0; }
    /// Names so many pieces if all of them have been drawn. False: name them one by one.
    bool passes(uint8_t pieces) {
        if (turn_ - named_ < pieces) {
            return false;
        }
        named_ = word(static_cast<unsigned>(named_) + pieces);
        return true;
    }
    /// Whether a piece of so many pixels fits into the slice. If not, the slice ends.
    bool fits(uint16_t pixels) {
        if (!fresh_ && pixels > left_) {
            close();
        }
        return left_ != 0;
    }
    /// How many rows of so many pixels fit into the slice, at least one into a fresh one. None: it ends.
    uint16_t rows_that_fit(uint16_t pixels) {
        return !fits(pixels) ? uint16_t{0} : pixels >= left_ ? uint16_t{1} : word(left_ / pixels);
    }
    /// The piece is complete.
    void drawn() {
        ++turn_;
        row_ = 0;
    }
    /// The first `rows` more rows of a fill that has `of` rows are drawn.
    void drawn_rows(uint16_t rows, uint16_t of) {
        row_ = word(static_cast<unsigned>(row_) + rows);
        if (row_ >= of) {
            drawn();
        } else {
            close();
        }
    }
    /// The slice has sent a window with so many pixels.
    __attribute__((noinline)) void sent(uint16_t pixels) {
        // A window costs about as much as so many pixels.
        constexpr uint16_t window = 16;
        pixels = word(static_cast<unsigned>(pixels) + window);
        left_ = pixels < left_ ? word(static_cast<unsigned>(left_) - pixels) : uint16_t{0};
        fresh_ = false;
    }
    /// Whether the slice may send no more. If not, every piece that was named has been drawn.
    bool full() const { return left_ == 0; }
    /// Ends the slice.
    void close() { left_ = 0; }
    /// Rows of the present piece that are drawn already.
    uint16_t row() const { return row_; }
    /// Number of the piece whose turn it is, for drawings that can go straight to it.
    uint16_t turn() const { return turn_; }
    void go_straight_to_it() { named_ = turn_; }
    /// Whether the one piece named since then has been drawn.
    bool went() const { return turn_ == named_; }
    /// For a drawing that counts something of its own: it goes on at `turn`.
    void go_on_to(uint16_t turn) {
        turn_ = turn;
        row_ = 0;
    }

private:
    uint16_t turn_ = 0, named_ = 0, row_ = 0, left_ = 0;
    bool fresh_ = false;  // nothing was sent in this slice
};

}  // namespace dialplate
