// SPDX-License-Identifier: MIT
// Fan box, revision 1: a press runs the fan for 20 minutes, another one stops it.

const byte BUTTON_PIN = 2;
const byte RELAY_PIN = 3;
const byte LED_PIN = 5;

const unsigned long RUN_MS = 20UL * 60UL * 1000UL;

bool running = false;
unsigned long since = 0;

void setRunning(bool on) {
  running = on;
  since = millis();
  digitalWrite(RELAY_PIN, on ? HIGH : LOW);
  digitalWrite(LED_PIN, on ? HIGH : LOW);
}

void setup() {
  Serial.begin(9600);
  Serial.println("Fan box 1");
  pinMode(BUTTON_PIN, INPUT_PULLUP);
  pinMode(RELAY_PIN, OUTPUT);
  pinMode(LED_PIN, OUTPUT);
  setRunning(false);
}

void loop() {
  static bool before = false;
  const bool pressed = digitalRead(BUTTON_PIN) == LOW;
  if (pressed && !before) setRunning(!running);
  before = pressed;
  if (running && millis() - since > RUN_MS) setRunning(false);
  delay(20);
}
