import { sayMoney } from '../money.ts'
import type { BuildCost, Tier } from '../pricing/tiers.ts'
import type { Build, BuildLine } from './draft.ts'
import { piecesOf } from './kit-parts.ts'
import type { QuoteInputs } from './revision.ts'
import { goodsCost } from './worked-build.ts'

/** One part of a kit as it would be bought. */
export interface KitPart {
  productId: string
  name: string
  quantity: number
  todayMinor: number | null
}

/** How today's difference between parts and kit adds up, minor units: parts less kit, and what of tax, delivery and other lines comes with it. */
export interface KitSums {
  partsMinor: number
  kitMinor: number
  deliveryMinor: number
  taxMinor: number
  /** Of lines that are bought elsewhere because of it. */
  othersMinor: number
}

/** A kit against the parts that it replaces in this build. */
export interface KitApart {
  name: string
  /** Those of its parts that the build uses, with what each comes to bought apart today, without tax and delivery as a line is told; null where no price is known. */
  parts: KitPart[]
  /** Null where a total is missing, and `todayMinor` with it. */
  sums: KitSums | null
  /** Its parts that the build uses and that have a price. */
  priced: number
  /** Names of those it uses that have none, and of those it does not use. */
  unpriced: string[]
  unused: string[]
  /** What the build comes to with the priced parts in the kit's place, less what it comes to with the kit, delivery and tax counted; null where a total is missing. */
  todayMinor: number | null
  fullMinor: number | null
}

type BoughtLine = Extract<BuildLine, { answer: 'buy' }>

/**
 * Each bought kit of a build held against its own parts bought apart, at the same tier and by the same rules of stores, delivery and tax: never
 * against the kit's own regular price, which says nothing of what the parts would cost. A part that the build sets aside saves nothing. Without a discount: a gift is
 * no saving of the kit's.
 *
 * Units: minor units. Errors: none; empty for an index that no build has and for a build without a kit.
 *
 * @example kitsApart(inputs, 1)[0].todayMinor // 4120: bought apart the parts would cost 41.20 more today
 */
export function kitsApart(inputs: QuoteInputs, index: number): KitApart[] {
  const build = inputs.draft.builds[index]
  if (!build) return []
  const products = new Map(inputs.products.map((product) => [product.id, product]))
  const pieces = piecesOf(build, products)
  const bought = build.lines.filter((line): line is BoughtLine => line.answer === 'buy' && products.get(line.productId)?.kind === 'kit')
  if (bought.length === 0) return []
  const plain = { ...inputs, draft: { ...inputs.draft, discount: null } }
  const whole = goodsCost(build, plain)
  return bought.map((kit) => {
    const parts = pieces.filter(({ line }) => line.id === kit.id)
    const used = parts.filter(({ setAside }) => !setAside)
    const lines = used.map(({ product, quantity }, at) => partLine(`${kit.id} ${at}`, product.id, quantity))
    const all = goodsCost(withParts(build, kit, lines), plain)
    const lacking = new Set(all.today.complete ? [] : all.today.missing.map(({ lineId }) => lineId))
    const priced = lines.filter(({ id }) => !lacking.has(id))
    const apart = priced.length === lines.length ? all : goodsCost(withParts(build, kit, priced), plain)
    return {
      name: products.get(kit.productId)?.name ?? '',
      parts: used.map(({ product, quantity }, at) => ({
        productId: product.id,
        name: product.name,
        quantity,
        todayMinor: apart.lines.find(({ lineId }) => lineId === `${kit.id} ${at}`)?.todayMinor ?? null,
      })),
      sums: sumsOf(apart, whole, kit.id),
      priced: priced.length,
      unpriced: used.filter((_, at) => lacking.has(`${kit.id} ${at}`)).map(({ product }) => product.name),
      unused: parts.filter(({ setAside }) => setAside).map(({ product }) => product.name),
      todayMinor: priced.length === 0 ? null : gap(apart, whole, 'today'),
      fullMinor: priced.length === 0 ? null : gap(apart, whole, 'full'),
    }
  })
}

const partLine = (id: string, productId: string, quantity: number): BoughtLine => ({
  id,
  answer: 'buy',
  productId,
  quantity,
  storeId: null,
  note: '',
})

const withParts = (build: Build, kit: BoughtLine, lines: readonly BoughtLine[]): Build => ({
  ...build,
  lines: build.lines.flatMap((line): BuildLine[] => (line.id === kit.id ? [...lines] : [line])),
})

