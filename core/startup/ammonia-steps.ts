import { phrase, type Phrase } from '../units/quantity.ts'
import { ammoniumChlorideG, DOSE_MG_PER_L, PER_NITROGEN } from './ammonia-dose.ts'
import { STOCK, type AmmoniaPortion } from './ammonia-portion.ts'
import { caution } from './cautions.ts'
import { AT_MARK, GENERAL_MARKS } from './reading-marks.ts'
import { ammoniaKit, eatenAmmonia } from './ready-reading.ts'
import type { Step } from './setup-plan.ts'
import { stepOf, type StartupSubject } from './startup-subject.ts'
import { doseOf, type TankFacts } from './tank-facts.ts'

/** Doses of a usual cycle (common practice): what to have at hand, and what nitrate comes of it. */
export const DOSES_OF_A_CYCLE = 10

/**
 * The step that stands before the first dose where nothing of the plan may be dosed: leave a strong liquid closed, get the salt.
 *
 * Errors: null where the plan has a source that may be used. Source: common practice; no liquid above 10 %.
 *
 * @example getAmmonia(facts, ammoniaPortion({ ...gear, ammoniaSources: [] }, 237.7))?.done // 'Done: ammonium chloride is here'
 */
export function getAmmonia({ waterL, holdDays }: TankFacts, { toGet, tooStrong, stock }: AmmoniaPortion): Step | null {
  if (!toGet) return null
  const strong = tooStrong.length > 0
  return stepOf('cycle', {
    id: 'get-ammonia',
    title: strong ? 'Leave the strong liquid closed, get ammonium chloride' : 'Get ammonium chloride',
    why: strong
      ? phrase`Ammonia stronger than 10 % burns eyes and lungs. The salt feeds the bacteria as well and gives off no fumes.`
      : phrase`The bacteria need ammonia to grow on, and there is none in this plan. The salt is the safest to handle.`,
    amounts: waterL === null ? [] : [{ label: 'Have ready', value: saltToHave(waterL, stock) }],
    actions: [
      ...(strong ? [phrase`Do not open ${tooStrong.join(', ')}. Keep it upright, away from children and bleach, and take it back.`] : []),
      phrase`Get pure ammonium chloride, or an ammonia solution of 10 % or less without soap or scent.`,
      phrase`The next step is reckoned for the pure salt. For a solution ask for its dose first.`,
    ],
    howLong: 'until it is there',
    stopAndAsk: strong
      ? phrase`the bottle leaks or was opened: windows open, leave the room, ask.`
      : phrase`all you find is a liquid whose strength is not on the label, or one with soap or scent.`,
    done: strong ? 'Done: ammonium chloride is here, the liquid still closed' : 'Done: ammonium chloride is here',
    earliestDay: holdDays + 1,
    caution: caution('bleach'),
  })
}

/** Salt for a whole cycle; a stock is made of a weighed amount, however little of it is used. */
function saltToHave(waterL: number, stock: boolean): Phrase {
  const grams = ammoniumChlorideG(waterL, DOSE_MG_PER_L, 1) * DOSES_OF_A_CYCLE
  return stock && grams <= STOCK.grams
    ? phrase`${doseOf(STOCK.grams, 'g')}, for the stock`
    : phrase`about ${doseOf(grams, 'g')}, for ${DOSES_OF_A_CYCLE} doses`
}

/**
 * The first dose, to 2 mg/L as nitrogen, with what kits of other bases show for it.
 *
 * Errors: without a usable portion it says what to read off the label; without a kit for ammonia it asks for one first.
 * Source: common practice, IUPAC molar masses.
 *
 * @example firstDose(subject, facts, portion).amounts[0] // { label: 'How much', value: [1.8 g, ' of ', 'Stillwell ammonium chloride'] }
 */
export function firstDose({ gear }: StartupSubject, facts: TankFacts, portion: AmmoniaPortion): Step {
  const kit = (factor: number) => (DOSE_MG_PER_L * factor).toFixed(1)
  const { measures } = ammoniaKit(gear)
  const noKit =
    gear.testKits.length === 0 ? ' There is no test kit in this plan: get one first.' : ' No kit here measures ammonia: get one first.'
  return stepOf('cycle', {
    id: 'first-ammonia',
    title: 'First ammonia dose',
    why: phrase`It feeds the bacteria that make a tank safe, before any fish is there to be hurt by it.`,
    amounts: [
      { label: 'How much', value: portion.value },
      { label: 'To reach', value: phrase`${DOSE_MG_PER_L} mg/L, counted as nitrogen (N)` },
      {
        label: 'Your kit then reads',
        value: phrase`between ${DOSE_MG_PER_L}.0 and ${kit(PER_NITROGEN.ammonium)}, by the kit: ${DOSE_MG_PER_L}.0 if its leaflet says N, ${kit(PER_NITROGEN.ammonia)} if NH3, ${kit(PER_NITROGEN.ammonium)} if NH4`,
      },
    ],
    actions: [
      ...keepSafe(portion),
      phrase`Test ammonia before you dose.${facts.chloramine ? ' What the tap water left counts: dose only what is missing.' : ''}${measures ? '' : noKit}`,
      portion.stock
        ? phrase`Make the stock once, label it, keep it closed and away from children. Draw up the amount, pour it where the filter blows.`
        : phrase`Weigh or draw up the amount, dissolve it in a cup of tank water, pour it where the filter blows.`,
      phrase`Test again after an hour and write both down. Gloves on, window open.`,
    ],
    howLong: 'about 20 min, and an hour to mix',
    stopAndAsk: phrase`it reads ${GENERAL_MARKS.ammoniaMgL} mg/L or more: ${AT_MARK.ammonia} Household ammonia with scent or foam is never used.`,
    done: 'Done: dosed, and read after an hour',
    earliestDay: facts.activeSoil ? null : facts.holdDays + 1,
    caution: caution('bleach'),
  })
}

function keepSafe({ toGet, tooStrong, readLabel }: AmmoniaPortion): Step['actions'] {
  return [
    ...(tooStrong.length > 0 && !toGet ? [phrase`Leave ${tooStrong.join(', ')} closed: it is stronger than 10 %.`] : []),
    ...(readLabel ? [phrase`Read its strength first. A liquid above 10 % stays closed: get ammonium chloride instead.`] : []),
  ]
}

/**
 * The doses after the first: each one when the last is eaten.
 *
 * Source: common practice; at most one a day, none while nitrite is over 5 mg/L.
 *
 * @example secondDose(subject, portion).id // 'second-dose'
 */
export function secondDose({ gear }: StartupSubject, portion: AmmoniaPortion): Step {
  return stepOf('cycle', {
    id: 'second-dose',
    title: 'Dose again, only when it is eaten',
    why: phrase`Bacteria starve without food and stall with too much. The reading decides, not the calendar.`,
    amounts: [
      { label: 'Only when', value: phrase`ammonia reads ${eatenAmmonia(gear)}` },
      { label: 'How much', value: portion.value },
    ],
    actions: [
      phrase`Dose the same amount as the first time, at most once a day, and write it down.`,
      phrase`While nitrite reads over ${GENERAL_MARKS.nitriteMgL} mg/L ${AT_MARK.nitrite}`,
    ],
    howLong: 'about 5 min each time',
    stopAndAsk: phrase`ammonia does not fall at all within a week of a dose.`,
    done: 'Done: dosed again after it was eaten',
    earliestDay: null,
    caution: caution('bleach'),
  })
}
