import { SMTPServer, type SMTPServerOptions } from 'smtp-server'

/** A letter as it came over the wire: from and to of the envelope, and the text with its headers. */
export interface Received {
  from: string
  to: string[]
  raw: string
}
export interface Mailbox {
  port: number
  received: Received[]
  /** What the next letters are answered with; null takes them. */
  refuse: (words: string | null) => void
  close: () => Promise<void>
}

/** A real mail server on this computer that keeps what it is given. */
export async function openMailbox(options: SMTPServerOptions = {}): Promise<Mailbox> {
  const received: Received[] = []
  let refusal: string | null = null
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS'],
    ...options,
    onData(stream, session, done) {
      const chunks: Buffer[] = []
      stream.on('data', (chunk: Buffer) => chunks.push(chunk))
      stream.on('end', () => {
        if (refusal !== null) return done(new Error(refusal))
        const { mailFrom, rcptTo } = session.envelope
        received.push({
          from: mailFrom === false ? '' : (mailFrom?.address ?? ''),
          to: rcptTo.map(({ address }) => address),
          raw: Buffer.concat(chunks).toString('utf8'),
        })
        return done()
      })
    },
  })
  // A client that goes away, since it was shown no TLS it likes, is what some tests are about.
  server.on('error', () => undefined)
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve)
  })
  const address = server.server.address()
  if (address === null || typeof address === 'string') throw new Error('no port')
  return {
    port: address.port,
    received,
    refuse: (words) => {
      refusal = words
    },
    close: () => new Promise((resolve) => server.close(() => resolve())),
  }
}

/** Headers of a letter by their lower-case names, folded lines joined. */
export function headersOf(raw: string): Map<string, string> {
  const [head = ''] = raw.split('\r\n\r\n')
  const lines = head.replaceAll(/\r\n[ \t]+/g, ' ').split('\r\n')
  return new Map(lines.map((line) => [line.slice(0, line.indexOf(':')).toLowerCase(), line.slice(line.indexOf(':') + 1).trim()]))
}

/** The parts of a letter in one text, with quoted-printable signs and soft line ends undone. */
export function bodyOf(raw: string): string {
  const body = raw.slice(raw.indexOf('\r\n\r\n') + 4)
  const bytes = body
    .replaceAll(/=\r\n/g, '')
    .replaceAll(/=([0-9A-F]{2})/g, (_all, code: string) => String.fromCharCode(Number.parseInt(code, 16)))
  return Buffer.from(bytes, 'latin1').toString('utf8')
}
