// SPDX-License-Identifier: CC-BY-SA-4.0
// Plate for six switches. Print two, flat, without supports.
pitch = 19.05;
difference() {
  cube([60, 41, 1.5]);
  for (x = [0:2], y = [0:1]) translate([3.7 + x * pitch, 4 + y * pitch, -1]) cube([14, 14, 4]);
}
