import type { FilterSpec } from '../catalog/spec.ts'
import type { ApplianceKind } from './gear.ts'
import type { Span } from './span.ts'

/**
 * What stands for a spec that nobody entered. A check is made at both ends: the verdict holds where both agree, else it is *not known*.
 *
 * Source: common practice throughout, read as "nearly all that is sold lies between these", not as a mean and not as advice.
 */

/** Glass by the outside height and length: tall or long panes are thicker. Common practice; the glass maker's tables start from the same two figures. */
export function typicalGlassMm(lengthMm: number, heightMm: number): Span {
  const size = Math.max(heightMm, lengthMm / 2.5)
  if (size <= 250) return { low: 3, high: 6 }
  if (size <= 400) return { low: 4, high: 8 }
  if (size <= 500) return { low: 5, high: 12 }
  if (size <= 620) return { low: 8, high: 15 }
  return { low: 10, high: 25 }
}

/** How far a bow-front's middle stands out before its ends, over its length. Common practice: 7 to 13 cm at 60 to 120 cm. */
export const BOW_OVER_LENGTH: Span = { low: 0.05, high: 0.2 }

/** Depth of the short ends of a corner tank with a cut front, over the shorter back. Common practice: a quarter to a half. */
export const ENDS_OVER_BACK: Span = { low: 0.15, high: 0.6 }

/** Acrylic is commonly made as thick as glass or half as thick again. */
export const ACRYLIC_OVER_GLASS: Span = { low: 1, high: 1.5 }

/** A bottom pane is as thick as the sides or up to a third thicker. */
export const BOTTOM_OVER_SIDES: Span = { low: 1, high: 1.34 }

/** Outside length of the tank in mm; a stand of that length without its boxes, kg. */
export const typicalStandMassKg = (lengthMm: number): Span => ({ low: 8 + lengthMm * 0.008, high: 20 + lengthMm * 0.05 })

/** Floor to the tank's underside. */
export const STAND_HEIGHT_MM: Span = { low: 600, high: 950 }

/** Electrical power of a filter by its kind, W. A sponge has an air pump. */
export const FILTER_POWER_W: Record<NonNullable<FilterSpec['type']> | 'unknown', Span> = {
  canister: { low: 5, high: 50 },
  hang_on: { low: 2, high: 20 },
  internal: { low: 2, high: 25 },
  sponge: { low: 1, high: 8 },
  return_pump: { low: 5, high: 50 },
  unknown: { low: 1, high: 50 },
}

/** Heaters are sold at about 0.5 to 2 W for each litre of the label. */
export const HEATER_W_PER_L: Span = { low: 0.5, high: 2 }

/** A light draws 10 to 80 W for each metre of the tank. */
export const LIGHT_W_PER_M: Span = { low: 10, high: 80 }

/** Electrical power of what else is plugged in, W: the smallest and the largest that is commonly sold for a home. A battery draws it while it charges. */
export const APPLIANCE_POWER_W: Record<ApplianceKind, Span> = {
  chiller: { low: 50, high: 600 },
  air_pump: { low: 1, high: 15 },
  circulation_pump: { low: 2, high: 50 },
  skimmer: { low: 4, high: 60 },
  co2: { low: 1, high: 6 },
  uv: { low: 4, high: 60 },
  battery_backup: { low: 1, high: 60 },
}

/** Grams of salt mix for a litre of water of salinity 35, by the labels: mixes hold some water of their own. */
export const SALT_G_PER_L: Span = { low: 36, high: 40 }

/** Light-emitting diodes with their driver, lm/W. */
export const LUMENS_PER_WATT: Span = { low: 60, high: 140 }

/** White light: lm for each µmol/s. Own spectral model 65 to 74; Thimijan & Heins, HortScience 18 (1983) 818, has 74 for cool-white tubes (from memory). */
export const LUMENS_PER_UMOL_S: Span = { low: 60, high: 80 }

/** Photons of red and blue light-emitting diodes with their driver, µmol/J. At best 3.8 at 450 nm and 5.5 at 660 nm (λ/119.6), of which a third to a half is left. Own. */
export const COLOURED_UMOL_PER_J: Span = { low: 1, high: 3 }

