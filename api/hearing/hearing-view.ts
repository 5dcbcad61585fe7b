import { findPersonMail } from '../../db/person-mail.ts'
import { listPushDevices } from '../../db/push-devices.ts'
import type { HearingView } from '../answers/hearing.ts'
import type { Ctx } from '../context.ts'
import { signedIn } from '../context.ts'
import type { Config } from '../config.ts'
import { vapidKeyOf } from '../push/vapid-key.ts'

/** Browsers give an address for messages to https sites alone, and push services want to know whose they are. */
export const offersPush = ({ publicUrl }: Pick<Config, 'publicUrl'>): boolean => publicUrl?.protocol === 'https:'

const instantOf = (at: Date | null): string | null => at?.toISOString() ?? null

/** What the place offers and the person chose. */
export async function hearingView(c: Ctx): Promise<HearingView> {
  const { config, linkKey, sendLetter } = c.get('deps')
  const [db, { id }] = [c.get('db'), signedIn(c)]
  const own = sendLetter ? await findPersonMail(db, id) : undefined
  const mail = sendLetter
    ? { address: own?.address ?? null, confirmed: own?.confirmed ?? false, failingSince: instantOf(own?.failingSince ?? null) }
    : null
  if (!offersPush(config)) return { mail, push: null }
  const devices = (await listPushDevices(db, id)).map(({ idHash, device, createdAt, failingSince }) => ({
    id: idHash,
    device,
    since: createdAt.toISOString(),
    failingSince: instantOf(failingSince),
  }))
  return { mail, push: { publicKey: vapidKeyOf(linkKey).publicKey, devices } }
}
