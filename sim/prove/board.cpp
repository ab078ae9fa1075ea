#include "sim/prove/board.hpp"

#include "sim/prove/usart_model.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <cstring>
#include <deque>
#include <simavr/avr_adc.h>
#include <simavr/avr_ioport.h>
#include <simavr/sim_avr.h>
#include <simavr/sim_elf.h>
#include <simavr/sim_interrupts.h>
#include <simavr/sim_io.h>

// Asked by the address sanitizer, in a build that has it: libsimavr never frees its interrupt lines and the
// symbols of a firmware.
extern "C" const char* __lsan_default_suppressions();
extern "C" const char* __lsan_default_suppressions() {
    return "leak:libsimavr";
}

namespace dialplate {
namespace {

// Data-space addresses, the same on the ATmega328P and the ATmega2560 (data sheets, register summary).
namespace address {
constexpr avr_io_addr_t gpior0 = 0x3E, gpior1 = 0x4A, gpior2 = 0x4B, spcr = 0x4C, spsr = 0x4D,
                        spdr = 0x4E, ucsr0a = 0xC0, ucsr0b = 0xC1, ucsr0c = 0xC2, ubrr0l = 0xC4,
                        ubrr0h = 0xC5, udr0 = 0xC6;
}  // namespace address

struct PortPlace {
    char name;
    avr_io_addr_t pin;  // DDR and PORT are the next two.
};

constexpr PortPlace small_ports[] = {{'B', 0x23}, {'C', 0x26}, {'D', 0x29}};
constexpr PortPlace large_ports[] = {{'A', 0x20},
                                     {'B', 0x23},
                                     {'C', 0x26},
                                     {'D', 0x29},
                                     {'E', 0x2C},
                                     {'F', 0x2F},
                                     {'G', 0x32},
                                     {'H', 0x100},
                                     {'J', 0x103},
                                     {'K', 0x106},
                                     {'L', 0x109}};

constexpr std::uint8_t paint = 0xA5;
constexpr std::uint32_t supply_millivolts = 5000;

void say_nothing(avr_t*, int, const char*, va_list) {}
void do_not_wait(avr_t*, avr_cycle_count_t) {}

}  // namespace

struct Board::Inside {
    explicit Inside(const BoardOptions& wanted)
        : options(wanted),
          port(wanted.display),
          spi(wanted.spi,
              [this](CycleCount, std::uint8_t byte) {
                  if (serial_unit() == Unit::spi) port.take(byte);
              }),
          usart([this](CycleCount, std::uint8_t byte) {
              if (serial_unit() == Unit::usart) port.take(byte);
          }) {}

    enum class Unit { spi, usart, none };
    [[nodiscard]] Unit serial_unit() const {
        switch (options.display.bus) {
            case BusKind::spi:
            case BusKind::spi_timed:
                return Unit::spi;
            case BusKind::usart_spi:
                return Unit::usart;
            case BusKind::parallel8:
                return Unit::none;
        }
        return Unit::none;
    }
    [[nodiscard]] bool shifting() {
        switch (serial_unit()) {
            case Unit::spi:
                return spi.shifting(avr->cycle);
            case Unit::usart:
                return usart.shifting(avr->cycle);
            case Unit::none:
                return false;
        }
        return false;
    }
    void settle() {
        spi.settle(avr->cycle);
        usart.settle(avr->cycle);
    }

    /// A register as libsimavr had it before it was taken over.
    struct Slot {
        avr_io_read_t read = nullptr;
        void* read_parameter = nullptr;
        avr_io_write_t write = nullptr;
        void* write_parameter = nullptr;
    };

    struct Port {
        Inside* board = nullptr;
        PortPlace place{};
        std::uint8_t driven = 0;  // Lines that the outside drives,
        std::uint8_t lines = 0;   // and their levels.
        std::uint8_t shown = 0xFF;
        std::array<std::vector<std::function<void(bool)>>, 8> watchers;
        std::uint8_t watched = 0;

