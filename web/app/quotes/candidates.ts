import { COMMON_SIZES } from '../../../core/catalog/common-sizes.ts'
import type { Product } from '../../../core/catalog/product.ts'
import { workBuild } from '../../../core/quote/worked-build.ts'
import type { BuildLine } from '../../../core/quote/draft.ts'
import type { Need } from '../../../core/quote/need.ts'
import type { WorkedBuild, QuoteInputs } from '../../../core/quote/revision.ts'
import type { Verdict } from '../../../core/sizing/finding.ts'
import { VERDICTS } from '../../../core/sizing/finding.ts'
import type { Slot } from '../../../core/catalog/kinds.ts'
import type { PriceView } from '../../../core/pricing/price-view.ts'
import { besideField } from './beside-kit.tsx'
import { editDraft } from './draft-edit.ts'
import { meetsWant, type Want } from './meets-want.ts'
import { settlesWant } from './settles-want.ts'
import { slotOfCheck } from './slot-findings.ts'
import { sayDifference } from './tier-words.ts'

/** A product that may fill the slot, with what choosing it would do to the build. */
export interface Candidate {
  product: Product
  line: BuildLine
  replaces: string[]
  /** "adds $61.45", "saves $12.00"; empty where no total comes of it. */
  difference: string
  /** What the build's total today would become, minor units; null where no total comes of it. */
  totalMinor: number | null
  /** Cheapest today where the customer buys; null: no price. */
  offer: { minor: number; storeName: string } | null
  /** Slots with a part that does not fit, with it in place. */
  illFitting: Slot[]
  /** Worst verdict about this slot with it in place. */
  verdict: Verdict | null
  /** False where the finding that it was looked for would stay, or another of its slot would come. */
  settles: boolean
}

interface Question {
  inputs: QuoteInputs
  build: WorkedBuild
  slot: Slot
  quantity: number
  replaces: string[]
  /** In addition to what a kit brings for the slot. */
  beside?: boolean | undefined
  want?: Want | null
  /** What came with the candidates: kit parts and prices. */
  fetched: { products: Product[]; prices: PriceView[] }
}

/** The build with the product in place, worked out by the same rules as the desk's. */
export function candidateOf(product: Product, question: Question): Candidate {
  const { inputs, build, slot, quantity, replaces, beside = false, want = null, fetched } = question
  const line: BuildLine = {
    id: `try-${product.id}`,
    answer: 'buy',
    productId: product.id,
    quantity,
    storeId: null,
    note: '',
    ...besideField(beside),
  }
  const index = inputs.draft.builds.findIndex((one) => one.id === build.id)
  const draft = editDraft(inputs.draft, { do: 'put_line', buildId: build.id, line, replaces })
  const known = new Set(inputs.products.map((one) => one.id))
  const products = [...inputs.products, ...[product, ...fetched.products].filter((one) => !known.has(one.id))]
  const prices = [
    ...inputs.prices.filter((price) => price.productId !== product.id),
    ...fetched.prices.filter((price) => price.productId === product.id),
  ]
  const tried = workBuild({ ...inputs, draft, products, prices }, index)
  const cost = tried.cost.lines.find((one) => one.lineId === line.id)
  const storeName = inputs.stores.find((store) => store.id === cost?.storeId)?.name
  return {
    product, line, replaces,
    totalMinor: tried.cost.today.complete ? tried.cost.today.totalMinor : null,
    difference: sayDifference(build.cost.today, tried.cost.today, inputs.install.currency),
    offer: cost?.todayMinor != null && storeName !== undefined ? { minor: cost.todayMinor, storeName } : null,
    illFitting: illFittingSlots(tried),
    verdict: worstVerdict(tried, slot),
    settles: want === null || settlesWant(build, tried, want),
  } // prettier-ignore
}

interface Order {
  need: Need
  words: string
}

/** Each product tried, those that would settle nothing left out; what was meant by the words first, then by length, then the best. */
export function triedInOrder(
  products: readonly Product[],
  question: Omit<Question, 'quantity'> & { quantityOf: (product: Product) => number },
  { need, words }: Order,
): Candidate[] {
  return products
    .map((product) => candidateOf(product, { ...question, quantity: question.quantityOf(product) }))
    .filter(({ settles }) => settles)
    .map((one) => ({ one, phrase: saysPhrase(one.product, words) ? 0 : 1, far: farFrom(need, one.product, question.fetched.products) }))
    .toSorted((a, b) => a.phrase - b.phrase || a.far - b.far || bestFirst(a.one, b.one))
    .map(({ one }) => one)
}

