/**
 * Share of dissolved ammonia that is un-ionised (NH3), the form that harms fish. Fresh water.
 *
 * Units: °C (0 to 50), pH; share out (0 to 1), unrounded. In sea water it is about a fifth lower.
 * Source: Emerson, Russo, Lund & Thurston, J. Fish. Res. Board Can. 32 (1975) 2379: pKa = 0.09018 + 2729.92/T.
 *
 * @example unionisedShare(25, 8) // 0.05366
 */
export function unionisedShare(temperatureC: number, ph: number): number {
  const pKa = 0.09018 + 2729.92 / (temperatureC + 273.15)
  return 1 / (1 + 10 ** (pKa - ph))
}
