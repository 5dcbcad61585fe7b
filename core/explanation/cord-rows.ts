import { judgedCords, rimHeightMm, type Judged, type Plug } from '../sizing/cords.ts'
import { dripLoop } from '../sizing/drip-loop.ts'
import type { Verdict } from '../sizing/finding.ts'
import { usedStrips } from '../sizing/protecting-strips.ts'
import type { SizingFigures, SizingSubject } from '../sizing/report.ts'
import { situationOf, type Situation } from '../sizing/situation.ts'
import { leastLength, phrase, quantity, type Phrase } from '../units/quantity.ts'

/** One cord, what its drip loop wants and what there is of it. */
export interface CordRow {
  name: string
  /** Null for a strip that no cord needs: it is told beside the appliances and judged by nobody. */
  verdict: Verdict | null
  /** Outside the water. Undefined where no loop can hang. */
  wanted: Phrase | undefined
  has: Phrase
  /** To be drawn; undefined where no loop can hang. */
  loop: NonNullable<SizingFigures['dripLoop']> | undefined
  to: Plug
  /** Rim above the floor, of a cord that leaves inside the stand; undefined of one over the rim. */
  rimMm: number | undefined
}

const mm = (value: number) => quantity(Math.round(value), 'mm', 0)

/**
 * Every appliance's cord with the reach that it wants and the cord that there is, in the order of the gear, then the strip's own. Empty without a usable tank.
 *
 * Units: mm. Source: as `cordLength`. @example cordRows(subject)[0] // { name: 'Torvane 100 W', verdict: 'fits', … }
 */
export function cordRows(subject: SizingSubject): CordRow[] {
  const result = situationOf(subject)
  if (!result.ok) return []
  const situation = result.value
  const judged = judgedCords(situation)
  const own = judged.filter(({ name }) => !situation.gear.power.some((strip) => strip.name === name))
  return [...own.map((each) => rowOf(each, situation)), ...stripRows(situation, judged)]
}

function rowOf({ name, inSump, stated, to, underWaterMm, usableMm, mostMm, run, loop, verdict }: Judged, situation: Situation): CordRow {
  const rim = rimHeightMm(situation)
  const inWater = underWaterMm > 0 ? phrase`, without ${mm(underWaterMm)} in the water and over the rim` : phrase``
  const has = stated ? phrase`${mm(usableMm)}${inWater}` : phrase`not stated; usual ${mm(Math.max(0, usableMm))} to ${mm(mostMm)}${inWater}`
  return {
    name: inSump ? `${name} in the sump` : name,
    verdict,
    has,
    wanted: loop ? phrase`${leastLength(Math.round(loop.neededMm))}${to === 'outlet' ? '' : ' to the strip'}` : undefined,
    loop: loopOf(run, to),
    to,
    rimMm: run.exitHeightMm < rim.low ? Math.round(rim.high) : undefined,
  }
}

function loopOf(run: Judged['run'], to: Plug): CordRow['loop'] {
  const loop = dripLoop(run)
  if (loop === null) return undefined
  // What is wanted is judged in whole millimetres; the rest is drawn as it was entered.
  return { neededMm: Math.round(loop.neededMm), lowPointMm: loop.lowPointMm, ...run, ...(to === 'outlet' ? {} : { to }) }
}

/** Where the strips of a build hang: at the rim, unless all that is plugged in goes into one on the wall. @example stripPlace(subject) // 'wall_strip' */
export function stripPlace(subject: SizingSubject): Exclude<Plug, 'outlet'> {
  const result = situationOf(subject)
  return result.ok && judgedCords(result.value)[0]?.to === 'wall_strip' ? 'wall_strip' : 'strip'
}

/** A strip is hung above the water line: from the rim to the wall it wants a loop of its own; one on the wall has its plug beside it. Those that protect alone take all. */
function stripRows(situation: Situation, judged: readonly Judged[]): CordRow[] {
  const { conditions } = situation
  const power = usedStrips(situation)
  const hasOf = (cordMm: number | undefined) => (cordMm === undefined ? phrase`not stated` : phrase`${mm(cordMm)}`)
  if (judged[0]?.to === 'wall_strip') {
    return power.map(({ name, spec }) => ({
      name: `${name}, on the wall beside the outlet`,
      verdict: null,
      wanted: judged[0]?.loop ? phrase`no reach: it is plugged in beside it` : undefined,
      has: hasOf(spec.cordMm),
      loop: undefined,
      to: 'outlet',
      rimMm: undefined,
    }))
  }
  const run = {
    exitHeightMm: rimHeightMm(situation).high,
    outletHeightMm: conditions.outletHeightMm,
    distanceMm: conditions.outletDistanceMm,
  }
  const loop = loopOf(run, 'outlet')
  return power.map(({ name, spec }) => ({
    name: `${name}, hung at the rim`,
    verdict: judged.find((each) => each.name === name)?.verdict ?? null,
    wanted: loop && phrase`${leastLength(loop.neededMm)}`,
    has: hasOf(spec.cordMm),
    loop,
    to: 'outlet',
    rimMm: undefined,
  }))
}
