/** Seconds in an hour over micromoles in a mole. */
const MOL_PER_UMOL_HOUR = 3600 / 1e6

/**
 * Daily light integral: photons that fall on a square metre in a day.
 *
 * Units:  µmol/m²s and hours a day; mol/m² a day out. Range: 0 to 24 h. Errors: none.
 * Source: ANSI/ASABE S640.
 *
 * @example dailyLight(100, 8) // 2.88
 */
export const dailyLight = (umolM2S: number, hours: number): number => umolM2S * hours * MOL_PER_UMOL_HOUR
