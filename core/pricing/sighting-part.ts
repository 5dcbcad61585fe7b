import { daysBetween } from '../dates.ts'
import { uuidV7 } from '../uuid-v7.ts'

/** What lies in one part of the record: the ids made in one calendar year, UTC. */
export interface SightingPart {
  name: string
  /** First id of the part. */
  from: string
  /** First id of the next one. */
  to: string
}

/** The lowest id of a moment, of whatever version: nothing made from then on sorts before it. */
const lowest = (instantMs: number): string => `${uuidV7(instantMs, new Uint8Array(10)).slice(0, 13)}-0000-0000-000000000000`

const yearBeginsMs = (year: number): number => daysBetween('1970-01-01', `${year}-01-01`) * 86_400_000

/**
 * The part of a year. An id of version 7 begins with the milliseconds since 1970 in 48 bits, and ids sort by their bytes.
 *
 * Units:  calendar years of UTC, 1970 to 9999.
 * Source: RFC 9562, section 5.7.
 *
 * @example sightingPart(2022) // { name: 'sighting_2022', from: '017e12ef-9c00-0000-0000-000000000000', … }
 */
export function sightingPart(year: number): SightingPart {
  return { name: `sighting_${year}`, from: lowest(yearBeginsMs(year)), to: lowest(yearBeginsMs(year + 1)) }
}
