import { createECDH, randomBytes } from 'node:crypto'
import { readConfig } from '../../../api/config.ts'
import { letterSender } from '../../../api/mail/transport.ts'
import { openMailbox, type Mailbox } from './mailbox.ts'
import { createWorld, type World } from './world.ts'

export const SITE = 'https://tanks.example.org'
/** A browser's keys and what it gives for messages. */
export function newSubscriber(name = randomBytes(6).toString('hex')) {
  const own = createECDH('prime256v1')
  own.generateKeys()
  const auth = randomBytes(16).toString('base64url')
  return {
    keys: { privateKey: own.getPrivateKey('base64url'), auth },
    body: { endpoint: `https://push.example.net/send/${name}`, keys: { p256dh: own.getPublicKey('base64url'), auth } },
  }
}

export interface HearingWorld extends World {
  box: Mailbox
  /** Sets the clock three days back, so that a test may move it on and still be in the past, as far as a message's proof is concerned. */
  begin: () => void
  /** Moves the clock on. */
  later: (ms: number) => void
}

/** A place with an https address, a real mail server beside it, and a clock that the test moves. */
export async function hearingWorld(): Promise<HearingWorld> {
  const box = await openMailbox()
  const read = readConfig({ PUBLIC_URL: SITE, SMTP_URL: `smtp://127.0.0.1:${box.port}`, SMTP_FROM: 'tanks@example.org' })
  if (read.mail === null) throw new Error('mail is set')
  const beginning = Date.now() - 3 * 86_400_000
  let now = beginning
  const world = await createWorld({ sendLetter: letterSender(read.mail, 'tanks.example.org'), clock: () => now })
  world.rebuild({ config: { ...world.deps.config, publicUrl: read.publicUrl, mail: read.mail } })
  return {
    ...world,
    box,
    begin: () => {
      now = beginning
    },
    later: (ms) => {
      now += ms
    },
    close: async () => {
      await world.close()
      await box.close()
    },
  }
}

/** Where a link of ours in a letter leads. */
export function linkIn(raw: string, kind: 'confirm' | 'stop'): string {
  const joined = raw.replaceAll('=\r\n', '').replaceAll('\r\n ', '')
  const found = new RegExp(`${SITE}(/m/${kind}/[\\w-]+(?:\\.[\\w-]+)*)`).exec(joined)?.[1]
  if (found === undefined) throw new Error(`no ${kind} link in ${joined}`)
  return found
}
