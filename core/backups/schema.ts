import * as z from 'zod'
import { NewPassword, SignIn } from '../people/schema.ts'
import { strict } from '../schema.ts'

/** Password of whoever is signed in, once more. */
const { password } = SignIn.shape

/** The same least length as a password that stands alone: whoever has the file may guess for years. */
const Passphrase = z
  .string({ error: 'Passphrase is text, or null for none.' })
  .refine((value) => NewPassword.safeParse(value).success, {
    error: 'Passphrase has 15 to 256 characters. Five words that you remember are best; without it nobody opens the file.',
  })
  .nullable()
  .default(null)

export const BackupRequest = strict('Backup', { password, passphrase: Passphrase })
export type BackupRequest = z.output<typeof BackupRequest>

export const BackupDownload = strict('Download', { password })
