import type { Product } from '../../../core/catalog/product.ts'
import type { ReaderUnits, Unit } from '../../../core/units/quantity.ts'
import { sayQuantity, saySize } from '../../../core/units/say.ts'

const FILTER_TYPES = { canister: 'canister', hang_on: 'hang-on', internal: 'internal', sponge: 'sponge' } as const

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
      return [say(spec.labelVolumeL, 'L'), spec.style ?? '', box(spec.lengthMm, spec.widthMm, spec.heightMm)]
    }
    case 'kit':
      return [say(product.spec.labelVolumeL, 'L'), `${product.parts.length} parts`]
    case 'stand':
      return [
        box(product.spec.topLengthMm, product.spec.topWidthMm),
        say(product.spec.ratedLoadKg, 'kg', ' stated load') || 'no stated load',
      ]
    case 'mat':
    case 'lid':
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
    case 'ammonia_source':
      return [say(product.spec.packMassG, 'g'), say(product.spec.packVolumeMl, 'mL')]
    case 'test_kit':
      return [testNames(product.spec), product.spec.tests === undefined ? '' : `${product.spec.tests} tests`]
    case 'thermometer':
      return [product.spec.type ?? '', product.spec.alarm ? 'alarm' : '']
    case 'power':
      return [
        product.spec.outlets === undefined ? '' : `${product.spec.outlets} outlets`,
        product.spec.protective ? 'protective device' : '',
      ]
    default:
      return otherParts(product, say)
  }
}

type Say = (value: number | undefined, unit: Unit, after?: string) => string
type Other = Exclude<
  Product,
  {
    kind:
      | 'tank'
      | 'kit'
      | 'stand'
      | 'mat'
      | 'lid'
      | 'filter'
      | 'heater'
      | 'light'
      | 'substrate'
      | 'conditioner'
      | 'ammonia_source'
      | 'test_kit'
      | 'thermometer'
      | 'power'
  }
>

/** The kinds that stand beside the basic ones: the two or three figures that a person reads first. */
function otherParts(product: Other, say: Say): string[] {
  switch (product.kind) {
    case 'chiller':
      return [say(product.spec.coolingW, 'W', ' cooling'), say(product.spec.powerW, 'W')]
    case 'air_pump':
      return [say(product.spec.airFlowLph, 'L/h', ' air'), say(product.spec.powerW, 'W')]
    case 'circulation_pump':
      return [say(product.spec.ratedFlowLph, 'L/h'), say(product.spec.powerW, 'W')]
    case 'skimmer':
    case 'uv':
      return [say(product.spec.ratedVolumeL, 'L'), say(product.spec.powerW, 'W')]
    case 'co2':
      return [product.spec.type ?? '', say(product.spec.gasMassG, 'g')]
    case 'salt_mix':
      return [say(product.spec.packMassKg, 'kg')]
    case 'filter_media':
      return [product.spec.type ?? '', say(product.spec.packVolumeL, 'L'), say(product.spec.packMassKg, 'kg')]
    case 'hardscape':
      return [product.spec.type?.replace('_', ' ') ?? '', say(product.spec.packMassKg, 'kg')]
    case 'bacteria':
      return [say(product.spec.packVolumeMl, 'mL'), say(product.spec.treatsL, 'L')]
    case 'ro_unit':
      return [say(product.spec.outputLPerDay, 'L/day')]
    case 'food':
      return [product.spec.form ?? '', say(product.spec.packMassG, 'g')]
    case 'plant':
      return [product.spec.light ? `${product.spec.light} light` : '', say(product.spec.heightMm, 'mm')]
    case 'livestock':
      return [say(product.spec.adultLengthMm, 'mm', ' grown'), say(product.spec.smallestVolumeL, 'L', ' or more')]
    default:
      return []
  }
}

function testNames(spec: Extract<Product, { kind: 'test_kit' }>['spec']): string {
  const measured = [
    [spec.measuresAmmonia, 'ammonia'], [spec.measuresNitrite, 'nitrite'], [spec.measuresNitrate, 'nitrate'], [spec.measuresPh, 'pH'], [spec.measuresKh, 'KH'],
  ] as const // prettier-ignore
  return measured.flatMap(([measures, name]) => (measures ? [name] : [])).join(', ')
}
