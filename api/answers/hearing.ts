import * as z from 'zod'
import { DEVICES } from '../../core/people/device.ts'
import { instant } from './catalog.ts'
import { answer } from './registry.ts'

/** How the person signed in hears of deals. What the place does not offer is null. */
export const HearingAnswer = answer(
  'Hearing',
  z.strictObject({
    mail: z
      .strictObject({
        /** Null: none was given. */
        address: z.string().nullable(),
        confirmed: z.boolean(),
        failingSince: instant.nullable(),
      })
      .nullable(),
    push: z
      .strictObject({
        /** What the browser is asked with: the point of a P-256 key, base64url. */
        publicKey: z.string(),
        devices: z.array(
          z.strictObject({
            /** SHA-256 of the address for messages, hexadecimal: by it a browser knows itself again. */
            id: z.string(),
            device: z.enum(DEVICES),
            since: instant,
            failingSince: instant.nullable(),
          }),
        ),
      })
      .nullable(),
  }),
)
export type HearingView = z.output<typeof HearingAnswer>
