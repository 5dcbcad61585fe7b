/*
 * Runs beside the pages, in a thread of its own, and answers for the network where there is none. It keeps the application's one document and the files
 * that it loads, all of them the same for everybody. What the server says of anyone (/api) and the pages behind a link never pass through it.
 */

interface WorkerEvent {
  waitUntil(done: Promise<unknown>): void
}
interface FetchEvent extends WorkerEvent {
  request: Request
  respondWith(answer: Promise<Response>): void
}
interface KeepEvent extends WorkerEvent {
  data: unknown
}
interface PushEvent extends WorkerEvent {
  data: { json(): unknown } | null
}
interface Subscription {
  endpoint: string
  toJSON(): { endpoint?: string; keys?: Record<string, string> }
}
interface ChangeEvent extends WorkerEvent {
  oldSubscription?: Subscription | null
  newSubscription?: Subscription | null
}
interface ShownEvent extends WorkerEvent {
  notification: { data: unknown; close(): void }
}
interface OpenWindow {
  url: string
  focus(): Promise<OpenWindow>
  navigate(url: string): Promise<unknown>
}
/** As far as it is used here: the types of a worker and of a document contradict each other, and this project loads those of documents. */
interface WorkerScope {
  addEventListener(type: 'install' | 'activate', on: (event: WorkerEvent) => void): void
  addEventListener(type: 'fetch', on: (event: FetchEvent) => void): void
  addEventListener(type: 'message', on: (event: KeepEvent) => void): void
  addEventListener(type: 'push', on: (event: PushEvent) => void): void
  addEventListener(type: 'pushsubscriptionchange', on: (event: ChangeEvent) => void): void
  addEventListener(type: 'notificationclick', on: (event: ShownEvent) => void): void
  skipWaiting(): Promise<void>
  registration: {
    showNotification(title: string, options: { body: string; tag: string; data: unknown }): Promise<void>
    pushManager: { subscribe(options: { userVisibleOnly: true; applicationServerKey: string }): Promise<Subscription> }
  }
  clients: {
    claim(): Promise<void>
    matchAll(of: { type: 'window' }): Promise<OpenWindow[]>
    openWindow(url: string): Promise<unknown>
  }
}

const scope = self as unknown as WorkerScope
const KEPT = 'driploop-application'
const DOCUMENT = '/'
const FILES = /^\/(?:assets|fonts)\/|^\/mark\.svg$/
/** A signal that hangs neither answers nor fails. A page from a server at work comes well within this; longer, and a person in an aisle has given up. */
const PATIENCE_MS = 4_000
/** Not screens of the application: answers, pages that open without script, health, the worker itself. */
const OTHERS = /^\/(?:api|q|s|m|health)(?:\/|$)|\.\w+$/

scope.addEventListener('install', (event) => event.waitUntil(scope.skipWaiting()))
scope.addEventListener('activate', (event) => event.waitUntil(scope.clients.claim()))
scope.addEventListener('message', (event) => {
  if (Array.isArray(event.data)) event.waitUntil(keepFiles(event.data.filter((path) => typeof path === 'string' && FILES.test(path))))
})
scope.addEventListener('push', (event) => event.waitUntil(showNews(event)))
scope.addEventListener('pushsubscriptionchange', (event) => event.waitUntil(tellOfChange(event)))
scope.addEventListener('notificationclick', (event) => {
  event.notification.close()
  event.waitUntil(openDeal(event.notification.data))
})
scope.addEventListener('fetch', (event) => {
  const { request } = event
  const { origin, pathname } = new URL(request.url)
  if (request.method !== 'GET' || origin !== location.origin) return
  if (FILES.test(pathname)) event.respondWith(fileOf(event))
  else if (request.mode === 'navigate' && !OTHERS.test(pathname)) event.respondWith(documentOf(event))
})

/**
 * The newest document where the server answers in time, else the one kept last, with the policy and the nonce it came with; where none is kept, whatever
 * the server comes to say. An answer is never lost over the keeping of its copy.
 */
async function documentOf(event: FetchEvent): Promise<Response> {
  const answer = fetch(event.request)
  keepBeside(event, DOCUMENT, answer)
  const inTime = await Promise.race([answer.catch(() => undefined), after(PATIENCE_MS)])
  return inTime ?? (await lastKept(DOCUMENT)) ?? answer
}

/** A file with a hashed name never changes; a font or the mark is asked for anew only after the next sign-out. */
function fileOf(event: FetchEvent): Promise<Response> {
  const fetched = async (): Promise<Response> => {
    const answer = fetch(event.request)
    keepBeside(event, event.request, answer)
    return answer
  }
  return lastKept(event.request).then((known) => known ?? fetched())
}

