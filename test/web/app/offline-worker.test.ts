import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'

interface Asked {
  request: { url: string; method: string; mode: string }
  respondWith(answer: Promise<Response>): void
  waitUntil(done: Promise<unknown>): void
}
const ORIGIN = 'https://club.example'
const kept = new Map<string, Response>()
const keyOf = (under: string | { url: string }): string => (typeof under === 'string' ? under : new URL(under.url).pathname)
const put = vi.fn(async (under: string | { url: string }, answer: Response) => void kept.set(keyOf(under), answer))
const open = vi.fn(async () => ({ put, match: async (under: string | { url: string }) => kept.get(keyOf(under))?.clone() }))
const server = vi.fn<(path?: unknown, options?: { method?: string; body?: string }) => Promise<Response>>()
let onFetch: (event: Asked) => void
interface Changed {
  oldSubscription?: { endpoint: string } | null
  newSubscription?: unknown
  waitUntil(done: Promise<unknown>): void
}
let onChange: (event: Changed) => void
const subscribe = vi.fn(async (_options: object) => ({
  toJSON: () => ({ endpoint: 'https://push.example/new', keys: { p256dh: 'P', auth: 'A' } }),
}))

beforeAll(async () => {
  vi.stubGlobal('self', {
    addEventListener: (type: string, on: ((event: Asked) => void) & ((event: Changed) => void)) => {
      if (type === 'fetch') onFetch = on
      if (type === 'pushsubscriptionchange') onChange = on
    },
    registration: { pushManager: { subscribe } },
  })
  vi.stubGlobal('location', { origin: ORIGIN })
  vi.stubGlobal('caches', { open })
  vi.stubGlobal('fetch', server)
  // A plain script, no module: the compiler imports it by an address alone.
  await import(new URL('../../../web/app/offline/worker.ts', import.meta.url).href)
  return () => vi.unstubAllGlobals()
})
beforeEach(() => {
  kept.clear()
  vi.useFakeTimers()
})
afterEach(() => {
  vi.useRealTimers()
  vi.clearAllMocks()
})

/** What a page is answered, and what goes on beside it. */
function ask(path: string, mode = 'navigate'): { answer: Promise<string>; beside: () => Promise<unknown> } {
  let answer: Promise<Response> | undefined
  const beside: Array<Promise<unknown>> = []
  onFetch({
    request: { url: ORIGIN + path, method: 'GET', mode },
    respondWith: (given) => (answer = given),
    waitUntil: (done) => beside.push(done),
  })
  if (answer === undefined) throw new Error(`${path} goes to the network`)
  return { answer: answer.then((given) => given.text()), beside: () => Promise.all(beside) }
}

describe('a page without a signal', () => {
  it('is the newest one, kept for later, and the one kept last where the server cannot be reached', async () => {
    server.mockResolvedValueOnce(new Response('new'))
    const asked = ask('/prices')
    expect(await asked.answer).toBe('new')
    await asked.beside()
    server.mockRejectedValueOnce(new TypeError('no network'))
    expect(await ask('/stores').answer).toBe('new')
    kept.clear()
    server.mockRejectedValueOnce(new TypeError('no network'))
    await expect(ask('/stores').answer).rejects.toThrow('no network')
  })

  it('comes from what is kept where the signal hangs, and waits on where nothing is', async () => {
    server.mockReturnValue(new Promise(() => undefined))
    kept.set('/', new Response('old'))
    const asked = ask('/prices').answer
    await vi.advanceTimersByTimeAsync(4_000)
    expect(await asked).toBe('old')
    kept.clear()
    server.mockReturnValue(new Promise((resolve) => setTimeout(() => resolve(new Response('slow')), 9_000)))
    const waits = ask('/prices').answer
    await vi.advanceTimersByTimeAsync(9_000)
    expect(await waits).toBe('slow')
  })

  it('is the newest one though there is no room to keep it', async () => {
    kept.set('/', new Response('old'))
    const full = new DOMException('no room', 'QuotaExceededError')
    for (const refusing of [() => put.mockRejectedValueOnce(full), () => open.mockRejectedValueOnce(full)]) {
      refusing()
      server.mockResolvedValueOnce(new Response('new'))
      const asked = ask('/prices')
      expect(await asked.answer).toBe('new')
      await expect(asked.beside()).resolves.toBeDefined()
    }
  })
})

