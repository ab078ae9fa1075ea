// The program: hands the command line to the commands.
#include "sim/commands/commands.hpp"

#include <string>

int main(int argc, char** argv) {
    using dialplate::ExitStatus;
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
