import { probit } from 'simple-statistics'
import type { Line } from '../market/lines.ts'
import type { Market } from '../market/market.ts'
import type { ProductTruth } from '../market/parameters.ts'
import { depthFor } from '../market/sale.ts'

/** Depths are taken at so many equally likely places of their distribution. */
const PLACES = 21
const NORMALS = Array.from({ length: PLACES }, (_, index) => probit((index + 0.5) / PLACES))

/** A price that a store may ask, as a share of the least regular price of the line today. */
interface Point {
  store: number
  kind: 'regular' | 'ordinary' | 'sale_time'
  share: number
}

/**
 * What to buy at, by somebody who knows what is true of the market but not what will come: shares of the regular price seen that day, from day 0
 * to the last, by backward induction. `costPerDay` is what a day of waiting costs, as a share of today's least regular price.
 *
 * A new sale is an offer of its first day; that it stands longer is left out, here as in the advice that it is compared with.
 */
export function oracleShares(market: Market, line: Line, days: number, costPerDay: number): Float64Array {
  const product = market.truth.products[line.product] as ProductTruth
  const points = pointsOf(market, line, product)
  const { changesPerYear, changeMean, changeSpread } = product.kind
  const growth = 1 + (changesPerYear / 365) * (Math.exp(changeMean + changeSpread ** 2 / 2) - 1)
  const shares = new Float64Array(days + 1).fill(Number.POSITIVE_INFINITY)
  let worth = Number.POSITIVE_INFINITY
  for (let day = days; day >= 0; day -= 1) {
    const going = day === days ? Number.POSITIVE_INFINITY : growth * worth + costPerDay
    shares[day] = going
    worth = expectedLeast(points, chancesOn(market, line, product, day), going)
  }
  return shares
}

function pointsOf(market: Market, line: Line, product: ProductTruth): Point[] {
  const today = line.stores.map((store) => market.ahead[line.product]?.[store]?.regular[0] as number)
  const least = Math.min(...today)
  return line.stores
    .flatMap((_, store): Point[] => {
      const ratio = (today[store] as number) / least
      const sale = (kind: Point['kind'], factor: number): Point[] =>
        NORMALS.map((at) => ({ store, kind, share: ratio * (1 - depthFor(product, factor, at)) }))
      return [{ store, kind: 'regular', share: ratio }, ...sale('ordinary', 1), ...sale('sale_time', market.truth.saleTimeDepth)]
    })
    .sort((a, b) => a.share - b.share)
}

interface Chances {
  ordinary: number
  saleTime: number
}

/** Chance by store that a sale begins on a day: an ordinary one, or a sale time of that day that the store runs and the product takes part in. */
function chancesOn(market: Market, line: Line, product: ProductTruth, day: number): Chances[] {
  return line.stores.map((store) => {
    const window = market.windows.find((each) => each.store === store && day > 0 && each.first === market.asOfDay + day)
    return {
      ordinary: product.startChance[store] as number,
      saleTime: window === undefined ? 0 : (window.saleTime.runs[store] as number) * product.takesPart,
    }
  })
}

/** Mean of the least offer of a day, no more than `most`: the area under the chance that every store asks more. Points in ascending order. */
function expectedLeast(points: readonly Point[], chances: readonly Chances[], most: number): number {
  const above = chances.map(() => 1)
  let reached = 0
  let area = 0
  for (const { store, kind, share } of points) {
    const { ordinary, saleTime } = chances[store] as Chances
    const all = above.reduce((product, chance) => product * chance, 1)
    area += (Math.min(share, most) - reached) * all
    reached = Math.min(share, most)
    if (reached >= most) return area
    const weight = {
      regular: (1 - ordinary) * (1 - saleTime),
      ordinary: (ordinary * (1 - saleTime)) / PLACES,
      sale_time: saleTime / PLACES,
    }[kind]
    above[store] = Math.max(0, (above[store] as number) - weight)
  }
  return area
}
