// SPDX-License-Identifier: MIT
// Quick finger, revision 2: who presses first after the green light?

#include <TM1637Display.h>

const int DISPLAY_CLK = 2;
const int DISPLAY_DIO = 3;
const int BUTTON_LEFT = 4;
const int BUTTON_RIGHT = 5;
const int BUZZER = 6;
const int LED_RED = 7;
const int LED_GREEN = 8;

const long BAUD = 9600;
const unsigned long LONGEST_WAIT_MS = 5000;

TM1637Display display(DISPLAY_CLK, DISPLAY_DIO);

bool pressed(int pin) {
  return digitalRead(pin) == LOW;
}

void setup() {
  Serial.begin(BAUD);
  Serial.println("Quick finger 2");
  pinMode(BUTTON_LEFT, INPUT_PULLUP);
  pinMode(BUTTON_RIGHT, INPUT_PULLUP);
  pinMode(LED_RED, OUTPUT);
  pinMode(LED_GREEN, OUTPUT);
  pinMode(BUZZER, OUTPUT);
  display.setBrightness(4);
  display.showNumberDec(0);
  digitalWrite(LED_RED, HIGH);
}

void loop() {
  if (!pressed(BUTTON_LEFT) || !pressed(BUTTON_RIGHT)) return;
  digitalWrite(LED_RED, LOW);
  while (pressed(BUTTON_LEFT) || pressed(BUTTON_RIGHT)) delay(5);

  const unsigned long wait = random(1500, LONGEST_WAIT_MS);
  const unsigned long since = millis();
  while (millis() - since < wait) {
    if (pressed(BUTTON_LEFT) || pressed(BUTTON_RIGHT)) {
      tone(BUZZER, 200, 800);
      delay(1000);
      digitalWrite(LED_RED, HIGH);
      return;
    }
  }

  digitalWrite(LED_GREEN, HIGH);
  const unsigned long start = millis();
  while (!pressed(BUTTON_LEFT) && !pressed(BUTTON_RIGHT)) {
  }
  display.showNumberDec(millis() - start);
  tone(BUZZER, 1000, 120);
  digitalWrite(LED_GREEN, LOW);
  digitalWrite(LED_RED, HIGH);
}
