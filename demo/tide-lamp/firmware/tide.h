// SPDX-License-Identifier: MIT
// Height of the tide from five constituents, worked out without any network.
#pragma once

#include <math.h>
#include <time.h>

namespace tide {

struct Constituent {
  const char *name;
  double amplitude;  // metres
  double lag;        // degrees behind the zero of time below
  double speed;      // degrees per hour; depends on earth, moon and sun only
};

// Sallowmouth, an invented harbour. Amplitudes and lags are fitted to a year of its tide table,
// which takes in the slow swing over 18.6 years: fit them again every few years.
constexpr Constituent CONSTITUENTS[] = {
    {"M2", 1.62, 212.4, 28.9841042},
    {"S2", 0.54, 251.8, 30.0000000},
    {"N2", 0.31, 190.6, 28.4397295},
    {"K1", 0.12, 74.3, 15.0410686},
    {"O1", 0.09, 318.7, 13.9430356},
};

// 2026-01-01 00:00 UTC, the zero of time that the lags count from.
constexpr time_t EPOCH = 1767225600;

/** Height above mean sea level in metres, at a time in seconds since 1970 (UTC). */
inline double height(time_t when) {
  const double hours = static_cast<double>(when - EPOCH) / 3600.0;
  double sum = 0.0;
  for (const Constituent &c : CONSTITUENTS) {
    // Folding the angle before the cosine keeps its precision over the years.
    const double angle = fmod(c.speed * hours - c.lag, 360.0);
    sum += c.amplitude * cos(angle * M_PI / 180.0);
  }
  return sum;
}

/** Half the range of an ordinary spring tide in metres: what the full ring stands for. */
inline double springAmplitude() {
  double sum = 0.0;
  for (const Constituent &c : CONSTITUENTS) {
    if (c.speed > 28.0) sum += c.amplitude;
  }
  return sum;
}

/** How full the ring is, from 0 at the lowest to 1 at the highest spring tide. */
inline double fill(time_t when) {
  const double level = 0.5 + height(when) / (2.0 * springAmplitude());
  return fmin(1.0, fmax(0.0, level));
}

/** True while the water rises. */
inline bool rising(time_t when) {
  return height(when + 60) > height(when);
}

}  // namespace tide
