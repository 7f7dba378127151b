// SPDX-License-Identifier: CC-BY-SA-4.0
// Cover for one half. Print two, open side up, without supports.
difference() {
  cube([64, 45, 16]);
  translate([2, 2, 2]) cube([60, 41, 20]);
}
