import type { TaughtPrice } from './timeline.ts'

/** What the database tells of one sighting, in this order. Only what is accepted is told. */
type ToldPrice = readonly [
  id: string,
  productId: string,
  storeId: string,
  condition: TaughtPrice['condition'],
  priceMinor: number,
  printedRegularMinor: number | null,
  seenOn: string,
  reporterId: string,
  confirmations: number,
  disputes: number,
]

/**
 * Accepted sightings from one text, a JSON list of lists: as a text they pass through a process without becoming a dozen things each there.
 *
 * Range: what `acceptedText` gives. Errors: SyntaxError for what is no JSON.
 *
 * @example pricesTold('[["s","p","q","shelf",5000,null,"2026-10-20","r",0,0]]')[0].priceMinor // 5000
 */
export const pricesTold = (text: string): TaughtPrice[] =>
  (JSON.parse(text) as ToldPrice[]).map(
    ([id, productId, storeId, condition, priceMinor, printedRegularMinor, seenOn, reporterId, confirmations, disputes]) => ({
      id,
      productId,
      storeId,
      condition,
      priceMinor,
      printedRegularMinor,
      seenOn,
      reporterId,
      confirmations,
      disputes,
      doubt: null,
      withdrawn: false,
    }),
  )
