# How numbers, measures, sums, lists and dates are written.
# In a text that these messages make, a number and its measure stay on one line.

number-decimal = .
number-group = ,
number-minus = −

# Two measures of the same value. $first: the reader's own; $second: the other.
quantity-both = { $first } ({ $second })

## Names of measures. $amount: the number as text; $n: the same as a number, for plurals.

measure-inch = { $amount }{ "\u00A0" }in
measure-foot = { $amount }{ "\u00A0" }ft
measure-foot-inch = { $feet }{ "\u00A0" }ft{ "\u00A0" }{ $inches }{ "\u00A0" }in
measure-mile = { $n ->
    [one] { $amount }{ "\u00A0" }mile
   *[other] { $amount }{ "\u00A0" }miles
}
measure-millimeter = { $amount }{ "\u00A0" }mm
measure-centimeter = { $amount }{ "\u00A0" }cm
measure-meter = { $amount }{ "\u00A0" }m
measure-kilometer = { $amount }{ "\u00A0" }km
measure-ounce = { $amount }{ "\u00A0" }oz
measure-pound = { $amount }{ "\u00A0" }lb
measure-gram = { $amount }{ "\u00A0" }g
measure-kilogram = { $amount }{ "\u00A0" }kg
measure-gallon-lot = { $amount }{ "\u00A0" }gal
measure-gallon-us = { $amount }{ "\u00A0" }gal
measure-gallon-imperial = { $amount }{ "\u00A0" }imperial{ "\u00A0" }gal
measure-quart = { $amount }{ "\u00A0" }qt
measure-liter = { $amount }{ "\u00A0" }L
measure-cubic-foot = { $amount }{ "\u00A0" }cu{ "\u00A0" }ft
measure-psi = { $amount }{ "\u00A0" }psi
measure-kilopascal = { $amount }{ "\u00A0" }kPa
measure-bar = { $amount }{ "\u00A0" }bar
measure-millibar = { $amount }{ "\u00A0" }mbar
measure-mph = { $amount }{ "\u00A0" }mph
measure-kmh = { $amount }{ "\u00A0" }km/h
measure-meter-per-second = { $amount }{ "\u00A0" }m/s
measure-knot = { $amount }{ "\u00A0" }kn
measure-watt = { $amount }{ "\u00A0" }W
measure-kilowatt = { $amount }{ "\u00A0" }kW
measure-btu-per-hour = { $amount }{ "\u00A0" }BTU/h
measure-ampere = { $amount }{ "\u00A0" }A
measure-volt = { $amount }{ "\u00A0" }V
measure-ampere-hour = { $amount }{ "\u00A0" }Ah
measure-watt-hour = { $amount }{ "\u00A0" }Wh
measure-kilowatt-hour = { $amount }{ "\u00A0" }kWh
measure-btu-energy = { $amount }{ "\u00A0" }BTU
measure-fahrenheit = { $amount }{ "\u00A0" }°F
measure-celsius = { $amount }{ "\u00A0" }°C
measure-second = { $amount }{ "\u00A0" }s
measure-minute = { $amount }{ "\u00A0" }min
measure-hour = { $amount }{ "\u00A0" }h
measure-day = { $n ->
    [one] { $amount }{ "\u00A0" }day
   *[other] { $amount }{ "\u00A0" }days
}
measure-percent = { $amount }{ "\u00A0" }%
measure-gallon-lot-per-minute = { $amount }{ "\u00A0" }gal/min
measure-gallon-us-per-minute = { $amount }{ "\u00A0" }gal/min
measure-gallon-imperial-per-minute = { $amount }{ "\u00A0" }imperial{ "\u00A0" }gal/min
measure-gallon-lot-per-hour = { $amount }{ "\u00A0" }gal/h
measure-gallon-us-per-hour = { $amount }{ "\u00A0" }gal/h
measure-gallon-imperial-per-hour = { $amount }{ "\u00A0" }imperial{ "\u00A0" }gal/h
measure-gallon-lot-per-day = { $amount }{ "\u00A0" }gal/day
measure-gallon-us-per-day = { $amount }{ "\u00A0" }gal/day
measure-gallon-imperial-per-day = { $amount }{ "\u00A0" }imperial{ "\u00A0" }gal/day
measure-liter-per-minute = { $amount }{ "\u00A0" }L/min
measure-liter-per-hour = { $amount }{ "\u00A0" }L/h
measure-liter-per-day = { $amount }{ "\u00A0" }L/day
measure-pound-foot = { $amount }{ "\u00A0" }lb-ft
measure-newton-meter = { $amount }{ "\u00A0" }N·m
measure-degree = { $amount }°
measure-mpg-lot = { $amount }{ "\u00A0" }mpg
measure-mpg-us = { $amount }{ "\u00A0" }mpg
measure-mpg-imperial = { $amount }{ "\u00A0" }mpg
measure-liter-per100-km = { $amount }{ "\u00A0" }L/100{ "\u00A0" }km
measure-pound-per-gallon-lot = { $amount }{ "\u00A0" }lb/gal
measure-pound-per-gallon-us = { $amount }{ "\u00A0" }lb/gal
measure-pound-per-gallon-imperial = { $amount }{ "\u00A0" }lb/imperial{ "\u00A0" }gal
measure-kilogram-per-liter = { $amount }{ "\u00A0" }kg/L
measure-btu-per-pound = { $amount }{ "\u00A0" }BTU/lb
measure-kilojoule-per-kilogram = { $amount }{ "\u00A0" }kJ/kg
measure-foot-per-second-squared = { $amount }{ "\u00A0" }ft/s²
measure-meter-per-second-squared = { $amount }{ "\u00A0" }m/s²

