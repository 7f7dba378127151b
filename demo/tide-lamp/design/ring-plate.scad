// SPDX-License-Identifier: CERN-OHL-P-2.0
// Ring plate of the tide lamp (MP2). All sizes in millimetres. Print groove up, no supports.
across = 104;
thickness = 3;
groove_outer = 87;
groove_inner = 71;
groove_depth = 1.6;
screw_radius = 47.5;
$fn = 120;

difference() {
  cylinder(h = thickness, d = across);
  translate([0, 0, thickness - groove_depth]) difference() {
    cylinder(h = thickness, d = groove_outer);
    translate([0, 0, -1]) cylinder(h = thickness + 2, d = groove_inner);
  }
  // The three wires of LED1 pass here.
  translate([0, -(groove_outer + groove_inner) / 4, -1]) scale([4.2, 1, 1]) cylinder(h = thickness + 2, d = 6);
  for (turn = [0, 120, 240])
    rotate(turn) translate([screw_radius, 0, -1]) cylinder(h = thickness + 2, d = 2.6, $fn = 24);
}
// Tabs that hold LED1 down.
for (turn = [0, 60, 120, 180, 240, 300])
  rotate(turn + 15) translate([groove_outer / 2 + 0.6, 0, thickness]) rotate([0, 90, 0]) cylinder(h = 1.2, d = 1.6, center = true, $fn = 24);
