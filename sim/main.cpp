// The program: hands the command line to the commands.
#include "sim/commands/commands.hpp"

#include <malloc.h>
#include <string>

namespace {

/// Glass and images come and go in pieces of hundreds of KiB, which malloc would fetch from the system and give back
/// each time. Kept, a check takes a quarter fewer page faults and a tenth less time.
void keep_memory() {
#ifdef __GLIBC__
    constexpr int mebibyte = 1 << 20;
    mallopt(M_MMAP_THRESHOLD, 32 * mebibyte);
    mallopt(M_TRIM_THRESHOLD, 256 * mebibyte);
    mallopt(M_TOP_PAD, 8 * mebibyte);
#endif
}

}  // namespace

int main(int argc, char** argv) {
    using dialplate::ExitStatus;
    keep_memory();
    CLI::App program{
        "Finish the small touch-screen display of a home-built receiver on the PC: see it, try "
        "it,\n"
        "check it, and know what it costs in flash, RAM and time, before it is flashed.",
        "dialplate"};
    ExitStatus status;
    dialplate::add_try(program, status);
    dialplate::add_check(program, status);
    dialplate::add_cost(program, status);
    dialplate::add_faces(program, status);
    dialplate::add_fit(program, status);
    dialplate::add_shot(program, status);
    dialplate::add_emit(program, status);
    dialplate::add_prove(program, status);
    return dialplate::run(program, argc, argv, status);
}
