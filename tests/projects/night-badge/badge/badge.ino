// SPDX-License-Identifier: MIT
// Night badge, revision 4: three lights breathe one after the other.

const byte LIGHT_LEFT = 0;
const byte LIGHT_MIDDLE = 1;
const byte LIGHT_RIGHT = 4;

void breathe(byte light) {
  for (int level = 0; level < 256; level += 2) {
    analogWrite(light, level);
    delay(6);
  }
  for (int level = 255; level > 0; level -= 2) {
    analogWrite(light, level);
    delay(6);
  }
  analogWrite(light, 0);
}

void setup() {
  pinMode(LIGHT_LEFT, OUTPUT);
  pinMode(LIGHT_MIDDLE, OUTPUT);
  pinMode(LIGHT_RIGHT, OUTPUT);
}

void loop() {
  breathe(LIGHT_LEFT);
  breathe(LIGHT_MIDDLE);
  breathe(LIGHT_RIGHT);
}
