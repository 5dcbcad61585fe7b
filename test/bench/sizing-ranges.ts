import { sizingReport } from '../../core/sizing/engine.ts'
import { withRanges } from '../../core/sizing/sensitivity.ts'
import { benchSubject } from './bench-subject.ts'
import { median, type Measurement } from './measurement.ts'

const ROUNDS = 21
const CALLS_A_ROUND = 20

/** What a club's advisor commonly leaves open at first: four answers of the room. */
const OPEN = ['coldestRoomC', 'warmestRoomC', 'waterBelowRimMm', 'floor'] as const

/** A report with ranges and questions for the twelve-slot build, four answers of its room open, against the report alone, in turn in one run. */
export default async function sizingRangesBench(): Promise<Measurement[]> {
  const { gear, conditions } = benchSubject()
  const subject = { gear, conditions: { ...conditions, floor: 'unknown' as const, assumed: [...conditions.assumed, ...OPEN] } }
  const report = sizingReport(subject)
  const works = { value: () => withRanges(subject, report), baseline: () => sizingReport(subject) }
  const times = { value: [] as number[], baseline: [] as number[] }
  for (let round = -3; round < ROUNDS; round += 1) {
    for (const which of ['value', 'baseline'] as const) {
      const started = performance.now()
      for (let call = 0; call < CALLS_A_ROUND; call += 1) works[which]()
      if (round >= 0) times[which].push((performance.now() - started) / CALLS_A_ROUND)
    }
  }
  const [value, baseline] = [median(times.value), median(times.baseline)]
  return [{ name: 'sizing.ranges', value, unit: 'ms', baseline, ratio: value / baseline }]
}
