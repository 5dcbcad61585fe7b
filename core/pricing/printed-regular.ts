import type { Sighting } from './sighting.ts'

/**
 * Whether a sale or a clearance costs more than the regular price on its own tag: then one of the three is misread. Minor units of one store.
 *
 * @example isAboveItsTag({ condition: 'sale', priceMinor: 15900, printedRegularMinor: 12900 }) // true
 */
export const isAboveItsTag = ({
  condition,
  priceMinor,
  printedRegularMinor,
}: Pick<Sighting, 'condition' | 'priceMinor' | 'printedRegularMinor'>): boolean =>
  (condition === 'sale' || condition === 'clearance') && printedRegularMinor !== null && printedRegularMinor < priceMinor

/** What is told at the regular price, with the fix. */
export const ABOVE_ITS_TAG =
  'The regular price on the tag is lower than the price. Check the two amounts; without a sale it is a shelf price.'
