// Faces: fonts at one size, and digits from geometry.
#include "sim/layout/draft.hpp"
#include "sim/layout/members.hpp"

#include <algorithm>

namespace dialplate {
namespace {

constexpr MemberName raster_members[] = {
    {"file", true}, {"size", true}, {"scale"}, {"spacing"}, {"packing"}, {"smooth"}, {"may"}};
constexpr MemberName segment_members[] = {{"segments", true}};
constexpr MemberName any_members[] = {
    {"file"}, {"size"}, {"scale"}, {"spacing"}, {"packing"}, {"smooth"}, {"may"}, {"segments"}};
constexpr MemberName latitude_members[] = {{"files"}, {"size"}, {"smooth"}};
constexpr MemberName geometry_members[] = {
    {"width", true}, {"height", true}, {"stroke", true}, {"gap"}};

constexpr int largest_cell = 255;  // u8 height and advance of a face in the image
constexpr Range sizes{4, largest_cell, "pixels"};
constexpr int most_files = 255;
constexpr int most_spacing = 64;

void read_segments(const Members& members, Face& face) {
    face.kind = FaceKind::segment;
    const Node* const node = members.find("segments");
    if (node == nullptr) return;
    const Members geometry(*node,
                           members.pointer_of("segments"),
                           {"segment face", face.name},
                           geometry_members,
                           members.mistakes());
    // Two upright strokes and a hole between them; three level ones and two holes.
    constexpr int least_width = 3, least_height = 5;
    face.segment_width = geometry.whole_or("width", {least_width, largest_cell}, least_width);
    face.segment_height = geometry.whole_or("height", {least_height, largest_cell}, least_height);
    const int thickest =
        std::max(1, std::min((face.segment_width - 1) / 2, (face.segment_height - 2) / 3));
    face.segment_stroke = geometry.whole_or(
        "stroke", {1, thickest, "two strokes across and three down need room between them"}, 1);
    face.segment_gap =
        geometry.whole_or("gap",
                          {0, largest_cell - face.segment_width, "width and gap in one byte"},
                          std::min(face.segment_stroke, largest_cell - face.segment_width));
}

void read_latitude(const Members& members, Face& face) {
    const Node* const node = members.find("may");
    if (node == nullptr) return;
    const Members may(*node,
                      members.pointer_of("may"),
                      {"\"may\" of face", face.name},
                      latitude_members,
                      members.mistakes());
    Latitude latitude;
    const Node* const files = may.list("files", {0, most_files});
    for (std::size_t i = 0; files != nullptr && i < files->elements.size(); ++i) {
        const auto file = text_in(files->elements[i],
                                  may.pointer_of("files") + pointer_part(i),
                                  "a file that " + members.what() + " may have",
                                  {.least = 1},
                                  members.mistakes());
        if (file) latitude.files.push_back(*file);
    }
    if (const auto size = may.pair("size", {sizes, sizes})) {
        latitude.least_size = (*size)[0];
        latitude.greatest_size = (*size)[1];
        if (latitude.least_size > latitude.greatest_size) {
            may.fail("size",
                     "out-of-range",
                     "goes from " + std::to_string(latitude.least_size) + " to " +
                         std::to_string(latitude.greatest_size) + "; the least size comes first");
        }
    }
    latitude.smooth = may.flag("smooth").value_or(false);
    face.latitude = std::move(latitude);
}

void read_smooth(const Members& members, Face& face) {
    face.smooth = members.flag("smooth").value_or(false);
    if (!face.smooth) return;
    if (face.scale > 1) {
        members.fail("smooth",
                     "out-of-range",
                     "needs \"scale\": 1, found " + std::to_string(face.scale) +
                         "; tones cannot be enlarged: give the face its full size");
    }
    if (face.packing == PackingWish::runs) {
        members.fail("smooth",
                     "out-of-range",
                     "does not go with \"packing\": \"runs\"; a smooth face is packed plain or in "
                     "context");
    }
}

}  // namespace

PackingWish read_packing(const Members& members) {
    static constexpr Word<PackingWish> packings[] = {{"automatic", PackingWish::automatic},
                                                     {"plain", PackingWish::plain},
                                                     {"runs", PackingWish::runs},
                                                     {"context", PackingWish::context}};
    const std::span<const Word<PackingWish>> all(packings);
    return members.one_of("packing", all).value_or(PackingWish::automatic);
}

void read_faces(const Members& document, Draft& draft) {
    const Node* const faces = document.object("faces");
    if (faces == nullptr) {
        if (document.has("faces")) draft.faces.unreadable();
        return;
    }
    if (faces->members.size() > most_named) {
        document.fail("faces",
                      "out-of-range",
                      "has " + std::to_string(faces->members.size()) + " faces; allowed are 0 to " +
                          std::to_string(most_named));
    }
    for (const Member& member : faces->members) {
        Face face;
        face.name = member.name;
        face.pointer = document.pointer_of("faces") + pointer_part(member.name);
        check_name(face.name, "face", face.pointer, member.place, draft.mistakes);
        draft.faces.add(face.name, member.place);
        const bool segment = member.value.find("segments") != nullptr;
        const bool raster = member.value.find("file") != nullptr;
        const MemberTable table = segment  ? MemberTable(segment_members)
                                  : raster ? MemberTable(raster_members)
                                           : MemberTable(any_members);
        const Members members(
            member.value, face.pointer, {"face", face.name}, table, draft.mistakes);
        if (segment) {
            read_segments(members, face);
        } else {
            if (!raster && member.value.kind == Node::Kind::object) {
                members.fail_whole("missing-member",
                                   "lacks \"file\" and \"segments\"; a face has one of them");
            }
            face.file = members.text("file", {.least = 1}).value_or("");
            face.size = members.whole_or("size", sizes, static_cast<int>(sizes.least));
            face.scale = members.whole_or("scale", {1, 4}, 1);
            face.spacing = members.whole_or("spacing", {0, most_spacing}, 0);
            face.packing = read_packing(members);
            read_smooth(members, face);
            read_latitude(members, face);
        }
        draft.layout.faces.push_back(std::move(face));
    }
}

}  // namespace dialplate
