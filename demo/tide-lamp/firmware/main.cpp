// SPDX-License-Identifier: MIT
// Tide lamp, revision 1.2: a ring of 24 lights that fills and empties with the tide.

#include <Arduino.h>
#include <ESP32Encoder.h>
#include <FastLED.h>
#include <Preferences.h>
#include <WiFi.h>
#include <esp_sntp.h>
#include <time.h>

#include "pins.h"
#include "secrets.h"
#include "tide.h"

constexpr char REVISION[] = "1.2";
constexpr uint32_t BAUD = 115200;
constexpr int NUM_LEDS = 24;

// F1 carries 1.85 A. With 0.5 A for U1, 1 A for the ring leaves room on a warm day.
constexpr uint8_t SUPPLY_VOLTS = 5;
constexpr uint32_t RING_LIMIT_MA = 1000;

constexpr uint8_t BRIGHTNESS_MIN = 4;
constexpr uint8_t BRIGHTNESS_MAX = 200;
constexpr uint8_t BRIGHTNESS_STEP = 6;
constexpr int OFFSET_STEP_MINUTES = 5;
constexpr int OFFSET_LIMIT_MINUTES = 360;

constexpr uint32_t FRAME_MS = 40;
constexpr uint32_t DEBOUNCE_MS = 25;
constexpr uint32_t OFFSET_MODE_MS = 10000;
constexpr uint32_t SAVE_AFTER_MS = 5000;
constexpr uint32_t WIFI_PATIENCE_MS = 20000;
constexpr uint32_t RETRY_MS = 60000;
constexpr uint32_t SYNC_MS = 24UL * 3600UL * 1000UL;
constexpr time_t CLOCK_IS_SET = 1767225600;  // before 2026 the clock has not been set
constexpr char TIME_SERVER[] = "pool.ntp.org";

enum class Sync { idle, joining, asking };

CRGB leds[NUM_LEDS];
ESP32Encoder encoder;
Preferences memory;

uint8_t brightness = 60;
int offsetMinutes = 0;

int64_t lastDetent = 0;
bool offsetMode = false;
uint32_t offsetModeSince = 0;
bool unsaved = false;
uint32_t lastTurn = 0;

Sync syncState = Sync::idle;
uint32_t syncSince = 0;
uint32_t syncWait = 0;
volatile bool timeArrived = false;

bool clockIsSet() {
  return time(nullptr) >= CLOCK_IS_SET;
}

void onTimeArrived(struct timeval *) {
  timeArrived = true;
}

// Wi-Fi is on for a few seconds a day, only to set the clock. The tide itself needs no network.
void updateClock(uint32_t now) {
  switch (syncState) {
    case Sync::idle:
      if (now - syncSince < syncWait) return;
      timeArrived = false;
      WiFi.mode(WIFI_STA);
      WiFi.begin(WIFI_NAME, WIFI_PASSWORD);
      syncState = Sync::joining;
      syncSince = now;
      return;
    case Sync::joining:
      if (WiFi.status() == WL_CONNECTED) {
        configTime(0, 0, TIME_SERVER);
        syncState = Sync::asking;
        syncSince = now;
        return;
      }
      break;
    case Sync::asking:
      break;
  }
  const bool late = now - syncSince > WIFI_PATIENCE_MS;
  if (!timeArrived && !late) return;
  WiFi.disconnect(true);
  WiFi.mode(WIFI_OFF);
  Serial.println(timeArrived ? "Clock set." : "No time from the network. Next try in a minute.");
  syncWait = timeArrived ? SYNC_MS : RETRY_MS;
  syncState = Sync::idle;
  syncSince = now;
}

void readKnob(uint32_t now) {
  // Half-quadrature counting gives two counts for each detent.
  const int64_t detent = encoder.getCount() / 2;
  const int turned = static_cast<int>(detent - lastDetent);
  if (turned == 0) return;
  lastDetent = detent;
  if (offsetMode) {
    offsetMinutes = constrain(offsetMinutes + turned * OFFSET_STEP_MINUTES, -OFFSET_LIMIT_MINUTES, OFFSET_LIMIT_MINUTES);
    offsetModeSince = now;
    Serial.printf("Offset %d min\n", offsetMinutes);
  } else {
    brightness = constrain(brightness + turned * BRIGHTNESS_STEP, BRIGHTNESS_MIN, BRIGHTNESS_MAX);
    Serial.printf("Brightness %u\n", brightness);
  }
  unsaved = true;
  lastTurn = now;
}

