import webPush from 'web-push'
import type { Reach } from '../outside/guarded-request.ts'
import { guardedPost, type Posted } from './guarded-post.ts'
import type { VapidKey } from './vapid-key.ts'

/** What a browser gives for messages: where they go, and its keys (RFC 8291), both base64url. */
export interface Subscriber {
  endpoint: string
  p256dh: string
  auth: string
}
/** What the phone shows. No name of anyone is in it: a locked screen is read by whoever passes. */
export interface PushNews {
  title: string
  body: string
  /** Of our own address. */
  path: string
  /** A later one with the same takes its place. */
  tag: string
}
export interface Sender {
  key: VapidKey
  /** Whom a push service may write to, as RFC 8292 asks: an https address of ours. */
  subject: string
  nowMs: number
}

/** A deal of yesterday is no news. */
const KEPT_S = 86_400
/** RFC 8292 allows a day; a copied token should not live longer than a message takes. */
const TOKEN_S = 3_600
/** RFC 8030, 7.2: a service must take 4096 bytes; a name cut here leaves room for every sign of it being four bytes. */
const MOST_SIGNS = 300

const short = (text: string): string => (text.length <= MOST_SIGNS ? text : `${[...text].slice(0, MOST_SIGNS - 1).join('')}…`)

/** Headers and encrypted body of one message (RFC 8188, 8291, 8292). Errors: throws where the browser's keys are none. */
export function pushRequest({ endpoint, p256dh, auth }: Subscriber, news: PushNews, { key, subject, nowMs }: Sender) {
  const payload = Buffer.from(JSON.stringify({ ...news, title: short(news.title), body: short(news.body) }))
  const { cipherText } = webPush.encrypt(p256dh, auth, payload, 'aes128gcm')
  const expires = Math.floor(nowMs / 1000) + TOKEN_S
  const { origin } = new URL(endpoint)
  const { Authorization } = webPush.getVapidHeaders(origin, subject, key.publicKey, key.privateKey, 'aes128gcm', expires)
  return {
    headers: {
      authorization: Authorization,
      ttl: String(KEPT_S),
      urgency: 'normal',
      'content-type': 'application/octet-stream',
      'content-encoding': 'aes128gcm',
    },
    body: new Uint8Array(cipherText),
  }
}

/** Encrypts for one browser and hands over to its push service. Errors: those of `guardedPost` and `pushRequest`. */
export async function sendPush(to: Subscriber, news: PushNews, sender: Sender, reach?: Reach): Promise<Posted> {
  return guardedPost(new URL(to.endpoint), pushRequest(to, news, sender), reach)
}
