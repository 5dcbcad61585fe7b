import { civilDateAt } from '../../core/dates.ts'
import { getInstall } from '../../db/install.ts'
import { giveUpOld, planDeliveries, type Channel } from '../../db/notice-deliveries.ts'
import { loggable } from '../http/log.ts'
import type { Postman, Round } from './postman.ts'
import { sendLetters } from './send-letters.ts'
import { sendPushes } from './send-pushes.ts'

/** A deal is a matter of hours; looking costs two questions that an index answers. */
const LOOK_MS = 30_000

/** Carries out what is due once, by every way that this place offers. */
export async function deliver(postman: Postman): Promise<void> {
  const { db, origin, sendLetter } = postman
  if (origin === null) return
  const now = new Date(postman.clock())
  const ways: Channel[] = [...(sendLetter === null ? [] : ['email' as const]), ...(origin.startsWith('https:') ? ['push' as const] : [])]
  if (ways.length === 0) return
  await giveUpOld(db, now)
  await planDeliveries(db, ways, now)
  const { name: place, timeZone } = await getInstall(db)
  const round: Round = { ...postman, origin, place, today: civilDateAt(now.getTime(), timeZone), now }
  await sendPushes(round)
  await sendLetters(round)
}

/** Looks every half minute, one round at a time. Returns how to end it: what is under way is waited for. */
export function startPostman(given: Omit<Postman, 'stopping'>): () => Promise<void> {
  let stopped = false
  let round: Promise<void> | undefined
  const postman: Postman = { ...given, stopping: () => stopped }
  const look = (): void => {
    round ??= deliver(postman)
      .catch((error: unknown) => postman.log.warn({ err: loggable(error) }, 'telling of deals failed'))
      .finally(() => {
        round = undefined
      })
  }
  const timer = setInterval(look, LOOK_MS).unref()
  return async () => {
    stopped = true
    clearInterval(timer)
    await round
  }
}
