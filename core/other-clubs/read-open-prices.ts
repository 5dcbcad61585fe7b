import { currencyExponent, MOST_MINOR } from '../money.ts'
import type { OpenPrice } from './open-prices.ts'
import { FeedRead, OfferRead } from './schema.ts'

export interface FeedReading {
  /** As the club calls itself. */
  name: string
  prices: OpenPrice[]
  /** Offers that could not be read, or came twice. */
  leftOut: number
}

const at = (term: string): string => term.slice(term.lastIndexOf('/') + 1)

/**
 * Reads another club's feed, as `openPriceFeed` writes it or anybody else's in that vocabulary. What cannot be read is left out and counted;
 * of two offers of one id the first counts. Errors: words for the manager where the whole is no feed of prices.
 */
export function readOpenPrices(document: unknown): { ok: true; value: FeedReading } | { ok: false; words: string } {
  const head = FeedRead.safeParse(document)
  if (!head.success) return { ok: false, words: head.error.issues[0]?.message ?? 'This is not a feed of prices.' }
  const prices = new Map<string, OpenPrice>()
  for (const element of head.data.dataFeedElement) {
    const price = priceOf(element)
    if (price !== null && !prices.has(price.originId)) prices.set(price.originId, price)
  }
  return {
    ok: true,
    value: { name: head.data.name, prices: [...prices.values()], leftOut: head.data.dataFeedElement.length - prices.size },
  }
}

function priceOf(element: unknown): OpenPrice | null {
  const read = OfferRead.safeParse(element)
  return read.success ? fromOffer(read.data) : null
}

function fromOffer(offer: OfferRead): OpenPrice | null {
  const [first, ...others] = offer.priceSpecification
  if (first === undefined || others.some(({ priceCurrency }) => priceCurrency !== first.priceCurrency)) return null
  const struck = others.find(({ priceType }) => at(priceType ?? '') === 'StrikethroughPrice')
  const [priceMinor, printedRegularMinor] = [minorOf(first), struck ? minorOf(struck) : null]
  const condition = conditionOf(offer, at(first.priceType ?? ''))
  if (priceMinor === null || condition === null) return null
  const { itemOffered: product, seller } = offer
  return {
    originId: offer.identifier,
    product: { name: product.name, maker: product.brand, gtin: product.gtin, kind: product.category },
    store: {
      key: seller.identifier,
      name: seller.name,
      kind: at(seller['@type']) === 'OnlineStore' ? 'online' : 'local',
      town: seller.address.addressLocality,
      country: seller.address.addressCountry,
    },
    condition,
    priceMinor,
    printedRegularMinor,
    currency: first.priceCurrency,
    seenOn: offer.validFrom,
    lastDay: offer.priceValidUntil !== null && offer.priceValidUntil >= offer.validFrom ? offer.priceValidUntil : null,
    includesTax: first.valueAddedTaxIncluded,
  }
}

function conditionOf({ itemCondition, availability }: OfferRead, priceType: string): OpenPrice['condition'] | null {
  if (at(itemCondition) === 'UsedCondition') return 'used'
  if (at(itemCondition) !== 'NewCondition') return null
  if (priceType !== 'SalePrice') return 'shelf'
  return at(availability ?? '') === 'LimitedAvailability' ? 'clearance' : 'sale'
}

/** Null where the amount has more decimals than its currency, or is nothing. */
function minorOf({ price, priceCurrency }: { price: string; priceCurrency: string }): number | null {
  const exponent = currencyExponent(priceCurrency)
  const [whole = '0', fraction = ''] = price.split('.')
  if (fraction.length > exponent) return null
  const minor = Number(whole + fraction.padEnd(exponent, '0'))
  return Number.isSafeInteger(minor) && minor > 0 && minor <= MOST_MINOR ? minor : null
}