## Sums. $sign: a minus or nothing; $amount: the number as text; $currency: the ISO 4217 code.

money-usd = { $sign }${ $amount }
money-cad = { $sign }CA${ $amount }
money-aud = { $sign }A${ $amount }
money-nzd = { $sign }NZ${ $amount }
money-eur = { $sign }€{ $amount }
money-gbp = { $sign }£{ $amount }
money-other = { $currency }{ "\u00A0" }{ $sign }{ $amount }

## Lists. $first: what comes before; $last: what is added.

list-two = { $first } and { $last }
list-middle = { $first }, { $last }
list-end = { $first }, and { $last }

## What stands for a value that nobody has read yet.

fact-not-known = the value on its plate
fee-not-known = the sum on the price list
place-not-known = where staff show you
figure-not-known = a number that staff still have to look up

## Dates and times. $system: us, uk or metric; $half: am or pm.

date = { $system ->
    [us] { date-month }{ "\u00A0" }{ $day }, { $year }
   *[other] { $day }{ "\u00A0" }{ date-month } { $year }
}
# A month of a year.
date-year-month = { date-month } { $year }
date-month = { $month_n ->
    [1] Jan
    [2] Feb
    [3] Mar
    [4] Apr
    [5] May
    [6] Jun
    [7] Jul
    [8] Aug
    [9] Sep
    [10] Oct
    [11] Nov
   *[12] Dec
}
time = { $system ->
    [us] { $hour12 }:{ $minute }{ "\u00A0" }{ time-half }
   *[other] { $hour }:{ $minute }
}
time-half = { $half ->
    [am] AM
   *[pm] PM
}
date-time = { $date }, { $time }
date-time-offset = { $date }, { $time } (UTC{ $offset })

duration-minutes = { $minutes }{ "\u00A0" }min
duration-hours = { $hours }{ "\u00A0" }h
duration-hours-minutes = { $hours }{ "\u00A0" }h { $minutes }{ "\u00A0" }min

## Checks of scripts. Words of which each speaks of an injury: a notice, which warns of loss alone, has none of them.
## Separated by commas; a word stands for itself and not for its forms.

check-injury-words =
    bleed, bleeds, blind, blinds, break a leg, broken bone, broken bones, bruise, bruises, burn you, burns you, choke,
    chokes, crush you, crushes you, cut you, cuts you, dead, death, die, dies, drown, drowns, electrocute, faint, hurt,
    hurts, injure, injured, injures, injuries, injury, kill, killed, kills, make you ill, makes you ill, poison, poisons,
    scald, scalds, shock, shocks, sick, suffocate, suffocates, wound, wounds
