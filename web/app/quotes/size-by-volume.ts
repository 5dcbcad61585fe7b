import { COMMON_SIZES, type CommonSize } from '../../../core/catalog/common-sizes.ts'
import { parseQuantity } from '../../../core/units/parse.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'

/** As near as a label is rounded: the volume names this size and no other. Own. */
const SAME = 0.01
/** So near that it may be what was meant. Own. */
const NEAR = 0.05
/** The nearest, where none is near: enough to see what there is below and above. */
const NEAREST = 3

const VOLUME =
  /^(\d+(?:[.,]\d+)?)\s*-?\s*(us|u\.s\.|imp|imperial)?\s*-?\s*(gal(?:lon)?s?|l|lit(?:er|re)s?|ltrs?)\.?(?:\s*(?:tank|aquarium))?$/i

/** Sizes that a volume may mean, and whether the first is surely it. */
export interface SizesByVolume {
  sizes: CommonSize[]
  sure: boolean
}

/**
 * The common sizes that are called by a volume, or come near it; null where the text is no volume. Gallons mean the sizes labelled in gallons, litres the
 * metric ones.
 *
 * @example sizesByVolume('40-gallon', US)?.sizes.map(({ label }) => label) // ['40 breeder', '40 long']
 */
export function sizesByVolume(text: string, reader: ReaderUnits): SizesByVolume | null {
  const [, figure, country, unit] = VOLUME.exec(text.trim()) ?? []
  if (figure === undefined || unit === undefined) return null
  const inGallons = unit.toLowerCase().startsWith('g')
  const name = inGallons ? `${country === undefined ? '' : /^u/i.test(country) ? 'us' : 'imp'}gal` : 'L'
  const read = parseQuantity(`${figure} ${name}`, 'L', reader)
  if (!read.ok || read.value <= 0) return null
  const off = (size: CommonSize): number => Math.abs(size.labelVolumeL - read.value) / read.value
  const byNearness = COMMON_SIZES.filter(({ system }) => system === (inGallons ? 'us' : 'metric')).toSorted((a, b) => off(a) - off(b))
  const near = byNearness.filter((size) => off(size) <= NEAR)
  const same = near.filter((size) => off(size) <= SAME)
  if (same.length > 0) return { sizes: same, sure: same.length === 1 }
  return { sizes: near.length > 0 ? near : byNearness.slice(0, NEAREST), sure: false }
}
