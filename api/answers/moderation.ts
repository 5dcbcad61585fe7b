import * as z from 'zod'
import { id, instant } from './catalog.ts'
import { SightingAnswer } from './pricing.ts'
import { answer } from './registry.ts'

/** Sightings that wait for a second person. */
export const WaitingAnswer = answer('WaitingSightings', z.strictObject({ items: z.array(SightingAnswer), total: z.int() }))

export const UndoAnswer = answer(
  'SightingUndo',
  z.strictObject({
    id,
    reporter: z.strictObject({ id, name: z.string() }),
    undoneBy: z.string(),
    at: instant,
    sightings: z.int(),
    foundGone: z.int().describe('Of how many sightings, anybody’s, it took back that this person had found them gone'),
    reversibleUntil: instant,
    /** When they were put back; null while they are not. */
    reversedAt: instant.nullable(),
  }),
)

export const UndosAnswer = answer(
  'SightingUndos',
  z.strictObject({
    /** Everyone who has sightings standing, or found some gone. */
    reporters: z.array(
      z.strictObject({
        id,
        name: z.string(),
        sightings: z.int(),
        foundGone: z.int().describe('Sightings, anybody’s, that they found gone'),
      }),
    ),
    undos: z.array(UndoAnswer),
  }),
)
