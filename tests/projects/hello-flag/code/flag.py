# SPDX-License-Identifier: BSD-3-Clause
# The servo that carries the flag.
from machine import PWM, Pin
from time import sleep

DOWN_US = 600
UP_US = 1500


class Flag:
    def __init__(self, pin):
        self.pwm = PWM(Pin(pin))
        self.pwm.freq(50)
        self.turn(DOWN_US)

    def turn(self, microseconds):
        self.pwm.duty_ns(microseconds * 1000)

    def greet(self):
        for _ in range(2):
            self.turn(UP_US)
            sleep(0.6)
            self.turn(UP_US - 200)
            sleep(0.4)
        self.turn(DOWN_US)