/** Slots of a build with a part that does not fit. @example illFittingSlots(build) // ['heat'] */
export const illFittingSlots = ({ report }: Pick<WorkedBuild, 'report'>): Slot[] => [
  ...new Set(report.findings.flatMap((finding) => (finding.verdict === 'does_not_fit' ? (slotOfCheck(finding.check) ?? []) : []))),
]

/** The worst that is found about a slot's part; null where no check looks at it. */
export function worstVerdict(build: Pick<WorkedBuild, 'report'>, slot: Slot): Verdict | null {
  const verdicts = build.report.findings.filter((finding) => slotOfCheck(finding.check) === slot).map((finding) => finding.verdict)
  return VERDICTS.find((verdict) => verdicts.includes(verdict)) ?? null
}

/** What fits before what may not, then what adds least to the total, delivery and tax included; without a total last. */
export function bestFirst(a: Candidate, b: Candidate): number {
  const rank = (one: Candidate): number => (one.verdict === null ? 0 : -VERDICTS.indexOf(one.verdict))
  const total = (one: Candidate): number => one.totalMinor ?? Number.MAX_SAFE_INTEGER
  const price = (one: Candidate): number => one.offer?.minor ?? Number.MAX_SAFE_INTEGER
  return rank(a) - rank(b) || total(a) - total(b) || price(a) - price(b)
}

interface Sides {
  lengthMm: number
  widthMm?: number
  heightMm?: number
}

/** What was asked for: a length, or all sides of a size that the trade calls by a name; undefined where nobody said. */
const askedSides = ({ lengthMm, commonSizeId }: Pick<Need, 'lengthMm' | 'commonSizeId'>): Sides | undefined =>
  lengthMm === null ? COMMON_SIZES.find((size) => size.id === commonSizeId) : { lengthMm }

/** A side that nobody stated may be as far off as this, mm: more than any tank of the same length is. */
const UNSTATED_MM = 1000
const apart = (asked: number | undefined, stated: number | undefined): number =>
  asked === undefined ? 0 : stated === undefined ? UNSTATED_MM : Math.abs(stated - asked)

/**
 * How far a tank is from what was asked, in mm: its length, or all three sides of a common size, since a 55 is as long as a 75. 0 for whatever is no tank,
 * or where nothing was asked. A tank without a stated length comes last.
 *
 * @example farFrom({ lengthMm: 900, commonSizeId: null }, tankOf600mm) // 300
 */
export function farFrom(need: Pick<Need, 'lengthMm' | 'commonSizeId'>, product: Product, parts: readonly Product[] = []): number {
  const asked = askedSides(need)
  if (asked === undefined || (product.kind !== 'tank' && product.kind !== 'kit')) return 0
  const tank =
    product.kind === 'kit' ? parts.find((part) => part.kind === 'tank' && product.parts.some((one) => one.productId === part.id)) : product
  if (tank?.kind !== 'tank' || tank.spec.lengthMm === undefined) return Number.MAX_SAFE_INTEGER
  const { lengthMm, widthMm, heightMm } = tank.spec
  return apart(asked.lengthMm, lengthMm) + apart(asked.widthMm, widthMm) + apart(asked.heightMm, heightMm)
}

/** Whose name holds the very words that were typed goes first: it is what was meant. */
export const saysPhrase = (product: Product, words: string): boolean =>
  words !== '' && product.name.toLowerCase().includes(words.toLowerCase())

/** Products that meet the finding's wish first, those that may meet it next; others are left out. */
export function inOrderOfWant(products: Product[], want: Want | null): Product[] {
  if (!want) return products
  const judged = products.map((product) => ({ product, meets: meetsWant(product, want) }))
  return [...judged.filter((one) => one.meets === 'yes'), ...judged.filter((one) => one.meets === 'unstated')].map((one) => one.product)
}

/** "2 x torvane" asks for two. @example readSearch('2 x torvane') // { quantity: 2, words: 'torvane' } */
export function readSearch(text: string): { quantity: number | null; words: string } {
  const match = /^\s*(\d{1,3})\s*[x×]\s*(.*)$/i.exec(text)
  const quantity = match ? Number(match[1]) : null
  return quantity !== null && quantity >= 1 ? { quantity, words: (match?.[2] ?? '').trim() } : { quantity: null, words: text.trim() }
}
