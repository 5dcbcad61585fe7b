import { continuousLimitW } from '../sizing/electrical-load.ts'
import type { Check, Finding } from '../sizing/finding.ts'
import { CORD_SLACK_MM, LOOP_DROP_MM } from '../sizing/drip-loop.ts'
import type { SizingSubject } from '../sizing/report.ts'
import { phrase, quantity, stated, type Phrase } from '../units/quantity.ts'
import { HEAT_FORMULAS } from './heat-formulas.ts'

export type Formula = (finding: Finding, subject: SizingSubject) => Phrase

const WATER_MASS = 'area × height inside, without what the grains take up, × the density of the water'
const DELIVERED = 'where the pump’s curve meets what hoses and media take, or 0.5 to 0.7 of the printed flow where the curve is not known'

/** Each check's formula in words. The constants are those of the rule; its source is told beside it. */
export const FORMULAS: Record<Check, Formula> = {
  ...HEAT_FORMULAS,
  stand_load: () =>
    phrase`Mass of the panels (volume of glass × its density, or the maker's figure) + mass of the grains (as bought, or of a stated depth that weighs more) + mass of the water to the rim (${WATER_MASS}), held against the stand's stated load. It fits with a tenth to spare.`,
  stand_footprint: () =>
    phrase`Length and depth of the stand's top less those of the tank, the worse of the two: nothing may stand out; under an open frame nothing may stand in by more than ${quantity(20, 'mm', 0)} either.`,
  stand_bedding: () =>
    phrase`A table: a frame under the tank wants no mat; flat glass wants a full board and a mat no more than ${quantity(6, 'mm', 0)} smaller than the tank.`,
  stand_wet: () => phrase`A table: particle board swells where water gets into a cut edge; plywood, solid wood and metal bear a splash.`,
  tipping: () =>
    phrase`Push that begins to tip it = weight × distance from the middle to the nearest edge of the base ÷ height of the push (the rim, or ${quantity(2, 'm', 0)} where that is lower). Held against a fifth of the weight, at least ${quantity(44.5, 'N', 1)} and at most ${quantity(250, 'N', 0)}; a lean of 10° and a child's pull at the empty tank count too.`,
  floor_load: ({ value }, { conditions: { floor } }) =>
    value?.unit === 'percent'
      ? phrase`The load's share on the worst joist (whole base, two end panels or four feet, whichever is most) gives a bending moment and a shear. Each is divided by what the floor was designed for on that joist, load per area × spacing × span² ÷ 8 and × span ÷ 2, and by 0.90, since the load stays. The larger is told.`
      : floor === 'ground_slab'
        ? phrase`Mass filled to the rim + mass of the stand, held against ${quantity(450, 'kg', 0)}, from which one asks whatever the floor.`
        : phrase`Mass filled to the rim + mass of the stand. Without ${floor === 'timber_upper' ? 'span and spacing of joists' : 'what the floor bears'} there is nothing to hold it against but the mass of one person, or ${quantity(450, 'kg', 0)}, from which one asks whatever the floor.`,
  glass_pane: () =>
    phrase`Stress = a factor of the pane's form and held edges × density × 9.81 × depth × depth² ÷ thickness². The trade's strength of 19.2 N/mm² is divided by it: from 2.7 the standard is kept, from 3.8 the trade's habit.`,
  electrical_load: electricalFormula,
  outlet_protection: () =>
    phrase`A table: the circuit, or a strip that everything at the tank goes through, switches off when current leaks.`,
  outlets: () =>
    phrase`Outlets on all strips, on those alone that protect where nothing else does, against one for each thing with a plug.`,
  cord_length: () =>
    phrase`Low point = the lower of the cord's exit and the outlet, less ${quantity(LOOP_DROP_MM, 'mm', 0)}. Cord wanted = straight line over the distance and the fall to the low point + rise to the outlet + ${quantity(CORD_SLACK_MM, 'mm', 0)} of slack, held against the cord outside the water: its length, for what lies in the tank less the tank's height and ${quantity(100, 'mm', 0)} over its rim, for a return pump and the heater of a build with a sump, and for a skimmer that stands in it, less the sump's and as much over its rim. A strip of the build hangs beside the rim, half the tank's length away and out of its drips; a cord goes to it where that serves it better, and then the strip's own goes to the outlet. Where a strip is all that protects, everything goes into it: on the wall beside the outlet or, where the worst cord does better there, at the rim.`,
  smallest_volume: () =>
    phrase`The volume on the label, at most area of the plan × height outside, against the label of the group's smallest tank; a tenth below it is marginal.`,
  lid: () => phrase`Length and depth of the lid less those of the tank: it closes within ${quantity(40, 'mm', 0)} either way.`,
  filter_flow: () => phrase`Flow with loaded media ÷ water in use. The flow: ${DELIVERED}.`,
  flow_ceiling: () => phrase`Flow with clean media ÷ water in the tank. The flow: ${DELIVERED}.`,
  filter_feed: () =>
    phrase`Litres of media × film a litre × ammonia that film takes up a day (0.2 to 0.5 g of nitrogen a m², less in cool water) ÷ ammonia that a gram of feed makes. Held against what the stock eats a day.`,
  surface_oxygen: () =>
    phrase`Surface × speed at which gas passes it × (oxygen that water holds in air − oxygen that animals need at least) ÷ oxygen that a gram of feed costs. The speed follows from the share of the return's power that reaches the surface. Held against what the stock eats a day.`,
  weekly_change: () =>
    phrase`Nitrate of a week = feed a day × 7 × ammonia-nitrogen of a gram of feed × 4.43 ÷ water in use. Share to change each week = that ÷ the nitrate that is borne (40 mg/L in fresh water, 20 in salt). Half of the water is easy, four fifths the most.`,
  salinity_drift: () =>
    phrase`Rise in a day = mass of the water ÷ (mass of the water − what evaporates) − 1. Evaporation as in the heat balance, at its high end.`,
  circulation: () => phrase`(Printed flow of the pumps + filters with loaded media) ÷ water in the tank; ten times an hour at the least.`,
  skimmer_size: () => phrase`Tank size on the box against the water in use; it fits from half as much again.`,
  drain_down: () =>
    phrase`Area of the water’s surface × how far the lowest opening that drains it lies below the water line + water in the pipes. Held against the sump's volume to its rim less the water it runs with; it fits where a fifth of that room stays free.`,
  light_coverage: () =>
    phrase`Length of the longest light, or of several in line, against 0.75 to 1.0 of the tank's. Light before the front pane ÷ light in the middle, from the same reckoning as the light at the substrate, is marginal under 0.6 where plants grow.`,
  light_level: () =>
    phrase`Light of the lamp in µmol/s (lumens ÷ 60 to 80 for white light) × share that falls on the water × share that enters it (0.93 to 0.98, a lid × 0.9) ÷ surface × e^(−clarity × depth to the substrate). Held against the band of the plants.`,
  substrate_depth: () =>
    phrase`Litres of all packs (their weight ÷ the usual density where litres are not stated) ÷ floor inside, against 0.9 of the depth asked for.`,
  conditioner_dose: () =>
    phrase`Water in use × dose a litre, against the content of all bottles; where the tap has chloramine it must bind ammonia too.`,
  ammonia_tests: () =>
    phrase`The lowest step above zero of the ammonia test, against ${quantity(0.25, 'mg/L', 2)}; nitrite must be measured too.`,
  empty_lift: () =>
    phrase`Volume of the panels × their density, or the maker's figure, against ${quantity(25, 'kg', 0)} for each of two people.`,
}

/** Whole where it is a whole one; else so fine that the product comes out. */
const asStated = (value: number, unit: 'V' | 'A') => stated(value, unit, Number.isInteger(value) ? 0 : 4)

function electricalFormula(_: Finding, { conditions, gear }: SizingSubject): Phrase {
  const { circuitVoltageV: volts, circuitCurrentA: amperes } = conditions
  const limit = quantity(Math.floor(continuousLimitW(volts, amperes)), 'W', 0)
  const strip = gear.power.some(({ spec }) => spec.ratedCurrentA !== undefined && spec.ratedCurrentA < amperes)
  return phrase`Watts of all that is plugged in, at once, + other things on the circuit. The circuit bears volts × amperes × 0.8 for hours on end: ${asStated(volts, 'V')} × ${asStated(amperes, 'A')} × 0.8 = ${limit}${strip ? '; the strip’s own amperes where they are less' : ''}.`
}
