/**
 * Dynamic viscosity of fresh or sea water, Pa s.
 *
 * Units:  degrees Celsius, practical salinity (about g/kg). Range: 0 to 100 °C, within 2.5 %; within 0.3 % from 15 to 40 °C; salinity 0 to 150.
 * Source: the Vogel form of the handbooks, 2.414e-5 × 10^(247.8/(T − 140)), from memory; the CRC Handbook has 1.0016 mPa s at 20 °C. What salt adds:
 *         Sharqawy, Lienhard & Zubair, Desalination and Water Treatment 16 (2010) 354, from memory.
 *
 * @example waterViscosity(25) // 8.9e-4
 * @example waterViscosity(25, 35) // 9.6e-4
 */
export function waterViscosity(celsius: number, salinity = 0): number {
  const pure = 2.414e-5 * 10 ** (247.8 / (celsius + 273.15 - 140))
  const salt = salinity / 1000
  const first = 1.541 + 1.998e-2 * celsius - 9.52e-5 * celsius ** 2
  const second = 7.974 - 7.561e-2 * celsius + 4.724e-4 * celsius ** 2
  return pure * (1 + first * salt + second * salt ** 2)
}