/** Mains cords as sold, mm. */
export const CORD_MM = {
  heater: { low: 1000, high: 2000 },
  filter: { low: 1200, high: 2000 },
  light: { low: 1200, high: 3000 },
  appliance: { low: 1200, high: 2500 },
  strip: { low: 900, high: 3000 },
} as const satisfies Record<string, Span>

/** Bulk density of a substrate by its kind, kg/L. Quartz 2650 × (1 − 0.40) is 1.59; active soil about 1.0. */
export const BULK_KG_PER_L = {
  gravel: { low: 1.5, high: 1.7 },
  sand: { low: 1.5, high: 1.7 },
  active_soil: { low: 0.8, high: 1.1 },
  unknown: { low: 0.8, high: 1.7 },
} as const satisfies Record<string, Span>

/** Lowest ammonia step above zero of the tests that are sold, drops and strips, mg/L. */
export const AMMONIA_STEP_MG_L: Span = { low: 0.05, high: 0.5 }

/** Share of its printed flow that a filter gives, loaded media to clean. */
export const FLOW_SHARE: Span = { low: 0.5, high: 0.7 }

/** The same of a return pump whose curve is not known: what the rise to the tank leaves. */
export const RISE_SHARE: Span = { low: 0.3, high: 0.7 }

/** Water in a sump while its pump runs, over what it holds to the rim. */
export const SUMP_RUNNING: Span = { low: 0.4, high: 0.75 }

/** What a sump holds to its rim, over the outside volume of the tank above it. */
export const SUMP_OVER_TANK: Span = { low: 0.1, high: 0.5 }

/** Height of a sump, mm. */
export const SUMP_HEIGHT_MM: Span = { low: 300, high: 450 }

/** Length and width of a sump inside, over its height: a cube, and a box twice as long as wide that is lower than wide. */
export const SUMP_FORM = { compact: { length: 1, width: 1 }, flat: { length: 2.5, width: 1.25 } } as const

/** The lowest opening through which a tank drains into its sump, the overflow's edge or a return's outlet, below the water line of the running pump, mm. */
export const SIPHON_BELOW_MM: Span = { low: 10, high: 75 }

/** Water that falls back out of the pipes of a sump, L. */
export const PIPES_L: Span = { low: 0.3, high: 3 }

/** A return pump's pipe against the height it lifts: bends go round baffles and rims. */
export const PIPE_OVER_RISE: Span = { low: 1, high: 1.6 }

/** Sum of the loss coefficients of a canister's inlet, outlet, bends and taps; the ends where nobody says which. */
export const FITTINGS = { few: 4, usual: 6, many: 10 } as const

/** Bend of a pump's curve where no point of it is stated: a straight line to a parabola. */
export const CURVE_BEND: Span = { low: 1, high: 2 }

/** A canister's two hoses together against the height from the floor to the rim: a canister is high itself, and hoses are cut with some to spare. */
export const HOSES_OVER_HEIGHT: Span = { low: 1.4, high: 2.4 }

/** Head that media take at the pump's printed flow, as a share of its highest head: rinsed, and before the next rinse. Own, so that usual hoses leave 0.5 to 0.7 of the flow. */
export const MEDIA_LOSS = { clean: 0.26, loaded: 1.04 } as const

/** Biofilm area that a litre of filter media really offers, m². Labels count inner pores that no water reaches. */
export const MEDIA_M2_PER_L: Span = { low: 0.2, high: 0.7 }

/** Media that a filter holds, L, by its kind: the smallest and the largest that is commonly sold for a home. */
export const MEDIA_L = {
  canister: { low: 2, high: 12 },
  hang_on: { low: 0.2, high: 2 },
  internal: { low: 0.1, high: 1 },
  sponge: { low: 0.2, high: 1 },
  unknown: { low: 0.1, high: 12 },
} as const satisfies Record<string, Span>

/** The same for each litre an hour that is printed. */
export const MEDIA_L_PER_LPH = {
  canister: { low: 3e-3, high: 8e-3 },
  hang_on: { low: 0.8e-3, high: 2.5e-3 },
  internal: { low: 0.5e-3, high: 1.5e-3 },
  sponge: { low: 1.5e-3, high: 4e-3 },
  unknown: { low: 0.5e-3, high: 8e-3 },
} as const satisfies Record<string, Span>

/** Light above the upper rim: on the rim or on short legs, mm. */
export const LIGHT_ABOVE_RIM_MM: Span = { low: 10, high: 60 }
