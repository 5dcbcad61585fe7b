import { createPrivateKey, X509Certificate } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { isIP } from 'node:net'
import { createSecureContext } from 'node:tls'
import { ConfigError } from '../config-error.ts'

export interface CertificateFiles {
  certPath: string
  keyPath: string
}
export interface Certificate {
  cert: Buffer
  key: Buffer
}

async function fileOf(name: 'TLS_CERT' | 'TLS_KEY', path: string): Promise<Buffer> {
  return readFile(path).catch((error: NodeJS.ErrnoException) => {
    throw new ConfigError(`${name} is "${path}": ${error.code === 'ENOENT' ? 'there is no such file' : 'the file cannot be read'}.`)
  })
}

/**
 * Reads a certificate with its chain and its key, both PEM, and checks that they belong together.
 *
 * Errors: ConfigError names the variable and what is wrong with its file.
 */
export async function readCertificate({ certPath, keyPath }: CertificateFiles): Promise<Certificate> {
  const [cert, key] = [await fileOf('TLS_CERT', certPath), await fileOf('TLS_KEY', keyPath)]
  const own = whole(() => new X509Certificate(cert), `TLS_CERT is "${certPath}", which holds no certificate in PEM form.`)
  const secret = whole(() => createPrivateKey(key), `TLS_KEY is "${keyPath}", which holds no key in PEM form without a passphrase.`)
  if (!own.checkPrivateKey(secret))
    throw new ConfigError(`TLS_KEY "${keyPath}" is not the key of the certificate in TLS_CERT "${certPath}". Name the two of one pair.`)
  whole(() => createSecureContext({ cert, key }), `TLS_CERT "${certPath}" and TLS_KEY "${keyPath}" cannot be used together.`)
  return { cert, key }
}

function whole<Value>(read: () => Value, words: string): Value {
  try {
    return read()
  } catch (cause) {
    throw new ConfigError(words, { cause })
  }
}

/** What a reader should know of a certificate that can be used; null where there is nothing. */
export function certificateWarning({ cert }: Certificate, hostname: string, nowMs: number): string | null {
  const own = new X509Certificate(cert)
  const name = hostname.replaceAll(/[[\]]/g, '')
  if ((isIP(name) === 0 ? own.checkHost(name) : own.checkIP(name)) === undefined)
    return `The certificate in TLS_CERT is not for ${hostname}, the host of PUBLIC_URL: browsers will refuse it.`
  if (own.validToDate.getTime() < nowMs)
    return `The certificate in TLS_CERT ended on ${own.validToDate.toISOString().slice(0, 10)}: renew it.`
  return null
}

/** A renewed pair is taken up within this time; a certificate is renewed weeks before it ends. */
const LOOK_MS = 60_000

/**
 * Looks every minute whether the files hold another pair and hands it on. Of a pair that is not whole, as while it is being renewed, nothing
 * is taken. Returns how to end it.
 */
export function followCertificate(
  files: CertificateFiles,
  first: Certificate,
  { take, onFault }: { take: (certificate: Certificate) => void; onFault: (error: unknown) => void },
  everyMs = LOOK_MS,
): () => void {
  let held = first
  const look = async (): Promise<void> => {
    const found = await readCertificate(files)
    if (found.cert.equals(held.cert) && found.key.equals(held.key)) return
    take(found)
    held = found
  }
  const timer = setInterval(() => void look().catch(onFault), everyMs).unref()
  return () => clearInterval(timer)
}
