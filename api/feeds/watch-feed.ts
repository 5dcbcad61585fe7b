import { Feed } from 'feed'
import { sayDate } from '../../core/dates.ts'
import { sayMoney } from '../../core/money.ts'
import type { Notice } from '../../core/pricing/watches/notice.ts'

/** Where a feed lies; `token` is what proves whose it is. */
export const feedPath = (token: string, form: 'atom' | 'json'): string => `/feeds/${token}/${form === 'atom' ? 'deals.atom' : 'deals.json'}`

/** Older ones a reader program has kept, or never will. */
export const MOST_IN_FEED = 50

interface Feeding {
  installName: string
  origin: string
  token: string
  /** When it was last added to; where nothing was told yet, when it was made. */
  updated: Date
  notices: readonly Notice[]
  form: 'atom' | 'json'
}

/**
 * What somebody was told, as a feed: each deal by what, where and how much, and nobody's name.
 * Source: RFC 4287 and JSON Feed 1.1.
 */
export function watchFeed({ installName, origin, token, updated, notices, form }: Feeding): Feed {
  // The library marks a title of Atom as HTML; one of JSON is plain text.
  const titled = (text: string): string => (form === 'atom' ? escapedHtml(text) : text)
  const feed = new Feed({
    id: `urn:driploop:deals:${origin}`,
    title: titled(`Deals, ${installName}`),
    description: 'Prices at or under what you watch for.',
    link: `${origin}/watches`,
    language: 'en',
    updated,
    generator: 'Driploop',
    author: { name: installName },
    feedLinks: { atom: origin + feedPath(token, 'atom'), json: origin + feedPath(token, 'json') },
  })
  for (const notice of notices) {
    const words = contentOf(notice)
    const link = `${origin}/prices/${notice.productId}${notice.sightingId === null ? '' : `#s-${notice.sightingId}`}`
    const told = new Date(notice.toldAt)
    feed.addItem({
      id: `urn:uuid:${notice.id}`,
      title: titled(titleOf(notice)),
      link,
      date: told,
      published: told,
      description: words,
      content: words,
    })
  }
  return feed
}

/** @example titleOf(notice) // 'Kelvane 200: $34.99 at Upriver' */
const titleOf = ({ productName, totalMinor, totalCurrency, storeName }: Notice): string =>
  `${productName}: ${sayMoney(totalMinor, totalCurrency)} at ${storeName}`

const CONDITIONS: Record<Notice['condition'], string> = { shelf: 'Regular price', sale: 'Sale', clearance: 'Clearance', used: 'Used' }

const ENTITIES: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }
const escapedHtml = (text: string): string => text.replace(/[&<>"]/g, (sign) => ENTITIES[sign] ?? sign)

/** Readers show it as HTML: nothing that anybody typed is in it. */
function contentOf({ condition, until, lastDayStated, sightingId, seenOn }: Notice): string {
  const kept = until === null ? '' : lastDayStated ? `, to ${sayDate(until)}` : `, taken to hold to ${sayDate(until)}`
  const source =
    sightingId === null
      ? `In its price list from ${sayDate(seenOn)}.`
      : `Seen on ${sayDate(seenOn)}. As seen on the date; not an offer by the store.`
  return `${CONDITIONS[condition]}, with tax${kept}. ${source}`
}
