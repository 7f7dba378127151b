// SPDX-License-Identifier: GPL-3.0-or-later
// Twin pad, revision C: a matrix of two rows and six columns, scanned row by row.
#include <Keyboard.h>

#define ROW_1 4
#define ROW_2 5
#define COL_1 6
#define COL_2 7
#define COL_3 8
#define COL_4 A0
#define COL_5 A1
#define COL_6 A2

#define KEYS 12
#define SETTLE_MS 8

const byte rows[] = {ROW_1, ROW_2};
const byte columns[] = {COL_1, COL_2, COL_3, COL_4, COL_5, COL_6};
const char LETTERS[] = "ABCDEFGHIJKL";

bool down[KEYS];
unsigned long changed[KEYS];

void setup() {
  for (byte column : columns) pinMode(column, INPUT_PULLUP);
  for (byte row : rows) pinMode(row, INPUT);
  pinMode(LED_BUILTIN, OUTPUT);
  for (byte i = 0; i < 4; i++) {
    digitalWrite(LED_BUILTIN, i % 2 == 0 ? HIGH : LOW);
    delay(150);
  }
  Keyboard.begin();
}

// One row is pulled low at a time; a key that is down pulls its column low through its diode.
void loop() {
  for (byte r = 0; r < 2; r++) {
    pinMode(rows[r], OUTPUT);
    digitalWrite(rows[r], LOW);
    delayMicroseconds(10);
    for (byte c = 0; c < 6; c++) {
      const byte key = r * 6 + c;
      const bool now = digitalRead(columns[c]) == LOW;
      if (now != down[key] && millis() - changed[key] > SETTLE_MS) {
        down[key] = now;
        changed[key] = millis();
        if (now) Keyboard.write(LETTERS[key]);
      }
    }
    pinMode(rows[r], INPUT);
  }
}