/** Keeps a copy while the answer goes out. Where there is no room for it, the one before stays, or none. */
function keepBeside(event: FetchEvent, under: Request | string, answer: Promise<Response>): void {
  const keep = async (): Promise<void> => {
    const response = await answer
    if (!response.ok || response.redirected) return
    const copy = response.clone()
    await (await caches.open(KEPT)).put(under, copy)
  }
  event.waitUntil(keep().catch(() => undefined))
}

/** Undefined too where the browser refuses to look. */
const lastKept = (under: Request | string): Promise<Response | undefined> =>
  caches
    .open(KEPT)
    .then((kept) => kept.match(under))
    .catch(() => undefined)

const after = (ms: number): Promise<undefined> => new Promise((resolve) => setTimeout(() => resolve(undefined), ms))

/** Fetches what is not kept yet, the document too, and lets go of files of an earlier version. */
async function keepFiles(paths: readonly unknown[]): Promise<void> {
  const kept = await caches.open(KEPT)
  const wanted = new Set([DOCUMENT, ...paths].map(String))
  const known = new Set((await kept.keys()).map((request) => new URL(request.url).pathname))
  await Promise.all([...known].filter((path) => !wanted.has(path)).map((path) => kept.delete(path)))
  // One that is gone from the server costs only itself.
  await Promise.allSettled([...wanted].filter((path) => !known.has(path)).map((path) => kept.add(path)))
}

const textOf = (data: unknown, key: string, otherwise: string): string => {
  const value = typeof data === 'object' && data !== null ? (data as Record<string, unknown>)[key] : undefined
  return typeof value === 'string' && value !== '' ? value : otherwise
}

/** A browser asks that every message is shown: one that cannot be read says so much. */
function showNews({ data }: PushEvent): Promise<void> {
  let news: unknown = null
  try {
    news = data?.json()
  } catch {
    // Not ours, or cut off.
  }
  const title = textOf(news, 'title', 'A deal on what you watch')
  return scope.registration.showNotification(title, {
    body: textOf(news, 'body', ''),
    tag: textOf(news, 'tag', 'deals'),
    data: { path: textOf(news, 'path', DOCUMENT) },
  })
}

/** Leads to the deal, in a window that is open already where there is one; never to another site, whatever a message says. */
async function openDeal(data: unknown): Promise<void> {
  const asked = URL.parse(textOf(data, 'path', DOCUMENT), location.origin)
  const url = asked?.origin === location.origin ? asked.href : location.origin + DOCUMENT
  const [open] = await scope.clients.matchAll({ type: 'window' })
  if (open === undefined) return void (await scope.clients.openWindow(url))
  await open.focus()
  await open.navigate(url)
}

/**
 * The browser has another address for messages than it told: the server is told the new one and that the old one is over, so that nobody who switched
 * messages on stops hearing without a word. Nothing where nobody is signed in, or the place gives no messages any more.
 */
async function tellOfChange({ oldSubscription, newSubscription }: ChangeEvent): Promise<void> {
  const answer = await fetch('/api/hearing')
  const { push } = answer.ok ? ((await answer.json()) as { push: { publicKey: string } | null }) : { push: null }
  if (push === null) return
  const made =
    newSubscription ?? (await scope.registration.pushManager.subscribe({ userVisibleOnly: true, applicationServerKey: push.publicKey }))
  const { endpoint, keys } = made.toJSON()
  const body = JSON.stringify({ endpoint, keys: { p256dh: keys?.['p256dh'], auth: keys?.['auth'] } })
  const tellNew = (): Promise<Response> =>
    fetch('/api/hearing/devices', { method: 'POST', headers: { 'content-type': 'application/json' }, body })
  const told = await tellNew()
  // The old one stays until the new one is noted: a device that is nowhere hears nothing, and nobody would say so.
  if (!oldSubscription || !(told.ok || (await isFull(told)))) return
  await fetch(`/api/hearing/devices/${await idOf(oldSubscription.endpoint)}`, { method: 'DELETE' })
  if (!told.ok) await tellNew()
}

/** Whether the server refuses one more, as it does to who has as many devices as anybody may. */
async function isFull(answer: Response): Promise<boolean> {
  if (answer.status !== 409) return false
  const problem: unknown = await answer.json().catch(() => undefined)
  return textOf(problem, 'code', '') === 'full'
}

/** By which the server knows a device: SHA-256 of its address. */
async function idOf(endpoint: string): Promise<string> {
  const hash = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(endpoint))
  return [...new Uint8Array(hash)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}