void readButton(uint32_t now) {
  static bool stable = HIGH;
  static bool previous = HIGH;
  static uint32_t changedAt = 0;
  const bool level = digitalRead(PIN_BUTTON);
  if (level != previous) {
    previous = level;
    changedAt = now;
  }
  if (level != stable && now - changedAt > DEBOUNCE_MS) {
    stable = level;
    if (stable == LOW) {
      offsetMode = !offsetMode;
      offsetModeSince = now;
    }
  }
  if (offsetMode && now - offsetModeSince > OFFSET_MODE_MS) offsetMode = false;
}

// Flash memory wears with each write, so settings are kept only once the knob has come to rest.
void saveSettings(uint32_t now) {
  if (!unsaved || now - lastTurn < SAVE_AFTER_MS) return;
  memory.putUChar("brightness", brightness);
  memory.putInt("offset", offsetMinutes);
  unsaved = false;
}

CRGB waterColour(int index) {
  // Deep blue at the low end of the ring, sea green at the high end.
  return blend(CRGB(0, 40, 255), CRGB(0, 255, 110), index * 255 / (NUM_LEDS - 1));
}

void drawTide(time_t when) {
  const double lit = tide::fill(when) * NUM_LEDS;
  const int whole = static_cast<int>(lit);
  for (int i = 0; i < NUM_LEDS; i++) {
    leds[i] = i < whole ? waterColour(i) : CRGB::Black;
  }
  if (whole < NUM_LEDS) {
    leds[whole] = waterColour(whole);
    leds[whole].nscale8(static_cast<uint8_t>((lit - whole) * 255.0));
  }
}

// One light at the place of the offset: the top of the ring is none, half round is six hours.
void drawOffset() {
  fill_solid(leds, NUM_LEDS, CRGB::Black);
  const int place = (NUM_LEDS + offsetMinutes * (NUM_LEDS / 2) / OFFSET_LIMIT_MINUTES) % NUM_LEDS;
  leds[place] = CRGB(255, 120, 20);
}

void drawWaiting() {
  fill_solid(leds, NUM_LEDS, CRGB::Black);
  leds[0] = CRGB(0, 0, 80);
}

void draw() {
  if (offsetMode) {
    drawOffset();
  } else if (clockIsSet()) {
    drawTide(time(nullptr) + offsetMinutes * 60);
  } else {
    drawWaiting();
  }
  FastLED.setBrightness(brightness);
  FastLED.show();
}

void setup() {
  Serial.begin(BAUD);
  Serial.printf("Tide lamp %s, %d lights\n", REVISION, NUM_LEDS);

  FastLED.addLeds<WS2812B, PIN_RING, GRB>(leds, NUM_LEDS);
  FastLED.setMaxPowerInVoltsAndMilliamps(SUPPLY_VOLTS, RING_LIMIT_MA);

  // R2 and R3 pull the two contacts up; the pulls inside U1 stay off.
  ESP32Encoder::useInternalWeakPullResistors = puType::none;
  encoder.attachHalfQuad(PIN_ENCODER_A, PIN_ENCODER_B);
  pinMode(PIN_BUTTON, INPUT_PULLUP);

  memory.begin("tide-lamp");
  brightness = memory.getUChar("brightness", brightness);
  offsetMinutes = memory.getInt("offset", offsetMinutes);

  sntp_set_time_sync_notification_cb(onTimeArrived);
}

void loop() {
  static uint32_t lastFrame = 0;
  const uint32_t now = millis();
  updateClock(now);
  readKnob(now);
  readButton(now);
  saveSettings(now);
  if (now - lastFrame >= FRAME_MS) {
    lastFrame = now;
    draw();
  }
}
