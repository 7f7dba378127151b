#!/bin/sh
# Writes unitFactors.json with GNU units 2.22: what one of each unit is in the unit that we count its kind in.
# Usage: sh makeUnitFactors.sh > unitFactors.json
factor() { printf '  ["%s", "%s", %s]' "$1" "$2" "$(units -o '%.17g' -t "$3" "$4")"; }
next() { printf ',\n'; factor "$@"; }
printf '[\n'
factor resistance 'mΩ' milliohm ohm
next resistance 'kΩ' kiloohm ohm
next resistance 'MΩ' megaohm ohm
next resistance 'GΩ' gigaohm ohm
next capacitance pF picofarad farad
next capacitance nF nanofarad farad
next capacitance 'µF' microfarad farad
next capacitance mF millifarad farad
next inductance nH nanohenry henry
next inductance 'µH' microhenry henry
next inductance mH millihenry henry
next voltage mV millivolt volt
next voltage kV kilovolt volt
next current 'µA' microampere ampere
next current mA milliampere ampere
next power mW milliwatt watt
next power kW kilowatt watt
next frequency kHz kilohertz hertz
next frequency MHz megahertz hertz
next frequency GHz gigahertz hertz
next charge mAh 'milliampere hour' 'ampere second'
next charge Ah 'ampere hour' 'ampere second'
next energy mWh 'milliwatt hour' joule
next energy Wh 'watt hour' joule
next energy kWh 'kilowatt hour' joule
next length 'µm' micrometer meter
next length mm millimeter meter
next length cm centimeter meter
next length in inch meter
next length mil mil meter
next length ft foot meter
next length km kilometer meter
next mass mg milligram kilogram
next mass g gram kilogram
next mass oz ounce kilogram
next time ns nanosecond second
next time 'µs' microsecond second
next time ms millisecond second
next time min minute second
next time h hour second
next time days day second
next tolerance '%' percent 1
next tolerance ppm ppm 1
printf '\n]\n'
