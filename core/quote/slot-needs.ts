import type { Slot } from '../catalog/kinds.ts'
import type { Conditions } from '../sizing/conditions.ts'
import type { Gear } from '../sizing/gear.ts'
import { sayPower } from '../sizing/heater-ratings.ts'
import type { SizingFigures } from '../sizing/report.ts'
import { footprintM2 } from '../sizing/tank-forms.ts'
import { phrase, quantity, type Phrase } from '../units/quantity.ts'

/** Bulk density of gravel: 2650 kg/m³ grains at a porosity of 0.40. Units: kg/L. Source: sizing by grain density and porosity. */
const GRAVEL_KG_PER_L = 2650e-3 * (1 - 0.4)

/** By the outside footprint: a little more than the inside floor, and the glass thickness need not be known. */
function substrateKg(gear: Gear, conditions: Conditions): number | null {
  if (gear.tank === null) return null
  const litres = footprintM2(gear.tank.spec).high * conditions.substrateDepthMm
  return litres * GRAVEL_KG_PER_L
}

/** How many heaters of what power; where none is safe when stuck on, the least that holds the coldest room. */
function heatNeeds({ heaterAdvice, coldLossW }: SizingFigures): Phrase | null {
  if (coldLossW === undefined) return null
  if (!heaterAdvice) return phrase`needs at least ${quantity(coldLossW, 'W', 0)}`
  const size = sayPower(heaterAdvice)
  const { count } = heaterAdvice
  return count === 1 ? phrase`needs one heater of ${size}` : phrase`needs ${count} heaters of ${size} each`
}

/**
 * What an unfilled slot still needs, with its figure: "needs about 140 W in the coldest room".
 * Null where nothing can be said before another choice is made.
 */
export function slotNeeds(slot: Slot, gear: Gear, figures: SizingFigures, conditions: Conditions): Phrase | null {
  switch (slot) {
    case 'heat':
      return heatNeeds(figures)
    case 'filter':
      return figures.waterVolumeL === undefined
        ? null
        : phrase`needs at least ${quantity(figures.waterVolumeL * conditions.livestock.flowFloorPerHour, 'L/h', 0)} through its media`
    case 'carry_tank':
      return figures.brimMassKg === undefined ? null : phrase`carries ${quantity(figures.brimMassKg, 'kg', 0)}, full to the rim`
    case 'substrate': {
      const kg = substrateKg(gear, conditions)
      return kg === null ? null : phrase`needs about ${quantity(kg, 'kg', 0)} of gravel`
    }
    case 'treat_water':
      return figures.waterVolumeL === undefined ? null : phrase`must treat ${quantity(figures.waterVolumeL, 'L', 1)}`
    case 'salt':
      return figures.waterVolumeL === undefined ? null : phrase`needs salt for ${quantity(figures.waterVolumeL, 'L', 1)}`
    default:
      return null
  }
}
