import { phrase } from '../units/quantity.ts'
import { isLowVoltageCountry, mainsCaution } from './mains.ts'
import type { Finding } from './finding.ts'
import { makeFinding, type FindingParts } from './make-finding.ts'
import { applianceCount } from './outlets.ts'
import { isCircuitProtected, protectingStrips } from './protecting-strips.ts'
import type { SizingSubject } from './report.ts'
import { startOf } from './words.ts'

const ACTION = {
  text: phrase`Add a strip or adapter with a protective device (GFCI or residual-current device), or have the circuit protected, and press its test button first.`,
  want: { slot: 'protect_circuit', quantity: 1, minimum: {} },
} as const

/** The price of protection: what it switches off by night stays off. Common practice. */
const TRIPS = phrase` It may trip by night and leave the tank cold: add a temperature alarm, and give a doubtful appliance a device of its own.`

/**
 * Whether something switches off when current leaks through water or a hand: the circuit's device or a strip's own.
 *
 * @example outletProtection(subject)?.verdict // 'fits': the strip has a protective device
 */
export function outletProtection(subject: SizingSubject): Finding | null {
  const { gear, conditions } = subject
  if (applianceCount(subject) === 0) return null
  const source = isLowVoltageCountry(conditions) ? 'outlet_protection' : 'outlet_protection_230'
  const make = (verdict: Finding['verdict'], reason: Finding['reason'], more: Partial<FindingParts> = {}) =>
    makeFinding('outlet_protection', { verdict, reason, source, caution: mainsCaution(conditions), ...more })
  const [strip] = protectingStrips(subject)
  if (strip)
    return make(
      'fits',
      phrase`${startOf(strip.name)} switches off when current leaks. Everything in or over the water goes through it: see Cords.${TRIPS}`,
    )
  if (isCircuitProtected(conditions))
    return make('fits', phrase`The circuit already has a protective device. Press its test button before the first fill.${TRIPS}`)
  const unclear = gear.power.find(({ spec }) => spec.protective === undefined)
  if (unclear) {
    return make('not_known', phrase`Nobody has stated whether ${unclear.name} has a protective device.`, {
      action: ACTION,
      missing: ['protective device of the strip'],
    })
  }
  if (conditions.assumed.includes('circuitProtected')) {
    return make('not_known', phrase`Nobody has stated whether the circuit has a protective device, and no strip of this build has one.`, {
      action: ACTION,
      missing: ['protection of the circuit'],
    })
  }
  return make('does_not_fit', phrase`Neither the circuit nor a strip switches off when current leaks through water or a hand.`, {
    action: ACTION,
  })
}
