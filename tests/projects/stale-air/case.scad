// SPDX-License-Identifier: CERN-OHL-S-2.0
// Case of the sensor. Print lid down.
difference() {
  cube([80, 60, 30]);
  translate([2, 2, 2]) cube([76, 56, 30]);
  for (x = [10:6:40]) translate([x, 20, -1]) cube([2, 20, 4]);
}
