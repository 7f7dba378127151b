# SPDX-License-Identifier: BSD-3-Clause
# Hello flag, revision 3.0: raises a flag when somebody comes in.
from machine import Pin
from time import sleep

from flag import Flag

BUTTON_PIN = 14
LIGHT_PIN = 15
SERVO_PIN = 16
MOTION_PIN = 17

button = Pin(BUTTON_PIN, Pin.IN, Pin.PULL_UP)
light = Pin(LIGHT_PIN, Pin.OUT)
motion = Pin(MOTION_PIN, Pin.IN)
flag = Flag(SERVO_PIN)

for _ in range(3):
    light.on()
    sleep(0.2)
    light.off()
    sleep(0.2)

while True:
    if motion.value() == 1 or button.value() == 0:
        light.on()
        flag.greet()
        light.off()
        sleep(10)
    sleep(0.05)
