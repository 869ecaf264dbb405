// CMake makes precompiled headers for a target only where a source of it uses them.
