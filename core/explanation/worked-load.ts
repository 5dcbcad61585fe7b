import { appliancesPowerW } from '../sizing/appliances.ts'
import type { Finding } from '../sizing/finding.ts'
import { filterPowerW, heaterPowerW, lightPowerW } from '../sizing/heating.ts'
import { applianceLoadW } from '../sizing/peak-load.ts'
import type { SizingSubject } from '../sizing/report.ts'
import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import type { ExplainedInput } from './explanation.ts'
import { line, plain } from './worked-line.ts'

const TENTH = 1

type Share = [watts: number, of: string]

/**
 * Watts of each kind of thing that is plugged in, at most, and of what else hangs on the circuit.
 *
 * Units: W for everybody. Source: as `electricalLoad`.
 *
 * @example workedLoad(subject, load)[0] // { name: 'Everything on at once', value: '200 W of heaters + 20 W of filters + 30 W of lights = 250 W', from: 'reckoned' }
 */
export function workedLoad(subject: SizingSubject, { value }: Finding): ExplainedInput[] {
  const { gear, conditions } = subject
  const all = applianceLoadW(subject).loadW.high
  const filterW = filterPowerW(subject).high
  const applianceW = appliancesPowerW(gear).high
  const lightW = gear.lights.every(({ spec }) => spec.powerW !== undefined) ? lightPowerW(subject, 0).high : undefined
  const heaterW = gear.heaters.every(({ spec }) => spec.powerW !== undefined)
    ? gear.heaters.reduce((sum, { spec, quantity: count }) => sum + count * heaterPowerW(spec.powerW, 0).high, 0)
    : undefined
  // What a missing figure was taken for is told with the rest of its kind.
  const heatersAndLights = all - filterW - applianceW
  const warmAndLit: Share[] =
    heaterW === undefined || lightW === undefined
      ? [[heatersAndLights, 'of heaters and lights']]
      : [
          [heaterW, 'of heaters'],
          [lightW, 'of lights'],
        ]
  const shares: Share[] = [
    ...warmAndLit,
    [filterW, 'of filters'],
    [applianceW, 'of other appliances'],
    [conditions.otherLoadW, 'of other things on the circuit'],
  ]
  const told = shares.filter(([watts]) => watts > 0)
  const sum = told.flatMap(([watts, of], index): Phrase => phrase`${index === 0 ? '' : ' + '}${plain(watts, TENTH)} W ${of}`)
  return value === undefined || told.length < 2
    ? []
    : [line('Everything on at once, at most', phrase`${sum} = ${quantity(value.value, 'W', 0)}`)]
}
