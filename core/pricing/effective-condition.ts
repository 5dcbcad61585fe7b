import type { Condition, Sighting } from './sighting.ts'

/**
 * What a sighting is a price of. A shelf sighting below its own printed "was" price is a sale, whatever button was pressed.
 *
 * @example effectiveCondition({ condition: 'shelf', priceMinor: 15199, printedRegularMinor: 18999 }) // 'sale'
 */
export function effectiveCondition({
  condition,
  priceMinor,
  printedRegularMinor,
}: Pick<Sighting, 'condition' | 'priceMinor' | 'printedRegularMinor'>): Condition {
  return condition === 'shelf' && printedRegularMinor !== null && priceMinor < printedRegularMinor ? 'sale' : condition
}
