/** Exact by definition. Sources: NIST SP 811 (2008) App. B; NIST Handbook 44 App. C. */
export const MM_PER_INCH = 25.4
export const MM_PER_FOOT = 304.8
export const L_PER_US_GALLON = 3.785411784
export const L_PER_IMPERIAL_GALLON = 4.54609
export const KG_PER_POUND = 0.45359237
/** Kilogram-force: a kilogram under standard gravity, 9.80665 m/s². */
export const N_PER_KILOGRAM_FORCE = 9.80665
export const N_PER_POUND_FORCE = KG_PER_POUND * N_PER_KILOGRAM_FORCE
export const G_PER_OUNCE = 28.349523125
/** US fluid ounce: 1/128 US gallon. */
export const ML_PER_US_FLUID_OUNCE = (L_PER_US_GALLON * 1000) / 128
/** Imperial fluid ounce: 1/160 imperial gallon. */
export const ML_PER_IMPERIAL_FLUID_OUNCE = (L_PER_IMPERIAL_GALLON * 1000) / 160
/** Carbonate hardness: 1 German degree = 17.848 mg/L as CaCO3 (10 mg/L CaO). */
export const PPM_PER_DKH = 17.848

export const celsiusToFahrenheit = (celsius: number): number => (celsius * 9) / 5 + 32
export const fahrenheitToCelsius = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9
