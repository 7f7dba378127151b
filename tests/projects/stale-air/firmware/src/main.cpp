// SPDX-License-Identifier: Apache-2.0
// Stale air, revision 1.1.
#include <Arduino.h>
#include <BME280I2C.h>
#include <SGP30.h>
#include <Wire.h>

constexpr uint8_t PIN_SDA = 21;
constexpr uint8_t PIN_SCL = 22;
constexpr uint8_t PIN_LED_AIR = 25;

constexpr uint32_t BAUD = 115200;
constexpr uint16_t STALE_PPM = 1000;
constexpr uint16_t FRESH_PPM = 800;

BME280I2C climate;  // at address 0x76
SGP30 gas;          // at address 0x58
bool stale = false;

void setup() {
  Serial.begin(BAUD);
  Serial.println("Stale air 1.1");
  pinMode(PIN_LED_AIR, OUTPUT);
  Wire.begin(PIN_SDA, PIN_SCL);
  if (!climate.begin()) Serial.println("BME280 is silent");
  if (!gas.begin()) Serial.println("SGP30 is silent");
}

void loop() {
  static uint32_t told = 0;
  gas.measure(true);
  if (gas.CO2() > STALE_PPM) stale = true;
  if (gas.CO2() < FRESH_PPM) stale = false;
  digitalWrite(PIN_LED_AIR, stale ? HIGH : LOW);
  if (millis() - told > 60000) {
    told = millis();
    Serial.printf("%.1f C %.0f %% %u ppm\n", climate.temp(), climate.hum(), gas.CO2());
  }
  delay(1000);
}
