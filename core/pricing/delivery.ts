import type { Store } from '../catalog/store.ts'

/**
 * What a store charges for bringing one day's goods, or that it does not bring them.
 *
 * A store that is pickup only costs nothing: its goods are collected. An online store without delivery cannot be collected from, so that
 * nothing reaches the customer. A surcharge for oversize goods is charged once a delivery, also where the delivery itself is free.
 *
 * Units: minor units as the store prints them, tax as it prints it; `goodsMinor` is the day's goods there. Range: 0 and above.
 *
 * @example deliveryFee({ kind: 'local', delivery: { kind: 'pickup_only' } }, 12000, false) // 0
 * @example deliveryFee({ kind: 'online', delivery: { kind: 'free_over', feeMinor: 990, freeOverMinor: 7500, oversizeMinor: 4000 } }, 7500, true) // 4000
 */
export function deliveryFee(
  store: Pick<Store, 'kind' | 'delivery'>,
  goodsMinor: number,
  anyOversize: boolean,
): number | 'cannot_be_delivered' {
  const { delivery } = store
  if (delivery.kind === 'pickup_only') return canReach(store) ? 0 : 'cannot_be_delivered'
  const surcharge = anyOversize ? delivery.oversizeMinor : 0
  if (delivery.kind === 'free_over' && goodsMinor >= delivery.freeOverMinor) return surcharge
  return delivery.feeMinor + surcharge
}

/** Whether goods of this store can reach the customer at all. */
export const canReach = ({ kind, delivery }: Pick<Store, 'kind' | 'delivery'>): boolean =>
  kind === 'local' || delivery.kind !== 'pickup_only'
