// SPDX-License-Identifier: CERN-OHL-P-2.0
// Base of the tide lamp (MP1). All sizes in millimetres. Print floor down, no supports.
outer = 110;
height = 42;
wall = 2.4;
floor_thickness = 2.4;
post_height = 6;        // lifts the board clear of the solder joints
board_holes = [65, 45]; // centres of the corner holes of PB1
pilot = 1.8;            // for 2.2 mm thread-forming screws
plate_radius = 47.5;    // where MP8 to MP10 sit
plate_depth = 8.6;      // MP2 lies this far below the rim, under the lip of MP3
$fn = 120;

module post(height, across) {
  difference() {
    cylinder(h = height, d = across);
    translate([0, 0, 2]) cylinder(h = height, d = pilot, $fn = 24);
  }
}

difference() {
  cylinder(h = height, d = outer);
  translate([0, 0, floor_thickness]) cylinder(h = height, d = outer - 2 * wall);
  // J1 at the back
  translate([0, outer / 2, 20]) rotate([90, 0, 0]) cylinder(h = 20, d = 8.2, center = true);
  // ENC1 at the front
  translate([0, -outer / 2, 20]) rotate([90, 0, 0]) cylinder(h = 20, d = 7.2, center = true);
}
for (x = [-1, 1], y = [-1, 1])
  translate([x * board_holes[0] / 2, y * board_holes[1] / 2, floor_thickness]) post(post_height, 6);
for (turn = [0, 120, 240])
  rotate(turn) translate([plate_radius, 0, floor_thickness]) post(height - floor_thickness - plate_depth, 7);
