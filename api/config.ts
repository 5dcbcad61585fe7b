import type { BlockList } from 'node:net'
import { join } from 'node:path'
import { ConfigError } from './config-error.ts'
import { addressList, isLoopbackName } from './http/site.ts'
import { mailSettingsOf, type MailSettings } from './mail/mail-settings.ts'
import { demandKnownNames, type Setting } from './settings-names.ts'

export { ConfigError } from './config-error.ts'

/** What the operator decides, from the environment. Everything has a default that is safe on one computer. */
export interface Config {
  host: string
  port: number
  dataDir: string
  databaseUrl: string | null
  /** Where readers reach the service, https outside this computer; null where only this computer does. */
  publicUrl: URL | null
  /** Secret of quote and setup links; null makes one in the data folder at the first start. */
  linkKey: string | null
  trustedProxies: BlockList
  /** Files of the certificate with its chain, and of its key; null where a proxy speaks https, or nobody does. */
  tls: { certPath: string; keyPath: string } | null
  /** Where backups are kept. */
  backupDir: string
  /** Locks every backup that is made by itself or on the command line; null leaves them readable. */
  backupPassphrase: string | null
  /** How mail goes out; null: nobody is offered any. */
  mail: MailSettings | null
}

const PORT_MAX = 65_535
/** 32 bytes in base64 or hexadecimal are longer; anything shorter was typed by hand. */
const LINK_KEY_MIN = 32
/** As for a password that is the only factor (NIST SP 800-63B-4): whoever has the file may guess for years. */
export const PASSPHRASE_MIN = 15

function portOf(text: string): number {
  const port = Number(text)
  if (!/^\d+$/.test(text) || port > PORT_MAX) throw new ConfigError(`PORT is "${text}". It is a whole number from 0 to ${PORT_MAX}.`)
  return port
}

function publicUrlOf(text: string): URL {
  if (!URL.canParse(text)) throw new ConfigError(`PUBLIC_URL is "${text}". Write the whole address, like https://tanks.example.org`)
  const url = new URL(text)
  if (url.protocol !== 'https:' && url.protocol !== 'http:')
    throw new ConfigError('PUBLIC_URL starts with https:// (or http:// on this computer).')
  if (url.pathname !== '/' || url.search !== '' || url.hash !== '')
    throw new ConfigError('PUBLIC_URL has a path. Give a host of its own: the service does not run below a path.')
  if (url.protocol === 'http:' && !isLoopbackName(url.hostname)) {
    throw new ConfigError(
      'PUBLIC_URL starts with http://. Outside this computer the service needs https: sign-in and links are not safe without. Put a proxy with a certificate before it.',
    )
  }
  return url
}

function databaseUrlOf(text: string): string {
  if (!/^postgres(ql)?:\/\//.test(text))
    throw new ConfigError('DATABASE_URL starts with postgres:// or postgresql://. Leave it out for the embedded database.')
  return text
}

function linkKeyOf(text: string): string {
  if (text.length < LINK_KEY_MIN)
    throw new ConfigError(`LINK_KEY has ${text.length} characters. It needs at least ${LINK_KEY_MIN}: 32 random bytes in base64, say.`)
  return text
}

function proxiesOf(text: string): BlockList {
  try {
    return addressList(text.split(',').map((entry) => entry.trim()).filter((entry) => entry !== '')) // prettier-ignore
  } catch (error) {
    throw new ConfigError(
      `TRUSTED_PROXIES: ${error instanceof Error ? error.message : String(error)} Write addresses or networks, separated by commas.`,
    )
  }
}

function tlsOf(certPath: string | undefined, keyPath: string | undefined, publicUrl: URL | null): Config['tls'] {
  if (certPath === undefined && keyPath === undefined) return null
  if (certPath === undefined || keyPath === undefined)
    throw new ConfigError('TLS_CERT and TLS_KEY belong together: name the file of the certificate and the file of its key.')
  if (publicUrl?.protocol !== 'https:')
    throw new ConfigError('TLS_CERT is set and PUBLIC_URL is no https address. Set PUBLIC_URL to the address that the certificate is for.')
  return { certPath, keyPath }
}

function backupPassphraseOf(text: string): string {
  if (text.length < PASSPHRASE_MIN)
    throw new ConfigError(`BACKUP_PASSPHRASE has ${text.length} characters. It needs at least ${PASSPHRASE_MIN}: five words or so.`)
  return text
}

/** What the operator should hear at the start, though nothing is wrong in itself; null where there is nothing. */
export function configWarning({ host, publicUrl }: Pick<Config, 'host' | 'publicUrl'>): string | null {
  if (publicUrl !== null || isLoopbackName(host) || host === '::1' || host.startsWith('127.')) return null
  return `HOST is ${host} and PUBLIC_URL is missing: other computers reach this one, but nobody can sign in from them. Set PUBLIC_URL to the https address of this place.`
}

/** Errors: ConfigError names the first variable that cannot be right, or whose name is nearly one of ours. */
export function readConfig(env: Record<string, string | undefined>): Config {
  demandKnownNames(Object.keys(env))
  const given = (name: Setting): string | undefined => env[name]?.trim() || undefined
  const [databaseUrl, linkKey, passphrase] = [given('DATABASE_URL'), given('LINK_KEY'), given('BACKUP_PASSPHRASE')]
  const publicUrl = given('PUBLIC_URL') === undefined ? null : publicUrlOf(given('PUBLIC_URL') ?? '')
  const dataDir = given('DATA_DIR') ?? './data'
  return {
    host: given('HOST') ?? '127.0.0.1',
    port: portOf(given('PORT') ?? '8080'),
    dataDir,
    databaseUrl: databaseUrl === undefined ? null : databaseUrlOf(databaseUrl),
    publicUrl,
    linkKey: linkKey === undefined ? null : linkKeyOf(linkKey),
    trustedProxies: proxiesOf(given('TRUSTED_PROXIES') ?? ''),
    tls: tlsOf(given('TLS_CERT'), given('TLS_KEY'), publicUrl),
    backupDir: given('BACKUP_DIR') ?? join(dataDir, 'backups'),
    backupPassphrase: passphrase === undefined ? null : backupPassphraseOf(passphrase),
    mail: mailSettingsOf(given('SMTP_URL'), given('SMTP_FROM'), publicUrl),
  }
}
