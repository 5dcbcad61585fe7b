/**
 * Molar masses in g/mol. Source: IUPAC standard atomic weights (N 14.0067); NH3 17.03052, NH4Cl 53.4915.
 * A kit's "2 ppm ammonia" may mean N, NH3 or NH4, 22 % and 29 % apart: every dose here is stated as nitrogen.
 */
const NITROGEN = 14.0067
const AMMONIA = 17.03052
const AMMONIUM = 18.0385
const AMMONIUM_CHLORIDE = 53.4915

/** Mass of each substance that carries one mass of nitrogen. */
export const PER_NITROGEN = {
  ammonia: AMMONIA / NITROGEN,
  ammonium: AMMONIUM / NITROGEN,
  ammoniumChloride: AMMONIUM_CHLORIDE / NITROGEN,
  nitrite: 46.0055 / NITROGEN,
  nitrate: 62.0049 / NITROGEN,
} as const

/** The first dose and each one after it: enough to feed the bacteria, low enough that nitrite does not stall them (common practice). */
export const DOSE_MG_PER_L = 2

/** A liquid stronger than this is not put into a customer's hand: fumes and burns (common practice). */
export const STRONGEST_SOLUTION = 0.1

/**
 * Ammonium chloride that brings water to a concentration of ammonia, stated as nitrogen.
 *
 * Units: litres, mg/L as N, share of the salt by mass (0 to 1); grams out, unrounded.
 * Source: molar masses, IUPAC.
 *
 * @example ammoniumChlorideG(237.7132, 2, 1) // 1.81565
 */
export function ammoniumChlorideG(waterL: number, mgPerL: number, strength: number): number {
  return (waterL * mgPerL * PER_NITROGEN.ammoniumChloride) / 1000 / strength
}

/**
 * Ammonia solution that brings water to a concentration of ammonia, stated as nitrogen.
 *
 * Units: litres, mg/L as N, mass share of NH3 (w/w, above 0 to 0.3); millilitres out, unrounded.
 * Source: densities 0.9575 kg/L at 10 %, 0.898 kg/L at 28 % (handbook values, from memory), straight lines between.
 *
 * @example ammoniaSolutionMl(237.7132, 2, 0.1) // 6.0372
 */
export function ammoniaSolutionMl(waterL: number, mgPerL: number, strength: number): number {
  const grams = (waterL * mgPerL * PER_NITROGEN.ammonia) / 1000 / strength
  return grams / solutionDensity(strength)
}

/** Density of aqueous ammonia in kg/L (g/mL) by mass share, piecewise linear. Source: as above; pure water 0.998 at 20 °C. */
function solutionDensity(strength: number): number {
  if (strength <= 0.1) return 0.998 + ((0.9575 - 0.998) * strength) / 0.1
  return 0.9575 + ((0.898 - 0.9575) * (strength - 0.1)) / 0.18
}
