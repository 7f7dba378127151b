// SPDX-License-Identifier: CERN-OHL-P-2.0
// Diffuser dome of the tide lamp (MP3). All sizes in millimetres. Print rim down, white PETG, no supports.
across = 110;
rise = 48;       // lower than a half sphere, so that it prints without supports
wall = 1.2;
lip = 5;         // slips into the base
base_wall = 2.4;
play = 0.3;
$fn = 160;

module shell(d, h) {
  intersection() {
    scale([1, 1, h / (d / 2)]) sphere(d = d);
    translate([-d, -d, 0]) cube([2 * d, 2 * d, d]);
  }
}

difference() {
  shell(across, rise);
  shell(across - 2 * wall, rise - wall);
}
translate([0, 0, -lip]) difference() {
  cylinder(h = lip + 1, d = across - 2 * base_wall - 2 * play);
  translate([0, 0, -1]) cylinder(h = lip + 3, d = across - 2 * base_wall - 2 * play - 2.4);
}
