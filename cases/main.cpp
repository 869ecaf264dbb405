#include "cases/program.h"

int main(int argc, char** argv) { return static_cast<int>(gapstrain::cases::run_program(argc, argv)); }
