const KELVIN_AT_0_C = 273.15

/**
 * Saturation vapour pressure over liquid water.
 *
 * Units:  degrees Celsius in, pascals out, unrounded. Range: 0 to 200 °C.
 * Source: Hyland & Wexler (1983) as in ASHRAE Fundamentals ch. 1 eq. (6), from memory; checked against the psychrolib package.
 *
 * @example saturationPressurePa(25) // 3169.22
 */
export function saturationPressurePa(celsius: number): number {
  const t = celsius + KELVIN_AT_0_C
  return Math.exp(-5.8002206e3 / t + 1.3914993 + t * (-4.8640239e-2 + t * (4.1764768e-5 + t * -1.4452093e-8)) + 6.5459673 * Math.log(t))
}

/**
 * How fast the saturation pressure rises at a temperature where it is known already.
 *
 * Units:  degrees Celsius and pascals in, Pa/K out, unrounded. Range: 0 to 200 °C.
 * Source: the derivative of `saturationPressurePa`.
 *
 * @example saturationSlopePaPerK(25, saturationPressurePa(25)) // 188.8
 */
export function saturationSlopePaPerK(celsius: number, pressurePa: number): number {
  const t = celsius + KELVIN_AT_0_C
  return pressurePa * (5.8002206e3 / (t * t) - 4.8640239e-2 + t * (2 * 4.1764768e-5 + t * 3 * -1.4452093e-8) + 6.5459673 / t)
}
