import type { Region } from '../catalog/region.ts'
import { rollUp, type RolledUp, type StoreFacts } from './roll-up.ts'

/** What stores are rolled up together: all, those of one region, or those of none where there are regions. */
export interface RolledPart extends RolledUp {
  part: 'all' | 'region' | 'rest'
  /** Null but for a region. */
  regionId: string | null
  regionName: string | null
}

/**
 * One product's prices over all stores, then region by region in the order given, then at stores of no region. A store counts in each region it is in; a region where nothing is
 * known is left out, and without regions there is the whole alone.
 *
 * Units: as of `rollUp`. Nothing known at all gives an empty list.
 *
 * @example rollUpByRegion(facts, [valley]).map(({ part }) => part) // ['all', 'region', 'rest']
 */
export function rollUpByRegion(stores: readonly StoreFacts[], regions: ReadonlyArray<Omit<Region, 'version'>>): RolledPart[] {
  const inAny = new Set(regions.flatMap(({ storeIds }) => storeIds))
  const parts: RolledPart[] = [
    { part: 'all', regionId: null, regionName: null, ...rollUp(stores) },
    ...regions.map(({ id, name, storeIds }): RolledPart => {
      const here = new Set(storeIds)
      return { part: 'region', regionId: id, regionName: name, ...rollUp(stores.filter(({ storeId }) => here.has(storeId))) }
    }),
  ]
  if (regions.length > 0)
    parts.push({ part: 'rest', regionId: null, regionName: null, ...rollUp(stores.filter(({ storeId }) => !inAny.has(storeId))) })
  return parts.filter((part) => part.new !== undefined || part.used !== undefined)
}
