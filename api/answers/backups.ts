import * as z from 'zod'
import { REASONS } from '../backups/kept-backups.ts'
import { instant } from './catalog.ts'
import { answer } from './registry.ts'

export const BackupAnswer = answer(
  'Backup',
  z.strictObject({
    name: z.string(),
    reason: z.enum(REASONS),
    madeAt: instant,
    bytes: z.int(),
    /** Nobody reads it without its passphrase. */
    locked: z.boolean(),
  }),
)
export type BackupView = z.output<typeof BackupAnswer>

export const BackupsAnswer = answer(
  'Backups',
  z.strictObject({
    items: z.array(BackupAnswer),
    engine: z.enum(['embedded', 'postgres']),
    /** Where they are kept, as the server names it. */
    folder: z.string(),
    everyMinutes: z.int(),
    /** When all that is stored was last known to be in a backup. */
    lastSuccessAt: instant.nullable(),
    lastFailure: z.strictObject({ at: instant, message: z.string() }).nullable(),
    /** None is as young as it should be. */
    overdue: z.boolean(),
  }),
)
export type BackupsView = z.output<typeof BackupsAnswer>
