// Which members each kind of item has.
#include "sim/layout/read_item.hpp"

namespace dialplate {
namespace {

constexpr MemberName readout_members[] = {
    {"kind", true},
    {"name"},
    {"at", true},
    {"size", true},
    {"value", true},
    {"face", true},
    {"ink", true},
    {"ground"},
    {"groups"},
    {"separator"},
    {"drop"},
    {"least"},
    {"align"},
    {"unit"},
    {"tuning"},
    {"within_ms"},
};
constexpr MemberName key_members[] = {
    {"kind", true},
    {"name"},
    {"at", true},
    {"size", true},
    {"text", true},
    {"face", true},
    {"look", true},
    {"radius"},
    {"edge"},
    {"tap"},
    {"hold"},
    {"repeat"},
    {"active"},
    {"enabled_by"},
};
constexpr MemberName legend_members[] = {
    {"kind", true},
    {"name"},
    {"at", true},
    {"size", true},
    {"text", true},
    {"face", true},
    {"ink", true},
    {"ground"},
    {"align"},
};
constexpr MemberName lamp_members[] = {
    {"kind", true},
    {"name"},
    {"at", true},
    {"size", true},
    {"value", true},
    {"when"},
    {"text"},
    {"face", true},
    {"lit", true},
    {"unlit"},
    {"radius"},
    {"edge"},
};
constexpr MemberName meter_members[] = {
    {"kind", true}, {"name"},    {"at", true}, {"size", true}, {"value", true}, {"from"},  {"to"},
    {"bar"},        {"upright"}, {"blocks"},   {"ink", true},  {"ground"},      {"unlit"}, {"over"},
    {"peak"},       {"marks"},   {"face"},     {"mark_ink"},   {"tick"},
};
constexpr MemberName scale_members[] = {
    {"kind", true},  {"name"},        {"at", true},        {"size", true},
    {"value", true}, {"moves"},       {"per_pixel", true}, {"from"},
    {"minor", true}, {"major", true}, {"divide"},          {"decimals"},
    {"minor_tick"},  {"major_tick"},  {"face", true},      {"ink", true},
    {"ground"},      {"label_ink"},   {"pointer_ink"},
};
constexpr MemberName picture_members[] = {
    {"kind", true},
    {"name"},
    {"at", true},
    {"file", true},
    {"ink"},
    {"ground"},
    {"tones"},
    {"packing"},
};
constexpr MemberName frame_members[] = {
    {"kind", true},
    {"name"},
    {"at", true},
    {"size", true},
    {"ink"},
    {"line"},
    {"fill"},
};

}  // namespace

MemberTable members_of(ItemKind kind) {
    switch (kind) {
        case ItemKind::readout:
            return readout_members;
        case ItemKind::key:
            return key_members;
        case ItemKind::legend:
            return legend_members;
        case ItemKind::lamp:
            return lamp_members;
        case ItemKind::meter:
            return meter_members;
        case ItemKind::scale:
            return scale_members;
        case ItemKind::picture:
            return picture_members;
        case ItemKind::frame:
            return frame_members;
    }
    return {};
}

}  // namespace dialplate
