import type { Conditions } from './conditions.ts'
import type { Gear } from './gear.ts'
import type { SizingSubject } from './report.ts'

/** Whether somebody has stated that the circuit switches off when current leaks. */
export const isCircuitProtected = ({ circuitProtected, assumed }: Pick<Conditions, 'circuitProtected' | 'assumed'>): boolean =>
  circuitProtected && !assumed.includes('circuitProtected')

/**
 * The strips that everything goes through: those with a protective device, where nobody has stated one of the circuit.
 *
 * @example protectingStrips(subject).length // 1; 0 on a circuit that is stated to be protected
 */
export const protectingStrips = ({ gear, conditions }: SizingSubject): Gear['power'] =>
  isCircuitProtected(conditions) ? [] : gear.power.filter(({ spec }) => spec.protective === true)

/** The strips that cords may go to: those that protect alone, where everything goes through them. @example usedStrips(subject) // all where none protects */
export function usedStrips(subject: SizingSubject): Gear['power'] {
  const protecting = protectingStrips(subject)
  return protecting.length > 0 && protecting.length < subject.gear.power.length ? protecting : subject.gear.power
}