/** Tax is what is left of the totals: where prices hold theirs, nothing is. */
function sumsOf(apart: BuildCost, whole: BuildCost, kitId: string): KitSums | null {
  const [parts, kit] = [apart.today, whole.today]
  if (!parts.complete || !kit.complete) return null
  const sum = ({ lines }: BuildCost): number =>
    lines.reduce((total, line) => total + (line.lineId === kitId || line.lineId.startsWith(`${kitId} `) ? (line.todayMinor ?? 0) : 0), 0)
  const [partsMinor, kitMinor] = [sum(apart), sum(whole)]
  const deliveryMinor = parts.deliveryMinor - kit.deliveryMinor
  const goodsMinor = parts.goodsMinor - kit.goodsMinor
  return {
    partsMinor,
    kitMinor,
    deliveryMinor,
    taxMinor: parts.totalMinor - kit.totalMinor - goodsMinor - deliveryMinor,
    othersMinor: goodsMinor - (partsMinor - kitMinor),
  }
}

function gap(apart: BuildCost, whole: BuildCost, tier: 'today' | 'full'): number | null {
  const total = (of: Tier): number | null => (of.complete ? of.totalMinor : null)
  const [parts, kit] = [total(apart[tier]), total(whole[tier])]
  return parts === null || kit === null ? null : parts - kit
}

/**
 * The kit against its parts in words.
 *
 * @example sayKitApart(kit, 'USD') // 'Wendlemere Start 80 kit costs $41.20 less today than its 3 parts bought apart, $22.00 less at full price.'
 */
export function sayKitApart(kit: Omit<KitApart, 'parts' | 'sums'>, currency: string): string {
  const { name, priced, unpriced, unused, todayMinor, fullMinor } = kit
  const used = priced + unpriced.length
  const aside = unused.length === 0 ? '' : ` Not counted, as this build does not use it: ${unused.join(', ')}.`
  if (todayMinor === null)
    return priced > 0 ? '' : `${name}: none of its parts has a price of its own, so what it saves is not known.${aside}`
  if (unpriced.length > 0) {
    const lack = `no price is known of ${unpriced.join(', ')}`
    const rest = `the other ${priced} of its ${used} parts alone`
    return todayMinor >= 0
      ? `${name}: ${rest} cost ${sayMoney(todayMinor, currency)} more today than the kit; ${lack}.${aside}`
      : `${name}: ${rest} cost ${sayMoney(-todayMinor, currency)} less today than the kit; ${lack}, so what it saves is not known.${aside}`
  }
  const parts = `its ${used} parts bought apart`
  const full = fullMinor === null || fullMinor === todayMinor ? '' : `, ${sayLess(fullMinor, currency)} at full price`
  return `${name} costs ${sayLess(todayMinor, currency)} today than ${parts}${full}.${aside}`.replace(
    'as much today than',
    'as much today as',
  )
}

/**
 * The rows that lead from the parts' sum to today's difference; none where it is not known.
 *
 * @example kitSumRows(kit).map(({ words }) => words) // ['Together', 'The kit', 'Difference', 'Tax that differs', 'The kit is less by']
 */
export function kitSumRows({
  sums,
  todayMinor,
  priced,
}: Pick<KitApart, 'sums' | 'todayMinor' | 'priced'>): Array<{ words: string; minor: number }> {
  if (sums === null || todayMinor === null || priced === 0) return []
  const beside = [
    { words: 'Tax that differs', minor: sums.taxMinor },
    { words: 'Delivery that differs', minor: sums.deliveryMinor },
    { words: 'Other lines, bought elsewhere', minor: sums.othersMinor },
  ].filter(({ minor }) => minor !== 0)
  return [
    { words: 'Together', minor: sums.partsMinor },
    { words: 'The kit', minor: sums.kitMinor },
    ...(beside.length === 0 ? [] : [{ words: 'Difference', minor: sums.partsMinor - sums.kitMinor }]),
    ...beside,
    { words: todayMinor < 0 ? 'The kit is more by' : 'The kit is less by', minor: Math.abs(todayMinor) },
  ]
}

const sayLess = (minor: number, currency: string): string =>
  minor === 0 ? 'as much' : `${sayMoney(Math.abs(minor), currency)} ${minor > 0 ? 'less' : 'more'}`
