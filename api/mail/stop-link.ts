import { createHash } from 'node:crypto'
import { idInToken, isLinkToken, linkToken } from '../auth/tokens.ts'

/** Whose mail a link ends, and which: the address as it was confirmed then. */
export interface StoppedMail {
  personId: string
  address: string
  confirmedAt: Date
}

/** Once an address was given and confirmed anew, links of letters from before work for so long. Letters that are older are hardly opened. Own. */
const OLD_LINK_DAYS = 60
const DAY_MS = 86_400_000
const TOKEN_LENGTH = 43
/** Of the address's hash: enough to tell addresses of one person apart. */
const ADDRESS_DIGITS = 16

/** An address and when it was confirmed, in seconds: both stand behind the token and are proven by it. */
const stampOf = ({ address, confirmedAt }: Omit<StoppedMail, 'personId'>): string =>
  `${Math.floor(confirmedAt.getTime() / 1000).toString(36)}.${createHash('sha256').update(address).digest('hex').slice(0, ADDRESS_DIGITS)}`

/** Where the one click of a mail that ends it leads; needs no sign-in. */
export function stopUrlOf(origin: string, linkKey: Uint8Array, mail: StoppedMail): string {
  const stamp = stampOf(mail)
  return `${origin}/m/stop/${linkToken(linkKey, 'mail', mail.personId, stamp)}.${stamp}`
}

export interface StopLink {
  personId: string
  stamp: string
}

/** What a link says, once it is proven to be one of ours; undefined for any other. */
export function readStopLink(linkKey: Uint8Array, text: string): StopLink | undefined {
  const [token, stamp] = [text.slice(0, TOKEN_LENGTH), text.slice(TOKEN_LENGTH + 1)]
  const personId = text[TOKEN_LENGTH] === '.' ? idInToken(token) : undefined
  return personId !== undefined && isLinkToken(linkKey, 'mail', personId, stamp, token) ? { personId, stamp } : undefined
}

/**
 * Whether a link ends the mail that its person gets now: it does where it was made for this address, and where that was given or confirmed anew since,
 * for 60 days more. One of an earlier address ends nothing: no mail goes there any more.
 */
export function endsMail({ stamp }: StopLink, mail: { address: string; confirmedAt: Date | null }, now: Date): boolean {
  const [confirmed, address] = stamp.split('.')
  const [confirmedNow, addressNow] = stampOf({ address: mail.address, confirmedAt: mail.confirmedAt ?? now }).split('.')
  if (address !== addressNow) return false
  return mail.confirmedAt === null || confirmed === confirmedNow || now.getTime() - mail.confirmedAt.getTime() <= OLD_LINK_DAYS * DAY_MS
}
