#include "sim/prototype/engine_work.hpp"

#include <algorithm>
#include <iterator>

namespace dialplate {
namespace {

struct Group {
    int first;
    const char* name;
};

constexpr Group work_groups[] = {
    {work::nothing, "nothing"},
    {work::header, "header"},
    {work::value, "value of type"},
    {work::paint, "paint"},
    {work::tone, "tone"},
    {work::page_place, "place of a page"},
    {work::page, "page"},
    {work::fill_group, "group of fills"},
    {work::fill_rect, "rect of a fill"},
    {work::text_group, "group of texts"},
    {work::text_line, "line of a text"},
    {work::text, "text"},
    {work::readout, "readout"},
    {work::box, "box"},
    {work::box_line, "line of a box"},
    {work::meter, "meter"},
    {work::scale, "scale"},
    {work::picture_item, "picture item"},
    {work::face_place, "place of a face"},
    {work::face, "plain face"},
    {work::face + work::face_fields, "face in runs"},
    {work::face + 2 * work::face_fields, "face in context"},
    {work::face + 3 * work::face_fields, "segment face"},
    {work::face + 4 * work::face_fields, "plain face in tones"},
    {work::face + 5 * work::face_fields, "face in tones in context"},
    {work::glyph, "plain glyph"},
    {work::glyph + work::glyph_fields, "glyph in runs"},
    {work::glyph + 2 * work::glyph_fields, "plain glyph in tones"},
    {work::metric, "metrics of a glyph in context"},
    {work::picture_place, "place of a picture"},
    {work::picture, "picture"},
    {work::strip_data, "strip"},
    {work::window, "window of"},
    {work::push, "push for"},
    {work::empty_push, "push of nothing for"},
    {work::row, "window's row of"},
    {work::runs_row, "row in runs: read"},
    {work::runs_same, "row in runs: the same"},
    {work::runs_run, "run"},
    {work::runs_one, "one of a run"},
    {work::runs_low, "low bit of a run"},
    {work::plain_row, "plain row: read"},
    {work::plain_blank, "plain row: blank"},
    {work::plain_bit, "plain bit"},
    {work::plain_change, "plain stroke"},
    {work::sent_row, "row sent"},
    {work::sent_stroke, "stroke sent"},
    {work::context, "decisions in context"},
    {work::large_context, "decisions in context, enlarged"},
    {work::context_tones, "decisions in context, in tones"},
    {work::tones_row, "plain row in tones: read"},
    {work::tones_blank, "plain row in tones: blank"},
    {work::tones_pixel, "plain pixel in tones"},
    {work::tones_change, "change of tone"},
    {work::tones_ground, "ground around the bits of a plain bitmap in tones"},
    {work::segment_end, "segment row: end"},
    {work::segment_middle, "segment row: middle"},
    {work::segment_upright, "segment row: upright"},
    {work::segment_dots, "segment row: dots"},
    {work::corner_row, "row at a corner"},
    {work::corner_column, "column at a corner"},
    {work::digit, "digit of a number"},
    {work::digit_byte, "byte of a number that loses a digit"},
    {work::on_meter, "value on a meter"},
    {work::drawn_count, "count of a readout that is drawn"},
    {work::drawn_cell, "cell of a readout that is drawn"},
    {work::scale_step, "tick passed over"},
    {work::compared, "digit compared"},
    {work::compared_row, "row compared"},
    {work::compared_run, "run compared"},
    {work::compared_bit, "bit of a run compared"},
    {work::compared_plain_bit, "plain bit compared"},
    {work::unlike_segments, "digit of changed segments"},
    {work::unlike_row, "row of changed segments"},
    {work::service, "service"},
    {work::pixel, "pixel"},
    {work::even_pixel, "pixel of even colour"},
    {work::even_push, "push of even colour"},
};

constexpr const char* subject_names[work::subjects] = {"the page",
                                                       "a readout",
                                                       "a box",
                                                       "a meter",
                                                       "a scale",
                                                       "plain",
                                                       "runs",
                                                       "contexts",
                                                       "enlarged contexts",
                                                       "segments",
                                                       "plain tones",
                                                       "tones in context",
                                                       "changed runs",
                                                       "changed segments"};

}  // namespace

std::string name_of_work(int kind) {
    const auto* after = std::upper_bound(
        std::begin(work_groups), std::end(work_groups), kind, [](int k, const Group& group) {
            return k < group.first;
        });
    const Group& group = *std::prev(after);
    const int field = kind - group.first;
    if (kind >= work::window && kind < work::runs_row) {
        return std::string{group.name} + ' ' + subject_names[field];
    }
    const int size = (after == std::end(work_groups) ? work::kinds : after->first) - group.first;
    return size == 1 ? group.name : std::string{group.name} + ", " + std::to_string(field);
}

}  // namespace dialplate
