import { civilDateAt } from '../../core/dates.ts'
import { sighting } from '../support/rows.ts'
import type { Measurement } from './measurement.ts'
import { compareRates } from './two-servers.ts'

/** Posting a sighting through the whole service against a bare handler that inserts the same row through raw postgres.js. */
export default function sightingPost(): Promise<Measurement[]> {
  const seenOn = civilDateAt(Date.now(), 'America/Detroit')
  let posted = 0
  return compareRates(
    'sighting.post',
    ({ stock, headers }) => {
      posted += 1
      const productId = stock.productIds[posted % stock.productIds.length] ?? ''
      const body = sighting(productId, stock.storeId, { seenOn, priceMinor: 4900 + (posted % 7) * 25 })
      // The whole service knows the reporter by the session and refuses a body that names one.
      return {
        method: 'POST',
        path: '/api/sightings',
        headers: 'cookie' in headers ? { ...headers, cookie: stock.cookies[posted % stock.cookies.length] ?? '' } : headers,
        body: JSON.stringify('cookie' in headers ? body : { ...body, reporterId: stock.reporterId }),
      }
    },
    201,
  )
}
