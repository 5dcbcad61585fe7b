import { phrase, quantity } from '../units/quantity.ts'
import { appliancesOf } from './appliances.ts'
import { mainsCaution } from './mains.ts'
import type { Finding } from './finding.ts'
import { makeFinding } from './make-finding.ts'
import { usedStrips } from './protecting-strips.ts'
import type { SizingSubject } from './report.ts'
import { assumedOf } from './words.ts'

const countOf = (items: ReadonlyArray<{ quantity: number }>): number => items.reduce((sum, { quantity: n }) => sum + n, 0)

/** Things of a build that need an outlet. A sponge has an air pump. */
export const applianceCount = ({ gear }: SizingSubject): number =>
  countOf(gear.heaters) + countOf(gear.filters) + countOf(gear.lights) + countOf(appliancesOf(gear))

/** @example needOutlets(3) // '3 appliances need an outlet each' */
const needOutlets = (count: number): string => (count === 1 ? '1 appliance needs an outlet' : `${count} appliances need an outlet each`)
const outletsOf = (count: number): string => (count === 1 ? '1 outlet' : `${count} outlets`)

/**
 * Whether every appliance finds an outlet on the strips. Value: outlets; of those that protect alone where all goes through them. Limit: at least the
 * appliances.
 *
 * @example outlets(subject)?.value // 6 outlets for 4 appliances
 */
export function outlets(subject: SizingSubject): Finding | null {
  const needed = applianceCount(subject)
  if (needed === 0) return null
  const limit = { kind: 'at_least', low: quantity(needed, 'count', 0) } as const
  const want = { slot: 'protect_circuit', quantity: 1, minimum: { outlets: needed } } as const
  const power = usedStrips(subject)
  const have = power.reduce((sum, { spec, quantity: n }) => sum + n * (spec.outlets ?? 0), 0)
  const assumed = power === subject.gear.power ? [] : assumedOf(subject.conditions, ['circuitProtected'])
  const base = { limit, assumed, caution: mainsCaution(subject.conditions) } as const
  const unstated = power.some(({ spec }) => spec.outlets === undefined)
  if (have < needed && (unstated || power.length === 0)) {
    const strip = power.length > 0
    return makeFinding('outlets', {
      ...base,
      verdict: 'not_known',
      reason: strip
        ? phrase`${needOutlets(needed)}; the strip's number is not stated.`
        : phrase`${needOutlets(needed)}; nobody has stated how many the wall has.`,
      action: {
        text: strip
          ? phrase`Enter the strip's number of outlets.`
          : phrase`Count the outlets within reach, or add a strip with at least ${outletsOf(needed)}.`,
        want,
      },
      missing: [strip ? 'outlets of the strip' : 'outlets within reach'],
    })
  }
  const enough = have >= needed
  return makeFinding('outlets', {
    ...base,
    verdict: enough ? 'fits' : 'does_not_fit',
    value: quantity(have, 'count', 0),
    reason: phrase`${needOutlets(needed)}; ${power.length === 1 && power[0]?.quantity === 1 ? 'the strip has' : 'the strips have'} ${have}.`,
    action: enough ? null : { text: phrase`Choose a strip with at least ${outletsOf(needed)}. Never put a second strip behind it.`, want },
  })
}
