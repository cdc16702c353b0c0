#!/bin/sh
# Builds the plain C++ kernel with the compiler's best and runs it: the bar that the C# kernel is held to.
set -eu
here=$(dirname "$0")
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
# The second is strict arithmetic too: it only gives up errno and traps, without which loops with roots are not vectorised.
for flags in "-O3 -march=native" "-O3 -fno-math-errno -fno-trapping-math -march=native" "-Ofast -march=native" "-Ofast -march=native -mprefer-vector-width=512"; do
    ${CXX:-g++} -std=c++17 $flags -o "$out/kernel" "$here/kernel.cpp"
    printf '%s  ' "$flags"
    "$out/kernel"
done
for flags in "-O3 -march=native" "-Ofast -march=native"; do
    ${CXX:-g++} -std=c++17 $flags -o "$out/reference" "$here/reference.cpp"
    printf 'reference, %s  ' "$flags"
    "$out/reference"
done
