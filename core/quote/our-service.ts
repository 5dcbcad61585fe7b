import type { BuildCost, Sum, Tier } from '../pricing/tiers.ts'

/** Work that the catalog has no price of: what the club or store asks for it itself. The amount is what the customer pays, tax in it. */
export interface OurService {
  id: string
  /** "Drilling a hole for the overflow". */
  name: string
  /** 1 to 999. */
  quantity: number
  /** Of one. Minor units, 0 and above. */
  priceMinor: number
}

/** Minor units. @example servicesTotal([{ id: 's', name: 'Drilling', quantity: 2, priceMinor: 1500 }]) // 3000 */
export const servicesTotal = (services: readonly OurService[]): number =>
  services.reduce((sum, { quantity, priceMinor }) => sum + quantity * priceMinor, 0)

/**
 * A build's cost with its services at our own price: the same amount in every tier, for it is seen at no store and has no sale. No discount on goods and
 * no store's tax touches it. A tier that is incomplete stays so.
 *
 * @example withServices(cost, [{ id: 's', name: 'Drilling', quantity: 1, priceMinor: 1500 }]).today // totalMinor 1500 more, servicesMinor 1500
 */
export function withServices(cost: BuildCost, services: readonly OurService[]): BuildCost {
  const servicesMinor = servicesTotal(services)
  if (servicesMinor === 0) return cost
  const add = (tier: Tier): Tier => (tier.complete ? { ...tier, ...added(tier, servicesMinor) } : tier)
  return { ...cost, full: add(cost.full), today: add(cost.today), bestSeen: add(cost.bestSeen) }
}

const added = ({ totalMinor }: Sum, servicesMinor: number): Pick<Sum, 'servicesMinor' | 'totalMinor'> => ({
  servicesMinor,
  totalMinor: totalMinor + servicesMinor,
})
