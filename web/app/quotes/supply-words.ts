import type { Product } from '../../../core/catalog/product.ts'
import type { Unit } from '../../../core/units/quantity.ts'

type Say = (value: number | undefined, unit: Unit, after?: string) => string

const plain = (value: string | undefined): string => value?.replaceAll('_', ' ') ?? ''

/** What a person reads first of the kinds that keep water and life going. Kinds told by their name alone have none. */
export function supplyParts(product: Product, say: Say): string[] {
  switch (product.kind) {
    case 'ammonia_source':
      return [say(product.spec.packMassG, 'g'), say(product.spec.packVolumeMl, 'mL')]
    case 'test_kit':
      return [testNames(product.spec), product.spec.tests === undefined ? '' : `${product.spec.tests} tests`]
    case 'thermometer':
      return [plain(product.spec.type), product.spec.alarm ? 'alarm' : '']
    case 'power':
      return [
        product.spec.outlets === undefined ? '' : `${product.spec.outlets} outlets`,
        product.spec.protective ? 'protective device' : '',
      ]
    case 'salt_mix':
      return [say(product.spec.packMassKg, 'kg')]
    case 'filter_media':
      return [plain(product.spec.type), say(product.spec.packVolumeL, 'L'), say(product.spec.packMassKg, 'kg')]
    case 'hardscape':
      return [plain(product.spec.type), say(product.spec.packMassKg, 'kg')]
    case 'bacteria':
      return [say(product.spec.packVolumeMl, 'mL'), say(product.spec.treatsL, 'L')]
    case 'food':
      return [plain(product.spec.form), say(product.spec.packMassG, 'g')]
    case 'plant':
      return [product.spec.light ? `${product.spec.light} light` : '', say(product.spec.heightMm, 'mm')]
    case 'livestock':
      return [say(product.spec.adultLengthMm, 'mm', ' grown'), say(product.spec.smallestVolumeL, 'L', ' or more')]
    default:
      return applianceParts(product, say)
  }
}

function applianceParts(product: Product, say: Say): string[] {
  switch (product.kind) {
    case 'chiller':
      return [say(product.spec.coolingW, 'W', ' cooling'), say(product.spec.powerW, 'W')]
    case 'air_pump':
      return [say(product.spec.airFlowLph, 'L/h', ' air'), say(product.spec.powerW, 'W')]
    case 'circulation_pump':
      return [say(product.spec.ratedFlowLph, 'L/h'), say(product.spec.powerW, 'W')]
    case 'sump':
      return [say(product.spec.totalVolumeL, 'L'), say(product.spec.operatingVolumeL, 'L', ' running')]
    case 'skimmer':
    case 'uv':
      return [say(product.spec.ratedVolumeL, 'L'), say(product.spec.powerW, 'W')]
    case 'co2':
      return [plain(product.spec.type), say(product.spec.gasMassG, 'g')]
    case 'ro_unit':
      return [say(product.spec.outputLPerDay, 'L/day')]
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
