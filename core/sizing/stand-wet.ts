import { phrase } from '../units/quantity.ts'
import type { Finding } from './finding.ts'
import { makeFinding } from './make-finding.ts'
import type { SizingSubject } from './report.ts'

/**
 * Particle board swells and loses its strength where water gets in. Told only where the surface is stated.
 *
 * @example standWet(subject)?.verdict // 'fits': plywood bears a splash that is wiped up
 */
export function standWet({ gear }: SizingSubject): Finding | null {
  const surface = gear.stand?.spec.surface
  if (surface === undefined) return null
  const wet = surface === 'particle_board'
  return makeFinding('stand_wet', {
    verdict: wet ? 'marginal' : 'fits',
    reason: wet
      ? phrase`The stand is of particle board, which swells and weakens where water gets into an edge.`
      : phrase`The stand's surface bears a splash that is wiped up.`,
    action: wet ? { text: phrase`Seal every cut edge and hole before it is filled, keep it dry, and look at it twice a year.` } : null,
  })
}