describe('a file of the application', () => {
  it('is asked for once, then comes from what is kept', async () => {
    server.mockResolvedValueOnce(new Response('code'))
    const asked = ask('/assets/main-1a2b.js', 'cors')
    expect(await asked.answer).toBe('code')
    await asked.beside()
    expect(await ask('/assets/main-1a2b.js', 'cors').answer).toBe('code')
    expect(server).toHaveBeenCalledTimes(1)
  })

  it('comes though nothing can be kept or looked up', async () => {
    open.mockRejectedValueOnce(new DOMException('no room', 'QuotaExceededError'))
    put.mockRejectedValueOnce(new DOMException('no room', 'QuotaExceededError'))
    server.mockResolvedValueOnce(new Response('code'))
    expect(await ask('/assets/main-1a2b.js', 'cors').answer).toBe('code')
  })
})

describe('an address for messages that the browser changed by itself', () => {
  const changed = async (event: Omit<Changed, 'waitUntil'>): Promise<Array<[unknown, string | undefined]>> => {
    let done: Promise<unknown> = Promise.resolve()
    onChange({ ...event, waitUntil: (until) => (done = until) })
    await done
    return server.mock.calls.map(([path, options]) => [path, options?.method])
  }
  // printf 'https://push.example/old' | sha256sum
  const OLD_ID = '2068984065075049dd179d26b8f5cb1b372f92336706a8bb32da19f6ef0b9f74'
  const hearing = (): Response => Response.json({ mail: null, push: { publicKey: 'KEY', devices: [] } })

  it('is told to the server in place of the old one', async () => {
    server.mockImplementation(async () => hearing())
    const asked = await changed({ oldSubscription: { endpoint: 'https://push.example/old' }, newSubscription: null })
    expect(asked).toEqual([
      ['/api/hearing', undefined],
      ['/api/hearing/devices', 'POST'],
      [`/api/hearing/devices/${OLD_ID}`, 'DELETE'],
    ])
    expect(subscribe).toHaveBeenCalledWith({ userVisibleOnly: true, applicationServerKey: 'KEY' })
    expect(JSON.parse(server.mock.calls[1]?.[1]?.body ?? '')).toEqual({
      endpoint: 'https://push.example/new',
      keys: { p256dh: 'P', auth: 'A' },
    })
  })

  it.each([
    ['cannot take it', 500, 'fault', ['POST']],
    ['gives no messages any more', 409, 'not_offered', ['POST']],
    ['takes no further device of this person', 409, 'full', ['POST', 'DELETE', 'POST']],
  ])('leaves the old one where the server %s, and makes room alone where that is what lacks', async (_why, status, code, methods) => {
    server.mockImplementation(async (_path, options) => (options?.method === 'POST' ? Response.json({ code }, { status }) : hearing()))
    const asked = await changed({ oldSubscription: { endpoint: 'https://push.example/old' }, newSubscription: null })
    expect(asked.slice(1).map(([, method]) => method)).toEqual(methods)
  })

  it('is taken as the browser made it, and told nobody where nobody is signed in', async () => {
    server.mockImplementation(async () => hearing())
    const made = { toJSON: () => ({ endpoint: 'https://push.example/made', keys: { p256dh: 'P', auth: 'A' } }) }
    expect(await changed({ newSubscription: made })).toHaveLength(2)
    expect(subscribe).not.toHaveBeenCalled()
    server.mockClear()
    server.mockImplementation(async () => new Response('', { status: 401 }))
    expect(await changed({ newSubscription: made })).toEqual([['/api/hearing', undefined]])
  })
})
