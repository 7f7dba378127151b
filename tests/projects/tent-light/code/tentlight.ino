// SPDX-License-Identifier: MIT
// Tent light, revision D: three steps of brightness and dark, on an ATtiny85.

#define LIGHT_PIN PB1
#define BUTTON_PIN PB2

const byte levels[] = {30, 100, 255, 0};
byte at = 0;

void setup() {
  pinMode(LIGHT_PIN, OUTPUT);
  pinMode(BUTTON_PIN, INPUT_PULLUP);
  analogWrite(LIGHT_PIN, levels[at]);
}

void loop() {
  if (digitalRead(BUTTON_PIN) == HIGH) return;
  at = (at + 1) % 4;
  analogWrite(LIGHT_PIN, levels[at]);
  delay(30);
  while (digitalRead(BUTTON_PIN) == LOW) {
  }
  delay(30);
}
