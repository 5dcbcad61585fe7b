import type { Product } from '../catalog/product.ts'
import type { ListedPrice } from './listed-price.ts'
import type { PriceView } from './price-view.ts'
import type { RolledPart } from './roll-up-by-region.ts'
import type { Sighting } from './sighting.ts'

/** A sighting with the names a reader sees; what the viewer may do with it. */
export interface SightingRow extends Sighting {
  productName: string
  storeName: string
  reporterName: string
  /** The viewer is its reporter, or, where somebody posted it by hand, was invited by or invited the reporter: may not confirm. */
  own: boolean
  /** It came with a file: the word of a list, not of whoever imported it. */
  imported?: boolean
  /** How the viewer is tied to whoever posted it: inviter and invitee do not count as two. */
  tie?: 'invited_you' | 'invited_by_you' | null
  /** Why the viewer's own word on a list does not count yet; null where it does, or none was said. */
  oneMore?: string | null
  mayVote: boolean
  myVote: 'confirm' | 'dispute' | null
  /** Why a manager withdrew it; null where its reporter did, or nobody. */
  withdrawnReason: string | null
  /** Names of those who found it gone, for managers; else null. */
  goneBy?: string[] | null
}

/**
 * Of the people tied to whoever brought in a list the first does not count.
 *
 * @example oneMoreWords('confirm') // 'One more is needed: …'
 */
export const oneMoreWords = (vote: 'confirm' | 'dispute'): string =>
  `One more is needed: you and whoever brought in this list are one voice, since one of you invited the other. It counts once another member ${vote === 'confirm' ? 'confirms' : 'disputes'} it too.`

/** All that a product page shows: newest sighting first. */
export interface PriceRecord {
  product: Product
  /** Of a long record the newest, and those behind the figures. */
  sightings: SightingRow[]
  /** How many there are, withdrawn ones too. */
  total: number
  views: PriceView[]
  /** Over all stores of the install's currency, and by region. */
  rolledUp: RolledPart[]
  /** What our own list asks, where the place is a store and has it; else null. */
  listed: ListedPrice | null
  asOf: string
}

/** One row of the board: newest accepted sighting of a product at a store, and how it stands. */
export interface BoardRow {
  sighting: SightingRow
  kind: Product['kind']
  /** Regular price there, if known. */
  regularMinor: number | null
  /** 1 − price/regular; null where the regular price is not known. */
  underRegular: number | null
  /** Members behind this price there, at least; absent in a board that a phone keeps of before. */
  members?: number
  /** True where it was found gone, the sale's last day is past or the rule's days are over. */
  over: boolean
}
