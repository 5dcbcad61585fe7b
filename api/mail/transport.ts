import { createTransport } from 'nodemailer'
import { isNear, type MailSettings } from './mail-settings.ts'

/** A mail as it goes out: to one person, in plain words and in simple HTML. */
export interface Letter {
  /** Name of the place that writes. */
  place: string
  to: string
  subject: string
  text: string
  html: string
  /** Where one click ends it, by RFC 8058; null for a letter that somebody just asked for. */
  stopUrl: string | null
}

/** Whoever asked is waiting, or the next letter is: a server that is there answers within a second or two. */
const CONNECT_MS = 10_000
/** Between two lines of its answers; some look a sender up first, which takes them this long. */
const SILENCE_MS = 30_000
/** All that a mail server has to say to us is a line or two. */
const MOST_ANSWER_BYTES = 64_000

/** A subject is one line: what came out of a catalog may hold anything that a database does. */
// oxlint-disable-next-line no-control-regex -- these are the signs that are taken out
const oneLine = (text: string): string => text.replaceAll(/[\u0000-\u001f\u007f-\u009f\u2028\u2029]+/g, ' ').trim()

/**
 * How the server is spoken to. TLS, with its certificate checked, wherever the server is not this very computer: a name and a password, or a
 * letter, go over no network in the open.
 */
export function transportOptions({ server }: MailSettings, ownName: string) {
  const host = server.hostname.replaceAll(/[[\]]/g, '')
  return {
    host,
    ...(server.port === '' ? {} : { port: Number(server.port) }),
    secure: server.protocol === 'smtps:',
    requireTLS: !isNear(server),
    ...(server.username === '' ? {} : { auth: { user: decodeURIComponent(server.username), pass: decodeURIComponent(server.password) } }),
    // The name of this computer is nobody's business.
    name: ownName,
    tls: { minVersion: 'TLSv1.2' as const },
    connectionTimeout: CONNECT_MS,
    dnsTimeout: CONNECT_MS,
    greetingTimeout: CONNECT_MS,
    socketTimeout: SILENCE_MS,
    maxResponseSize: MOST_ANSWER_BYTES,
    // Nothing of a letter may name a file or an address to be fetched.
    disableFileAccess: true,
    disableUrlAccess: true,
  }
}

export type SendLetter = (letter: Letter) => Promise<void>

/** Hands letters over, one connection each: a club writes a few an hour. Errors: throws what the server or the network said. */
export function letterSender(settings: MailSettings, ownName: string): SendLetter {
  const transport = createTransport(transportOptions(settings, ownName))
  return async ({ place, to, subject, text, html, stopUrl }) => {
    await transport.sendMail({
      from: { name: oneLine(place), address: settings.from },
      // As an object: a text would be read as a list of addresses.
      to: { name: '', address: to },
      subject: oneLine(subject),
      text,
      html,
      headers: {
        // RFC 3834: nobody's absence is told to a machine.
        'Auto-Submitted': 'auto-generated',
        ...(stopUrl === null ? {} : { 'List-Unsubscribe': `<${stopUrl}>`, 'List-Unsubscribe-Post': 'List-Unsubscribe=One-Click' }),
      },
    })
  }
}
