import { leastLength, phrase, quantity, type Phrase, type Quantity } from '../units/quantity.ts'
import type { AllJudged, Judged, Plug } from './cords.ts'
import type { DripLoop } from './drip-loop.ts'
import { mainsCaution } from './mains.ts'
import type { Finding, Verdict } from './finding.ts'
import { makeFinding, namesOf, type FindingParts } from './make-finding.ts'
import type { Situation } from './situation.ts'
import { worstOf } from './verdict.ts'
import { assumedOf, startOf } from './words.ts'

const nearer = (hasStrip: boolean): Phrase =>
  phrase`${hasStrip ? 'Hang the strip nearer, beside the tank and' : 'Bring the outlets nearer with a power strip hung'} above the water line, never a second strip behind it, or choose a longer cord.`

const GOES_TO: Record<Plug, string> = {
  outlet: 'the outlet',
  strip: 'the strip, hung beside the rim,',
  wall_strip: 'the strip, hung on the wall beside the outlet,',
}

/**
 * Whether every appliance's cord reaches the outlet with a drip loop, or a strip of the build that hangs beside the rim, and the strip's own the outlet. Where a
 * strip is all that protects, all go into it and the reason tells where it hangs.
 *
 * Value: the shortest-falling cord outside the water in mm. Limit: hanging form and 0.3 m. A heater's cord counts its way up through the water:
 * of a build with a sump, that of the sump.
 *
 * @example cordLength(situation, judgeAll(situation))?.margin // 320 mm: 1967 mm of cord outside the water, of which a loop takes 1647 mm
 */
export function cordLength({ conditions, gear }: Situation, { cords, strips, rejected }: AllJudged): Finding | null {
  const judged = [...cords, ...strips]
  if (judged.length === 0) return null
  const tight = judged.find(({ loop }) => loop === null)
  const defaults = assumedOf(conditions, ['outletHeightMm', 'outletDistanceMm'])
  if (tight) return noRoom(tight.name, defaults)
  const verdict = worstOf(judged.map((each) => each.verdict))
  const assumed = namesOf(
    judged.some(({ inSump }) => inSump) ? ['place of the heater'] : [],
    judged.some(({ to }) => to !== 'outlet') ? ['place of the strip'] : [],
    defaults,
    rejected ? assumedOf(conditions, ['circuitProtected']) : [],
    // What might make the other place the better one.
    verdict === 'fits' ? [] : unstatedOf(rejected ?? [], 'not_known'),
  )
  const worst = judged.filter((each) => each.verdict === verdict).sort((a, b) => a.reserveMm - b.reserveMm)[0]
  if (!worst?.loop) return null
  const needed = neededOf(worst.loop, worst.reserveMm)
  const base = { limit: { kind: 'at_least', low: needed }, caution: mainsCaution(conditions) } as const
  const where = rejected
    ? ` Everything goes into ${GOES_TO[cords[0]?.to ?? 'strip']} above the loops' lowest points, off the floor, never under or behind the tank.`
    : ''
  if (verdict === 'not_known') {
    const missing = unstatedOf(judged, verdict)
    return notStated({ worst, needed, where }, { ...base, assumed: assumed.filter((name) => !missing.includes(name)), missing })
  }
  const value = quantity(worst.usableMm, 'mm', 0)
  return makeFinding('cord_length', {
    ...base,
    verdict,
    value,
    reason: phrase`${startOf(nameOf(worst))} has ${value} of cord outside the water; a drip loop to ${where === '' || worst.to === 'outlet' ? GOES_TO[worst.to] : 'the strip'} takes ${needed}, slack included.${where}`,
    action: verdict === 'fits' ? null : { text: nearer(gear.power.length > 0) },
    assumed: namesOf(unstatedOf(judged), assumed),
  })
}

/** A heater of a build with a sump is taken to stand there. */
const nameOf = ({ name, inSump }: Judged): string => (inSump ? `${name} in the sump` : name)

/** A least length is told in steps of half an inch or a whole centimetre: a cord that reaches by less must not read as if it fell short. */
const TOLD_STEP_MM = 12.7

/** What a loop takes, rounded up for whoever measures, as in the startup plan. The verdict is of whole millimetres, so one below counts as reaching. */
const neededOf = ({ neededMm }: DripLoop, reserveMm: number): Quantity =>
  reserveMm > -1 && reserveMm < TOLD_STEP_MM ? quantity(neededMm, 'mm', 0) : leastLength(Math.round(neededMm))

/** What nobody stated of the cords with this verdict, of all without one: the cords themselves, and the heights that their loops hang on. */
function unstatedOf(judged: readonly Judged[], verdict?: Verdict): string[] {
  const looked = judged.filter((each) => verdict === undefined || each.verdict === verdict)
  return namesOf(
    looked.filter(({ stated }) => !stated).map(({ name }) => `cord of ${name}`),
    looked.flatMap(({ heights }) => heights),
  )
}

function notStated(
  { worst, needed, where }: { worst: Judged; needed: Quantity; where: string },
  base: Pick<FindingParts, 'limit' | 'source' | 'caution' | 'assumed' | 'missing'>,
): Finding {
  const heights = worst.heights.join(' and the ')
  const takes = phrase`A drip loop at ${nameOf(worst)} takes ${heights && 'up to '}${needed} of cord outside the water`
  return makeFinding('cord_length', {
    ...base,
    verdict: 'not_known',
    reason: worst.stated
      ? phrase`${takes}, by the ${heights}; nobody has stated that.${where}`
      : phrase`${takes}; nobody has stated how long its cord is.${where}`,
    action: { text: phrase`Measure and enter ${worst.stated ? `the ${heights}` : 'how long the cord is'}.` },
  })
}

function noRoom(name: string, assumed: string[]): Finding {
  return makeFinding('cord_length', {
    verdict: 'does_not_fit',
    reason: phrase`The outlet is less than ${quantity(100, 'mm', 0)} above the floor: the cord of ${name} has no room to hang in a loop below it.`,
    action: {
      text: phrase`Plug into a higher outlet, or have a licensed electrician raise it: a strip's own cord has no room there either.`,
    },
    assumed,
    caution: 'mains',
  })
}
