/**
 * Dynamic viscosity of pure water, Pa s.
 *
 * Units:  degrees Celsius. Range: 0 to 100 °C, within 2.5 %; within 0.3 % from 15 to 40 °C.
 * Source: the Vogel form of the handbooks, 2.414e-5 × 10^(247.8/(T − 140)), from memory; the CRC Handbook has 1.0016 mPa s at 20 °C.
 *
 * @example waterViscosity(25) // 8.9e-4
 */
export const waterViscosity = (celsius: number): number => 2.414e-5 * 10 ** (247.8 / (celsius + 273.15 - 140))
