/** Id of a livestock group that comes with the service. */
export type SeededGroupId =
  | 'small-tropical'
  | 'labyrinth'
  | 'livebearers-hard'
  | 'blackwater-soft'
  | 'warm-cichlids'
  | 'african-lake'
  | 'goldfish-fancy'
  | 'cool-stream'
  | 'dwarf-shrimp'
  | 'marine-fish'
  | 'soft-coral-reef'

/** What a plant or an animal asks of its tank, where it is known. */
export interface PlantSpec {
  light?: 'low' | 'medium' | 'high'
  place?: 'front' | 'middle' | 'back' | 'on_hardscape' | 'floating'
  lowestC?: number
  highestC?: number
  heightMm?: number
  co2Needed?: boolean
  water?: 'fresh' | 'salt'
}
export interface LivestockSpec {
  /** Id of a livestock group of the place: one that came with the service or one of its own. */
  group?: string
  smallestVolumeL?: number
  lowestC?: number
  highestC?: number
  adultLengthMm?: number
  /** Fewer are unwell. */
  leastTogether?: number
  jumps?: boolean
}
