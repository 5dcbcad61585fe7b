/**
 * Salinity when fresh water leaves or comes: the salt stays.
 *
 * Units:  salinity in g/kg, water in kg before, fresh water that came in kg (negative where it went into the air); g/kg out, unrounded.
 * Range:  less must go than there is. Errors: none.
 * Source: mass balance of the salt, S·m = S′·m′ (Knudsen's relation).
 *
 * @example salinityAfter(35, 200, -2) // 35.35: two litres went into the air
 * @example salinityAfter(35, 200, 20) // 31.82: a top-up's reservoir ran in
 */
export const salinityAfter = (salinity: number, waterKg: number, freshKg: number): number => (salinity * waterKg) / (waterKg + freshKg)

/** Fresh water that lowers the salinity to a mark, kg. @example freshToLower(35, 200, 33) // 12.1 */
export const freshToLower = (salinity: number, waterKg: number, markSalinity: number): number => waterKg * (salinity / markSalinity - 1)
