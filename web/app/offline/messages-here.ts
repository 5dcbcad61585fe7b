import { removeOwnDevice, type DeviceBody } from '../client/hearing.ts'

/** Whether this browser can be told, and if not, why. */
export type MessagesHere = 'can' | 'not_secure' | 'not_able' | 'refused'

/** What a browser says when it is asked once more would only repeat this. */
export function messagesHere(): MessagesHere {
  if (!globalThis.isSecureContext) return 'not_secure'
  if (!('serviceWorker' in navigator) || !('PushManager' in globalThis) || !('Notification' in globalThis)) return 'not_able'
  return Notification.permission === 'denied' ? 'refused' : 'can'
}

/** Asked and not given: the person said no, or closed the question, or the browser found no service that carries messages. */
export class NoMessages extends Error {
  readonly why: 'refused' | 'not_answered' | 'no_service'
  constructor(why: NoMessages['why']) {
    super(why)
    this.why = why
  }
}

const bytesOf = (text: string): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), (sign) => sign.codePointAt(0) ?? 0)

async function subscriptionHere(): Promise<PushSubscription | null> {
  if (messagesHere() === 'not_secure' || messagesHere() === 'not_able') return null
  const worker = await navigator.serviceWorker.getRegistration()
  return worker?.pushManager.getSubscription() ?? null
}

/** By which the server knows this browser, SHA-256 of its address for messages; null where it has none. */
export async function idHere(): Promise<string | null> {
  const subscription = await subscriptionHere().catch(() => null)
  if (subscription === null) return null
  const hash = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(subscription.endpoint))
  return [...new Uint8Array(hash)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}

/** Asks the person, then the browser. Must be called from a press. Errors: NoMessages. */
export async function askForMessages(publicKey: string): Promise<DeviceBody> {
  const answer = await Notification.requestPermission()
  if (answer !== 'granted') throw new NoMessages(answer === 'denied' ? 'refused' : 'not_answered')
  const worker = await navigator.serviceWorker.getRegistration()
  if (!worker) throw new NoMessages('no_service')
  // One that was made with another key of the place would be refused by its service: a new one takes its place.
  await (await worker.pushManager.getSubscription())?.unsubscribe()
  const made = await worker.pushManager
    .subscribe({ userVisibleOnly: true, applicationServerKey: bytesOf(publicKey) })
    .catch(() => Promise.reject(new NoMessages('no_service')))
  const { endpoint, keys } = made.toJSON()
  if (!endpoint || !keys?.['p256dh'] || !keys['auth']) throw new NoMessages('no_service')
  return { endpoint, keys: { p256dh: keys['p256dh'], auth: keys['auth'] } }
}

/** Ends messages on this device, there and here. Whoever is signed in next should not be told another's deals. */
export async function endMessagesHere(): Promise<void> {
  const [subscription, id] = [await subscriptionHere(), await idHere()]
  if (subscription === null || id === null) return
  await removeOwnDevice(id).catch(() => undefined)
  await subscription.unsubscribe()
}
