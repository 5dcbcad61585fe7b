import type { Product } from '../../../core/catalog/product.ts'
import type { ReaderUnits, Unit } from '../../../core/units/quantity.ts'
import { shapeWords } from '../../../core/catalog/tank-shape.ts'
import { sayQuantity, saySize } from '../../../core/units/say.ts'
import { supplyParts } from './supply-words.ts'

const FILTER_TYPES = {
  canister: 'canister',
  hang_on: 'hang-on',
  internal: 'internal',
  sponge: 'sponge',
  return_pump: 'return pump',
} as const

/** What tells one product from the next of its kind, from what the maker states: "200 W, adjustable". Empty where nothing is stated. */
export function sayProduct(product: Product, reader: ReaderUnits): string {
  return sayParts(product, reader)
    .filter((part) => part !== '')
    .join(', ')
}

function sayParts(product: Product, reader: ReaderUnits): string[] {
  const say = (value: number | undefined, unit: Unit, after = '') =>
    value === undefined ? '' : `${sayQuantity({ value, unit, digits: 0 }, reader)}${after}`
  const box = (...sides: Array<number | undefined>) => (sides.every((side) => side !== undefined) ? saySize(sides, reader) : '')
  switch (product.kind) {
    case 'tank': {
      const { spec } = product
      return [say(spec.labelVolumeL, 'L'), shapeWords(spec.shape), spec.style ?? '', box(spec.lengthMm, spec.widthMm, spec.heightMm)]
    }
    case 'kit':
      return [say(product.spec.labelVolumeL, 'L'), `${product.parts.length} parts`]
    case 'stand':
      return [
        box(product.spec.topLengthMm, product.spec.topWidthMm),
        shapeWords(product.spec.shape),
        say(product.spec.ratedLoadKg, 'kg', ' stated load') || 'no stated load',
      ]
    case 'lid':
      return [box(product.spec.lengthMm, product.spec.widthMm), shapeWords(product.spec.shape)]
    case 'mat':
      return [box(product.spec.lengthMm, product.spec.widthMm)]
    case 'filter':
      return [
        product.spec.type ? FILTER_TYPES[product.spec.type] : '',
        say(product.spec.ratedFlowLph, 'L/h'),
        say(product.spec.powerW, 'W'),
      ]
    case 'heater':
      return [
        say(product.spec.powerW, 'W'),
        product.spec.externalController ? 'own controller' : product.spec.adjustable ? 'adjustable' : '',
      ]
    case 'light':
      return [say(product.spec.lengthMm, 'mm'), say(product.spec.luminousFluxLm, 'lm'), say(product.spec.powerW, 'W')]
    case 'substrate':
      return [product.spec.type?.replace('_', ' ') ?? '', say(product.spec.packMassKg, 'kg'), say(product.spec.packVolumeL, 'L')]
    case 'conditioner':
      return [say(product.spec.packVolumeMl, 'mL'), product.spec.bindsAmmonia ? 'binds ammonia' : '']
    default:
      return supplyParts(product, say)
  }
}
