#include "sim/ledger/trade_report.hpp"

#include <algorithm>
#include <cstdio>

namespace dialplate {
namespace {

template <class... Values>
std::string line(const char* format, Values... values) {
    const int length = std::snprintf(nullptr, 0, format, values...);
    std::string text(static_cast<std::size_t>(length) + 1, '\0');
    std::snprintf(text.data(), text.size(), format, values...);
    text.pop_back();  // the zero byte
    return text;
}

std::string way_line(const std::string& name, const PackingTrade& way, Bytes as_it_is) {
    const long long more = way.flash.value - as_it_is.value;
    std::string text =
        line("     %-20s %c %-26s %8lld",
             name.c_str(),
             way.chosen ? '*' : ' ',
             (way.packing + (way.by_what_differs ? ", by what differs" : "")).c_str(),
             static_cast<long long>(way.flash.value));
    text += more == 0 ? line(" %7s", "") : line(" %+7lld", more);
    if (way.digit) {
        text += line(" %8.2f ms %8.2f ms %6lld %6.0f %%",
                     way.digit->median.value,
                     way.digit->worst.value,
                     static_cast<long long>(way.digit->bus_bytes.value),
                     100.0 * way.digit->share_of_limit);
    }
    return text + '\n';
}

}  // namespace

std::string trade_text(const Layout& layout, const std::vector<FaceTrade>& trades) {
    std::string text =
        "\nBytes against milliseconds: each face packed each way (* as it is)\n"
        "     face                   packing                       flash         "
        " a digit: half    worst     bytes  bus alone\n";
    for (const FaceTrade& trade : trades) {
        const Face& face = layout.faces[static_cast<std::size_t>(trade.face)];
        const auto chosen = std::find_if(trade.ways.begin(),
                                         trade.ways.end(),
                                         [](const PackingTrade& way) { return way.chosen; });
        const Bytes as_it_is = chosen == trade.ways.end() ? Bytes{} : chosen->flash;
        std::string name = face.name + (face.smooth ? ", smoothed" : "");
        for (const PackingTrade& way : trade.ways) {
            text += way_line(name, way, as_it_is);
            name.clear();
        }
    }
    return text +
           "     The flash is that of the whole display, decoders and table included. Times are "
           "those of the last\n"
           "     digit of a readout, over all pairs: half of them take no longer than the first "
           "figure.\n";
}

}  // namespace dialplate
