import { XMLParser, XMLValidator } from 'fast-xml-parser'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { phoneId, product, sighting, store } from '../support/rows.ts'
import { today } from './support/quotes.ts'
import { lookNow, setWatch } from './support/watches.ts'
import { createWorld, ORIGIN, type Browser, type World } from './support/world.ts'

interface FeedLink {
  createdAt: string | null
  atom: string
  json: string
}
interface Entry {
  id: string
  title: { '@type': string; '#text': string }
  updated: string
  link: { '@href': string }
}

let world: World
let tom: Browser
let link: FeedLink
const NAME = 'Kelvane <200> & "co"'
beforeAll(async () => {
  world = await createWorld()
  tom = await world.signIn('member')
  const ada = await world.signIn('member')
  const { id: productId } = await product(world.db, { name: NAME })
  const { id: storeId } = await store(world.db, { name: 'Upriver & Sons' })
  await setWatch(tom, { productId })
  await ada.send('POST', '/api/sightings', {
    body: sighting(productId, storeId, { id: phoneId(), seenOn: today(), condition: 'sale', priceMinor: 3000 }),
  })
  await lookNow(world)
  link = (await tom.send<FeedLink>('POST', '/api/feed-link')).body
})
afterAll(() => world.close())

const read = (address: string, headers: Record<string, string> = {}) => world.visitor().send('GET', address, { headers })
const RFC_3339 = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(?:\.\d+)?(?:Z|[+-]\d{2}:\d{2})$/

describe('the feed of what one was told', () => {
  it('has in Atom what RFC 4287 requires (4.1.1, 4.1.2, 4.2.7): id, title, updated, author and a link to itself', async () => {
    const answer = await read(link.atom)
    expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'application/atom+xml; charset=utf-8'])
    expect(XMLValidator.validate(answer.text)).toBe(true)
    const parser = new XMLParser({ ignoreAttributes: false, attributeNamePrefix: '@', isArray: (name) => name === 'entry' })
    const { feed } = parser.parse(answer.text) as {
      feed: {
        '@xmlns': string
        id: string
        title: string
        updated: string
        author: { name: string }
        link: Array<{ '@rel': string; '@href': string }>
        entry: Entry[]
      }
    }
    expect(feed['@xmlns']).toBe('http://www.w3.org/2005/Atom')
    expect(feed.id).toMatch(/^[a-z]+:/)
    expect(feed.title).not.toBe('')
    expect(feed.updated).toMatch(RFC_3339)
    expect(feed.author.name).toBe('Tarnwick Aquarium Club')
    expect(feed.link.find((one) => one['@rel'] === 'self')?.['@href']).toBe(link.atom)
    const [entry] = feed.entry
    expect(entry?.id).toMatch(/^urn:uuid:[0-9a-f-]{36}$/)
    expect(entry?.updated).toMatch(RFC_3339)
    expect(entry?.link['@href']).toContain(`${ORIGIN}/prices/`)
    // Marked as HTML, and escaped as such.
    const title = 'Kelvane &lt;200&gt; &amp; &quot;co&quot;: $31.80 at Upriver &amp; Sons'
    expect(entry?.title).toEqual({ '@type': 'html', '#text': title })
  })

  it('has in JSON what JSON Feed 1.1 requires: version and title, of each item an id and content', async () => {
    const answer = await read(link.json)
    expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'application/feed+json; charset=utf-8'])
    const feed = JSON.parse(answer.text) as { version: string; title: string; feed_url: string; items: Array<Record<string, string>> }
    expect(feed.version).toMatch(/^https:\/\/jsonfeed\.org\/version\/1(?:\.1)?$/)
    expect(feed.feed_url).toBe(link.json)
    expect(feed.title).not.toBe('')
    expect(feed.items).toHaveLength(1)
    const [item] = feed.items
    expect(item?.['id']).toMatch(/^urn:uuid:/)
    expect(item?.['title']).toContain(NAME)
    expect(item?.['content_html'] ?? item?.['content_text']).toContain('Sale')
    expect(item?.['date_published']).toMatch(RFC_3339)
  })

  it('names no member, and nothing typed is read as markup', async () => {
    const people = await world.db.selectFrom('person').select('name').execute()
    for (const address of [link.atom, link.json]) {
      const { text } = await read(address)
      for (const { name } of people) expect(text).not.toContain(name)
      expect(text.replaceAll('<![CDATA[', '')).not.toContain('<200>&')
    }
  })

  it('is kept for five minutes by its reader alone, and not sent again where nothing is new', async () => {
    const first = await read(link.atom)
    expect(first.headers.get('cache-control')).toBe('private, max-age=300')
    const again = await read(link.atom, { 'if-none-match': first.headers.get('etag') ?? '' })
    expect([again.status, again.text]).toEqual([304, ''])
  })

  it('opens by its address alone, of which the database and the log keep nothing', async () => {
    const token = new URL(link.atom).pathname.split('/')[2] ?? ''
    expect(Buffer.from(token, 'base64url')).toHaveLength(32)
    const rows = await world.db.selectFrom('feed_token').selectAll().execute()
    expect(JSON.stringify(rows)).not.toContain(token)
    await read(link.atom)
    expect(world.logged.join('')).not.toContain(token)
    expect((await tom.send<FeedLink>('GET', '/api/feed-link')).body).toMatchObject({ createdAt: link.createdAt, atom: null, json: null })
    for (const wrong of [token.slice(0, -1), `${token.slice(0, -1)}${token.endsWith('A') ? 'B' : 'A'}x`, 'x'])
      expect((await read(`/feeds/${wrong}/deals.atom`)).status).toBe(404)
  })

  it('opens by the newest address and, switched off, by none', async () => {
    const renewed = (await tom.send<FeedLink>('POST', '/api/feed-link')).body
    expect((await read(link.json)).status).toBe(404)
    expect((await read(renewed.json)).status).toBe(200)
    expect((await tom.send('DELETE', '/api/feed-link')).status).toBe(204)
    expect((await read(renewed.json)).status).toBe(404)
  })

  it('is read 120 times an hour, then the wait is told; wrong addresses are counted by where they come from', async () => {
    const who = await world.signIn('member')
    const { atom } = (await who.send<FeedLink>('POST', '/api/feed-link')).body
    for (let time = 0; time < 120; time += 1) expect((await read(atom)).status).toBe(200)
    const refused = await read(atom)
    expect([refused.status, Number(refused.headers.get('retry-after')) > 0]).toEqual([429, true])
    const elsewhere = world.visitor('198.51.100.7')
    for (let time = 0; time < 100; time += 1) await elsewhere.send('GET', '/feeds/nothing/deals.json')
    expect((await elsewhere.send('GET', '/feeds/nothing/deals.json')).status).toBe(429)
  })
})
