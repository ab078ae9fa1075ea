#include "sim/edit/json_words.hpp"

#include <nlohmann/json.hpp>

namespace dialplate {

std::string json_text(std::string_view text) {
    return nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

}  // namespace dialplate
