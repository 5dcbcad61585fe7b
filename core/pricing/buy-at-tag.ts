import { sayMoney } from '../money.ts'

/** A price to buy at with tax, and what a tag shows then; of one piece, minor units. */
export interface BuyAt {
  priceToBuyAtMinor: number
  /** Of stores whose tags differ the lowest. */
  buyAtTagMinor: number
  tagsAgree: boolean
}

/**
 * What a tag shows where a piece comes to its price to buy at with tax; empty where the tag shows that very price.
 *
 * @example sayBuyAtTag({ priceToBuyAtMinor: 17914, buyAtTagMinor: 16900, tagsAgree: true }, 'USD') // 'On the tag that is $169.00, before tax.'
 */
export function sayBuyAtTag({ priceToBuyAtMinor, buyAtTagMinor, tagsAgree }: BuyAt, currency: string): string {
  if (!tagsAgree) return 'What the tag shows then differs by store: some print the tax in it, some add it, some have none.'
  return buyAtTagMinor >= priceToBuyAtMinor ? '' : `On the tag that is ${sayMoney(buyAtTagMinor, currency)}, before tax.`
}
