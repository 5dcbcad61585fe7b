import { daysBetween, type CivilDate } from '../dates.ts'
import type { ListPrice } from './price-list.ts'

/** A sale that is announced for longer than a year is a misread date. */
const LONGEST_SALE_DAYS = 366

export interface ListSaleFault {
  field: 'saleMinor' | 'saleUntil'
  words: string
}

/**
 * What is wrong with the sale of a list price, with its fix; null where nothing is.
 *
 * Units: minor units, civil dates. A sale is below its price, and its last day is from `validFrom` to 366 days after it.
 *
 * @example listSaleFault({ validFrom: '2026-11-01', priceMinor: 900, saleMinor: 900, saleUntil: null })?.field // 'saleMinor'
 */
export function listSaleFault({ validFrom, priceMinor, saleMinor, saleUntil }: ListPrice): ListSaleFault | null {
  const inSale = (words: string): ListSaleFault => ({ field: 'saleMinor', words })
  if (saleMinor === null)
    return saleUntil === null ? null : inSale('There is a last day of a sale and no sale price. Write the price, or take the day out.')
  if (saleMinor >= priceMinor) return inSale('The sale price is not below the price. Check both; without a sale leave it empty.')
  return saleUntil === null ? null : lastDayFault(validFrom, saleUntil)
}

function lastDayFault(validFrom: CivilDate, saleUntil: CivilDate): ListSaleFault | null {
  const days = daysBetween(validFrom, saleUntil)
  if (days < 0)
    return { field: 'saleUntil', words: `The sale’s last day ${saleUntil} is before its first, ${validFrom}. Check the two dates.` }
  if (days > LONGEST_SALE_DAYS)
    return {
      field: 'saleUntil',
      words: `The sale’s last day is ${days} days after its first. At most ${LONGEST_SALE_DAYS}. Check the year.`,
    }
  return null
}
