import { getInstall } from '../../db/install.ts'
import { setPersonMail } from '../../db/person-mail.ts'
import { confirmLetter } from '../../web/pages/confirm-letter.ts'
import { newToken, tokenHash } from '../auth/tokens.ts'
import type { Ctx } from '../context.ts'
import { signedIn } from '../context.ts'
import { problem } from '../http/problem.ts'
import { tallies } from '../http/tally.ts'
import { saidByServer } from '../mail/said-by-server.ts'

/** Somebody who reads mail every other day still finds the link good. */
const GOOD_MS = 2 * 86_400_000
/** A slip, another slip, a mail that got lost: more in an hour is somebody writing to strangers from here. */
const MOST_ASKED = 5
const tallyOf = tallies(3_600_000)
/** Whoever asks: an address that is somebody else's is not written to again and again. */
const MOST_TO_ONE = 6
const toOneOf = tallies(86_400_000)

/**
 * Puts the address down, unconfirmed, and sends the one mail that asks whether it is right. The refusal, or null where the mail server took it; where
 * it did not, the address stays and can be asked for again.
 */
export async function askToConfirm(c: Ctx, address: string) {
  const { clock, config, log, sendLetter } = c.get('deps')
  if (!sendLetter || config.publicUrl === null)
    return problem(c, 409, 'not_offered', 'This place sends no mail. The manager can set it up with SMTP_URL.')
  const { id } = signedIn(c)
  const tally = tallyOf(c.get('deps'))
  const waitS = tally.waitS(id, MOST_ASKED, clock())
  if (waitS > 0) {
    c.header('Retry-After', String(waitS))
    return problem(
      c,
      429,
      'too_many',
      `${MOST_ASKED} mails were asked for within an hour. Look for the last one; another can be sent later.`,
    )
  }
  const [toOne, addressKey] = [toOneOf(c.get('deps')), tokenHash(address.toLowerCase())]
  const addressWaitS = toOne.waitS(addressKey, MOST_TO_ONE, clock())
  if (addressWaitS > 0) {
    c.header('Retry-After', String(addressWaitS))
    return problem(
      c,
      429,
      'too_many',
      `${MOST_TO_ONE} mails went to this address within a day. Look for the last one, or ask again tomorrow.`,
    )
  }
  tally.add(id, clock())
  toOne.add(addressKey, clock())
  const token = newToken()
  await setPersonMail(c.get('db'), id, { address, tokenHash: tokenHash(token), tokenEndsAt: new Date(clock() + GOOD_MS) })
  const { name: place } = await getInstall(c.get('db'))
  const url = `${config.publicUrl.origin}/m/confirm/${token}`
  try {
    await sendLetter({ place, to: address, stopUrl: null, ...confirmLetter({ place, url }) })
    return null
  } catch (error) {
    log.warn({ said: saidByServer(error) }, 'a mail was not taken')
    return problem(
      c,
      503,
      'unavailable',
      'The mail server did not take the mail. The address is kept: check it, and ask for the mail again in a while.',
    )
  }
}
