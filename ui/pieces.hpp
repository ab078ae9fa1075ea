// Drawing in slices without remembering how far each drawing has come.
//
// A drawing names its pieces in order: fills and glyphs. Each call of service() names them all again,
// but only the one whose turn it is reaches the bus; a tall fill takes several turns, a band of rows
// each. As long as the same pieces are named in the same order, nothing is drawn twice or left out.
#pragma once

#include <stdint.h>

namespace dialplate {

class Pieces {
public:
    /// Begins a new drawing.
    void start() {
        turn_ = 0;
        row_ = 0;
    }
    /// Begins a slice of it.
    void slice() {
        named_ = 0;
        spent_ = false;
    }
    /// Names a piece. True: draw it now, then say `drawn` or `drawn_rows`.
    bool mine() {
        if (spent_ || named_++ != turn_) {
            return false;
        }
        spent_ = true;
        return true;
    }
    void drawn() {
        ++turn_;
        row_ = 0;
    }
    /// The first `rows` more rows of a fill that has `of` rows are drawn.
    void drawn_rows(uint16_t rows, uint16_t of) {
        row_ = static_cast<uint16_t>(row_ + rows);
        if (row_ >= of) {
            drawn();
        }
    }
    /// Rows of the present piece that are drawn already.
    uint16_t row() const { return row_; }
    /// Number of the piece whose turn it is, for drawings that can go straight to it.
    uint16_t turn() const { return turn_; }
    void go_straight_to_it() { named_ = turn_; }
    /// For a drawing that counts something of its own: the next slice goes on at `turn`.
    void go_on_to(uint16_t turn, bool drew) {
        turn_ = turn;
        row_ = 0;
        spent_ = drew;
    }
    /// After all pieces were named: whether one of them was drawn.
    bool spent() const { return spent_; }

private:
    uint16_t turn_ = 0, named_ = 0, row_ = 0;
    bool spent_ = false;
};

}  // namespace dialplate
