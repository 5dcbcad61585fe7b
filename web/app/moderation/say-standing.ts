import type { Reporter } from '../client/moderation.ts'

/**
 * What somebody has standing that can be taken back.
 *
 * @example sayStanding({ sightings: 3, foundGone: 1 }) // '3 sightings and 1 found gone'
 */
export function sayStanding({ sightings, foundGone }: Pick<Reporter, 'sightings' | 'foundGone'>): string {
  const posted = sightings === 1 ? '1 sighting' : `${sightings} sightings`
  if (foundGone === 0) return posted
  return sightings === 0 ? `${foundGone} found gone` : `${posted} and ${foundGone} found gone`
}