        [[nodiscard]] std::uint8_t direction_bits() const {
            return board->avr->data[place.pin + 1];
        }
        [[nodiscard]] std::uint8_t port_bits() const { return board->avr->data[place.pin + 2]; }
        void update();
    };

    Slot take_over(avr_io_addr_t at, avr_io_read_t read, avr_io_write_t write, void* parameter) {
        auto& io = avr->io[AVR_DATA_TO_IO(at)];
        const Slot before{io.r.c, io.r.param, io.w.c, io.w.param};
        if (read) {
            io.r.c = read;
            io.r.param = parameter;
        }
        if (write) {
            io.w.c = write;
            io.w.param = parameter;
        }
        return before;
    }
    static void pass_on(const Slot& slot, avr_t* avr, avr_io_addr_t at, std::uint8_t value) {
        if (slot.write) {
            slot.write(avr, at, value, slot.write_parameter);
        } else {
            avr->data[at] = value;
        }
    }

    void take_over_registers();
    Port* find(char name) {
        for (Port& candidate : ports) {
            if (candidate.place.name == name) return &candidate;
        }
        return nullptr;
    }
    Stop run(bool to_mark, CycleCount at_most);

    BoardOptions options;
    avr_t* avr = nullptr;
    DisplayPort port;
    SpiModel spi;
    UsartModel usart;
    Slot usart_data, usart_status, usart_control, usart_mode, usart_baud_low, usart_baud_high;
    std::deque<Port> ports;
    std::vector<Mark> marks;
    bool stop_at_mark = false, marked = false;
    std::deque<std::uint8_t> fed;
    std::vector<std::uint8_t> told;
    std::function<int(int)> analog;
    avr_irq_t* analog_inputs = nullptr;
    FirmwareSize size;
    int painted_from = 0;
};

void Board::Inside::Port::update() {
    const std::uint8_t now_shown = static_cast<std::uint8_t>(port_bits() | ~direction_bits());
    const std::uint8_t changed = now_shown ^ shown;
    if (changed == 0) return;
    shown = now_shown;
    board->port.port_changed(
        place.name, shown, board->avr->cycle, [this] { return board->shifting(); });
    for (int bit = 0; bit < 8; ++bit) {
        if (!(changed & watched & (1 << bit))) continue;
        for (const auto& watcher : watchers[static_cast<std::size_t>(bit)]) {
            watcher((shown >> bit & 1) != 0);
        }
    }
}

void Board::Inside::take_over_registers() {
    take_over(
        address::spcr,
        nullptr,
        [](avr_t* a, avr_io_addr_t at, std::uint8_t v, void* p) {
            a->data[at] = v;
            auto* in = static_cast<Inside*>(p);
            in->settle();
            in->spi.write_control(v);
        },
        this);
    take_over(
        address::spsr,
        [](avr_t* a, avr_io_addr_t, void* p) {
            return static_cast<Inside*>(p)->spi.read_status(a->cycle);
        },
        [](avr_t* a, avr_io_addr_t, std::uint8_t v, void* p) {
            static_cast<Inside*>(p)->spi.write_status(a->cycle, v);
        },
        this);
    take_over(
        address::spdr,
        [](avr_t* a, avr_io_addr_t, void* p) {
            return static_cast<Inside*>(p)->spi.read_data(a->cycle);
        },
        [](avr_t* a, avr_io_addr_t, std::uint8_t v, void* p) {
            static_cast<Inside*>(p)->spi.write_data(a->cycle, v);
        },
        this);

    usart_data = take_over(
        address::udr0,
        nullptr,
        [](avr_t* a, avr_io_addr_t at, std::uint8_t v, void* p) {
            auto* in = static_cast<Inside*>(p);
            if (in->usart.is_spi()) {
                in->usart.write_data(a->cycle, v);
            } else {
                pass_on(in->usart_data, a, at, v);
            }
        },
        this);
    usart_status = take_over(
        address::ucsr0a,
        [](avr_t* a, avr_io_addr_t at, void* p) {
            auto* in = static_cast<Inside*>(p);
            if (in->usart.is_spi()) return in->usart.read_status(a->cycle);
            const Slot& stock = in->usart_status;
            return stock.read ? stock.read(a, at, stock.read_parameter) : a->data[at];
        },
        [](avr_t* a, avr_io_addr_t at, std::uint8_t v, void* p) {
            auto* in = static_cast<Inside*>(p);
            if (in->usart.is_spi()) {
                in->usart.write_status(a->cycle, v);
            } else {
                pass_on(in->usart_status, a, at, v);
            }
        },
        this);
    usart_control = take_over(
        address::ucsr0b,
        nullptr,
        [](avr_t* a, avr_io_addr_t at, std::uint8_t v, void* p) {
            auto* in = static_cast<Inside*>(p);
            in->usart.write_control(a->cycle, v);
            if (in->usart.is_spi()) {
                a->data[at] = v;
            } else {
                pass_on(in->usart_control, a, at, v);
            }
        },
        this);
    usart_mode = take_over(
        address::ucsr0c,
        nullptr,
        [](avr_t* a, avr_io_addr_t at, std::uint8_t v, void* p) {
            auto* in = static_cast<Inside*>(p);
            in->usart.write_mode(v);
            pass_on(in->usart_mode, a, at, v);
        },
        this);
    const avr_io_write_t baud = [](avr_t* a, avr_io_addr_t at, std::uint8_t v, void* p) {
        auto* in = static_cast<Inside*>(p);
        pass_on(at == address::ubrr0l ? in->usart_baud_low : in->usart_baud_high, a, at, v);
        in->usart.write_baud(static_cast<std::uint16_t>(a->data[address::ubrr0l] |
                                                        (a->data[address::ubrr0h] & 0x0F) << 8));
    };
    usart_baud_low = take_over(address::ubrr0l, nullptr, baud, this);
    usart_baud_high = take_over(address::ubrr0h, nullptr, baud, this);

    take_over(
        address::gpior0,
        nullptr,
        [](avr_t* a, avr_io_addr_t at, std::uint8_t v, void* p) {
            auto* in = static_cast<Inside*>(p);
            a->data[at] = v;
            in->marks.push_back({v, a->cycle});
            if (in->stop_at_mark) {
                in->marked = true;
                a->state = cpu_Stopped;  // Ends the run behind this instruction.
            }
        },
        this);
    take_over(
        address::gpior1,
        [](avr_t*, avr_io_addr_t, void* p) -> std::uint8_t {
            auto* in = static_cast<Inside*>(p);
            if (in->fed.empty()) return 0;
            const std::uint8_t byte = in->fed.front();
            in->fed.pop_front();
            return byte;
        },
        nullptr,
        this);
    take_over(
        address::gpior2,
        nullptr,
        [](avr_t* a, avr_io_addr_t at, std::uint8_t v, void* p) {
            a->data[at] = v;
            static_cast<Inside*>(p)->told.push_back(v);
        },
        this);

    for (Port& each : ports) {
        // libsimavr's own ports would raise eight signals at each write, for nobody.
        take_over(
            each.place.pin,
            [](avr_t*, avr_io_addr_t, void* p) {
                const auto* self = static_cast<const Port*>(p);
                const unsigned out = self->direction_bits();
                const unsigned inputs =
                    (self->lines & self->driven) | (self->port_bits() & ~unsigned{self->driven});
                return static_cast<std::uint8_t>((self->port_bits() & out) | (inputs & ~out));
            },
            // A one written to PINx toggles that bit of PORTx (ATmega328P data sheet, "Toggling the Pin").
            [](avr_t* a, avr_io_addr_t at, std::uint8_t v, void* p) {
                a->data[at + 2] ^= v;
                static_cast<Port*>(p)->update();
            },
            &each);
        for (const int behind : {1, 2}) {
            take_over(
                static_cast<avr_io_addr_t>(each.place.pin + behind),
                nullptr,
                [](avr_t* a, avr_io_addr_t at, std::uint8_t v, void* p) {
                    a->data[at] = v;
                    static_cast<Port*>(p)->update();
                },
                &each);
        }
    }

    // Told with the vector's number when an interrupt is entered, and again with that of the interrupted
    // one when a nested one returns; the program counter tells the two apart.
    avr_irq_register_notify(
        avr_get_interrupt_irq(avr, AVR_INT_ANY) + AVR_INT_IRQ_RUNNING,
        [](avr_irq_t*, std::uint32_t vector, void* p) {
            auto* in = static_cast<Inside*>(p);
            if (vector != 0 && in->avr->pc == vector * in->avr->vector_size) {
                in->avr->cycle += static_cast<CycleCount>(in->options.interrupt_entry_cycles);
            }
        },
        this);

    analog_inputs = avr_io_getirq(avr, AVR_IOCTL_ADC_GETIRQ, ADC_IRQ_ADC0);
    avr_irq_register_notify(
        avr_io_getirq(avr, AVR_IOCTL_ADC_GETIRQ, ADC_IRQ_OUT_TRIGGER),
        [](avr_irq_t*, std::uint32_t value, void* p) {
            auto* in = static_cast<Inside*>(p);
            avr_adc_mux_t mux;
            static_assert(sizeof mux >= sizeof value);
            std::memcpy(&mux, &value, sizeof value);
            if (!in->analog || mux.kind != ADC_MUX_SINGLE) return;
            const int channel = static_cast<int>(mux.src);
            avr_raise_irq(in->analog_inputs + channel,
                          static_cast<std::uint32_t>(in->analog(channel)));
        },
        this);
}

Board::Board(const BoardOptions& options) : in_(std::make_unique<Inside>(options)) {}

Board::~Board() {
    if (!in_->avr) return;
    avr_terminate(in_->avr);
    std::free(in_->avr);
}

std::optional<std::string> Board::load(const std::filesystem::path& elf) {
    avr_global_logger_set(say_nothing);
    elf_firmware_t firmware{};
    if (!std::filesystem::is_regular_file(elf)) {
        return "no firmware \"" + elf.string() + "\"";
    }
    if (elf_read_firmware(elf.c_str(), &firmware) != 0 || firmware.flashsize == 0) {
        return "cannot read firmware \"" + elf.string() + "\": not an ELF file for AVR";
    }
    in_->avr = avr_make_mcu_by_name(in_->options.mcu.c_str());
    if (!in_->avr) {
        return "the simulator knows no microcontroller \"" + in_->options.mcu + "\"";
    }
    avr_t* avr = in_->avr;
    avr_init(avr);
    avr->log = LOG_NONE;
    if (firmware.flashsize > avr->flashend + 1) {
        return "firmware of " + std::to_string(firmware.flashsize) + " bytes, the " +
               in_->options.mcu + " has " + std::to_string(avr->flashend + 1) + " bytes of flash";
    }
    firmware.frequency = static_cast<std::uint32_t>(in_->options.clock.value);
    firmware.vcc = firmware.avcc = firmware.aref = supply_millivolts;
    avr_load_firmware(avr, &firmware);
    in_->size = {static_cast<int>(firmware.flashsize),
                 static_cast<int>(firmware.datasize + firmware.bsssize)};
    avr->sleep = do_not_wait;

    if (in_->options.mcu == "atmega2560") {
        for (const PortPlace& place : large_ports) {
            in_->ports.emplace_back();
            in_->ports.back().place = place;
        }
    } else {
        for (const PortPlace& place : small_ports) {
            in_->ports.emplace_back();
            in_->ports.back().place = place;
        }
    }
    for (auto& port : in_->ports) {
        port.board = in_.get();
    }
    in_->take_over_registers();

    in_->painted_from = avr->ioend + 1 + in_->size.data;
    for (int at = in_->painted_from; at <= avr->ramend; ++at) {
        avr->data[at] = paint;
    }
    std::free(firmware.flash);
    return std::nullopt;
}

FirmwareSize Board::size() const {
    return in_->size;
}

Stop Board::Inside::run(bool to_mark, CycleCount at_most) {
    const CycleCount end = avr->cycle + at_most;
    stop_at_mark = to_mark;
    marked = false;
    Stop reason = Stop::cycles;
    while (avr->cycle < end) {
        // Between two events libsimavr runs on without coming back: so far and no further.
        avr->run_cycle_limit = end - avr->cycle;
        avr->run_cycle_count = std::min(avr->run_cycle_count, avr->run_cycle_limit);
        const int state = avr_run(avr);
        if (marked) {
            avr->state = cpu_Running;
            reason = Stop::mark;
            break;
        }
        if (state == cpu_Done) {
            reason = Stop::ended;
            break;
        }
        if (state == cpu_Crashed) {
            reason = Stop::crashed;
            break;
        }
    }
    settle();
    return reason;
}

Stop Board::run_until_mark(CycleCount at_most) {
    return in_->run(true, at_most);
}
Stop Board::run_for(CycleCount cycles) {
    return in_->run(false, cycles);
}
CycleCount Board::cycles() const {
    return in_->avr->cycle;
}
const std::vector<Mark>& Board::marks() const {
    return in_->marks;
}

void Board::observe_bus(BusObserver observer) {
    in_->port.observe(std::move(observer));
}
std::int64_t Board::bus_bytes() const {
    return in_->port.bytes();
}

BusFaults Board::faults() const {
    return {in_->spi.collisions(), in_->usart.overruns(), in_->port.edges_while_shifting()};
}

CycleCount Board::fastest_write() const {
    return in_->port.fastest_write();
}

void Board::drive(PinPlace pin, bool level) {
    Inside::Port* port = in_->find(pin.port);
    const auto mask = static_cast<std::uint8_t>(1 << pin.bit);
    port->driven |= mask;
    port->lines =
        static_cast<std::uint8_t>(level ? port->lines | mask : port->lines & ~unsigned{mask});
}

void Board::let_go(PinPlace pin) {
    Inside::Port* port = in_->find(pin.port);
    port->driven &= static_cast<std::uint8_t>(~(1 << pin.bit));
}

void Board::watch(PinPlace pin, std::function<void(bool)> changed) {
    Inside::Port* port = in_->find(pin.port);
    port->watched |= static_cast<std::uint8_t>(1 << pin.bit);
    port->watchers[static_cast<std::size_t>(pin.bit)].push_back(std::move(changed));
}

bool Board::output(PinPlace pin) const {
    return (in_->find(pin.port)->shown >> pin.bit & 1) != 0;
}

bool Board::is_output(PinPlace pin) const {
    return (in_->find(pin.port)->direction_bits() >> pin.bit & 1) != 0;
}

void Board::supply_analog(std::function<int(int)> millivolts) {
    in_->analog = std::move(millivolts);
}

void Board::feed(const std::vector<std::uint8_t>& bytes) {
    in_->fed.insert(in_->fed.end(), bytes.begin(), bytes.end());
}

std::size_t Board::unread() const {
    return in_->fed.size();
}

std::vector<std::uint8_t> Board::told() {
    std::vector<std::uint8_t> taken;
    taken.swap(in_->told);
    return taken;
}

int Board::stack_mark() const {
    const avr_t* avr = in_->avr;
    int lowest = in_->painted_from;
    while (lowest <= avr->ramend && avr->data[lowest] == paint) {
        ++lowest;
    }
    return avr->ramend + 1 - lowest;
}

int Board::stack_now() const {
    const avr_t* avr = in_->avr;
    return avr->ramend - (avr->data[R_SPL] | avr->data[R_SPH] << 8);
}

void Board::paint_stack() {
    avr_t* avr = in_->avr;
    const int below = avr->ramend - stack_now() + 1;
    std::fill(avr->data + in_->painted_from, avr->data + below, paint);
}

std::uint8_t Board::peek(int address) const {
    return in_->avr->data[address];
}

}  // namespace dialplate
