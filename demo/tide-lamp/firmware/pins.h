// SPDX-License-Identifier: MIT
// Pins of U1 as they are wired, see wiring.csv. The names on the board read IO16, IO25 and so on.
#pragma once

#include <stdint.h>

constexpr uint8_t PIN_RING = 16;       // IO16, through U2 and R1 to LED1.IN
constexpr uint8_t PIN_ENCODER_A = 25;  // IO25, pulled up by R2
constexpr uint8_t PIN_ENCODER_B = 26;  // IO26, pulled up by R3
constexpr uint8_t PIN_BUTTON = 27;     // IO27, pulled up inside U1
