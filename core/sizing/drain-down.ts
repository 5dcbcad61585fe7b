import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import type { Finding } from './finding.ts'
import { makeFinding, namesOf } from './make-finding.ts'
import { settled } from './settled.ts'
import type { Situation } from './situation.ts'
import { over, type Span } from './span.ts'
import { wantsSump } from './sump.ts'
import { PIPES_L, SIPHON_BELOW_MM, SUMP_RUNNING } from './typical-ranges.ts'
import { judgeAtMost } from './verdict.ts'

/** Share of the room that stays free: pump, skimmer and baffles stand in it, and it is never kept to the line. Common practice: a fifth. */
export const DRAIN_RESERVE = 0.2
const MM3_PER_LITRE = 1e6
/** A siphon that leaves less above the bed drains a tank that is filled lower, or has a deeper bed, to its last water: 80 mm and 60 of grains (room-inputs.ts). */
const FILL_MATTERS_MM = 140

const litres = (value: number) => quantity(value, 'L', 1)
const between = ({ low, high }: Span): Phrase => (low === high ? phrase`${litres(high)}` : phrase`${litres(low)} to ${litres(high)}`)

/**
 * What runs down when the return pump stops: the tank's water down to the lowest opening that drains it, and what stands in the pipes.
 *
 * Units:  mm below the water line in, L out, unrounded. Range: never more than the water in the tank and the pipes.
 * Source: area × depth, geometry; what nobody measured is common practice (typical-ranges.ts).
 *
 * @example drainsBack(situation) // { low: 16.7, high: 16.7 } from 30 mm over 0.524 m² and a litre in the pipes
 */
export function drainsBack({ corners, conditions: { siphonBelowMm, pipeVolumeL } }: Pick<Situation, 'corners' | 'conditions'>): Span {
  const back = (end: keyof Span): number =>
    over(corners, ({ geometry }) =>
      Math.min((geometry.insidePlanMm2 * (siphonBelowMm ?? SIPHON_BELOW_MM[end])) / MM3_PER_LITRE, geometry.waterVolumeL),
    )[end] + (pipeVolumeL ?? PIPES_L[end])
  return { low: back('low'), high: back('high') }
}

/**
 * Whether the sump holds what runs back when its pump stops, as in a power cut.
 *
 * Value: litres that run back at most. Limit: room in the sump above the water it runs with; *fits* where a fifth of it stays free. Only in a build with a sump.
 * Source: geometry; the fifth is common practice.
 *
 * @example drainDown(situation)?.margin // 11.3 L: 16.7 L run back into 28 L of room
 */
export function drainDown(situation: Situation): Finding | null {
  const { gear, conditions, corners, tankUnstated, fillDefaults, sump } = situation
  if (!wantsSump(gear)) return null
  const back = drainsBack(situation)
  const free = sump?.freeL ?? { low: 0, high: Infinity }
  const judge = (litresBack: number, roomL: number) => judgeAtMost(litres(litresBack).value, litres(roomL).value, roomL * DRAIN_RESERVE)
  const siphonMm = (conditions.siphonBelowMm ?? SIPHON_BELOW_MM.high) + FILL_MATTERS_MM
  const deep = corners.some(({ geometry }) => siphonMm * geometry.insidePlanMm2 > geometry.waterVolumeL * MM3_PER_LITRE)
  const unstated = namesOf(
    conditions.siphonBelowMm === undefined ? ['siphon level'] : [],
    conditions.pipeVolumeL === undefined ? ['water in the pipes'] : [],
    sump?.unstated ?? ['volume of the sump'],
    // How much water stands below the opening counts only where it may all run out.
    tankUnstated.filter((name) => deep || name !== 'bottom thickness'),
  )
  const outcome = settled(judge(back.high, free.low), judge(back.low, free.high), unstated, deep ? fillDefaults : [])
  const room = sump ? phrase`The sump has room for ${between(free)}.` : phrase`No sump is chosen.`
  return makeFinding('drain_down', {
    ...outcome,
    value: litres(back.high),
    ...(sump ? { limit: { kind: 'at_most', high: litres(free.low) } as const } : {}),
    reason: phrase`When the return pump stops, ${between(back)} run down out of tank and pipes. ${room}`,
    action: outcome.verdict === 'fits' ? null : cureOf(Math.ceil(back.high / (1 - DRAIN_RESERVE))),
    caution: 'drain',
  })
}

/** A choice of sump goes by its whole volume: the room and the least that commonly runs under it. */
const cureOf = (roomL: number): Finding['action'] => ({
  text: phrase`Keep ${quantity(roomL, 'L', 0)} of room in the sump, or raise the return's outlet.`,
  want: { slot: 'sump', quantity: 1, minimum: { totalVolumeL: Math.ceil(roomL / (1 - SUMP_RUNNING.low)) } },
})
