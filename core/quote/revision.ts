import type { Region } from '../catalog/region.ts'
import type { Kind, Slot } from '../catalog/kinds.ts'
import type { Product } from '../catalog/product.ts'
import type { Store } from '../catalog/store.ts'
import type { OtherForm } from '../catalog/tank-shape.ts'
import type { CivilDate } from '../dates.ts'
import type { Install } from '../install.ts'
import type { CurrencyRate } from '../pricing/currency-rate.ts'
import type { BuildCost } from '../pricing/tiers.ts'
import type { ByDate } from '../pricing/by-date.ts'
import type { LineAdvice } from '../pricing/line-advice.ts'
import type { PriceView } from '../pricing/price-view.ts'
import type { Conditions } from '../sizing/conditions.ts'
import type { SizingReport, ToldReport } from '../sizing/report.ts'
import type { SetupPlan } from '../startup/setup-plan.ts'
import type { BuildLetter, QuoteDraft } from './draft.ts'
import type { Need } from './need.ts'
import type { SinceBefore } from './since-before.ts'

/** One row of a build as screen and paper show it: what fills a slot. */
export interface SlotRow {
  slot: Slot
  answer: 'buy' | 'kit' | 'in_kit' | 'owned' | 'not_needed' | 'missing' | 'our_price'
  lineId: string | null
  kind: Kind | null
  /** Product name with its count, the description of owned gear, or the reason it is not needed. */
  text: string
  productId: string | null
  quantity: number
  required: boolean
  /** For `missing`: what is still needed, "needs at least 140 W". */
  needs: string | null
  /** Of what is bought by the pack: needed, given and missing, on the slot's last row. Absent in what was issued before. */
  amount?: { words: string; short: boolean }
  /** What the product's spec asks of whoever sets it up: "Must stay dry: …". Absent where it asks nothing. */
  notes?: string[]
  /** What the advisor noted on a bought line; the customer reads it. Absent where nothing was, and in what was issued before it was printed. */
  lineNote?: string
  /** For `our_price`: what all of it costs, tax in it. Minor units. */
  ourPriceMinor?: number
}

/** A tank's shape with the measures that draw it, stated or in the middle of what they may be. */
export interface DrawnPlan {
  form: OtherForm
  bowMm?: number | undefined
  endMm?: number | undefined
}

/** A build worked out: its slots, its money, its physics. `assembleBuild` in assemble.ts makes it, in the browser and on the server alike. */
export interface AssembledBuild {
  id: string
  letter: BuildLetter
  name: string
  why: string
  suggested: boolean
  rows: SlotRow[]
  cost: BuildCost
  /** What it comes to by the day of the need, following the advice; absent or null where none was asked for or nothing is known. */
  byDate?: ByDate | null
  /** What to do about each bought line by then; absent where none was asked for, nothing is known, or it was issued before it was told. */
  advice?: LineAdvice[]
  /** Each bought kit against the parts that it replaces in this build, in words; absent where there is none, and in what was issued before it was told. */
  kits?: string[]
  /** Asked for when the customer chooses this build, in minor units; absent or null: none, or no total to take it of. */
  depositMinor?: number | null
  report: ToldReport
  plan: SetupPlan
  /** Tank drawing: outside size and look, null without a tank. */
  drawing: {
    lengthMm: number
    widthMm: number
    heightMm: number
    waterBelowRimMm: number
    substrateDepthMm: number
    standHeightMm: number | null
    style: 'rimmed' | 'rimless' | 'braced'
    /** Seen from above; absent is rectangular. */
    plan?: DrawnPlan
  } | null
}

/** A build without its startup plan, its report as the engine makes it: what the desk reckons at every edit. */
export interface WorkedBuild extends Omit<AssembledBuild, 'plan' | 'report'> {
  report: SizingReport
}

/** Everything that assembling needs, so that the same figures come out on screen, on the server and in a year. */
export interface QuoteInputs {
  draft: QuoteDraft
  products: Product[]
  stores: Store[]
  prices: PriceView[]
  install: Install
  /** The manager's rates of exchange; absent: none. */
  rates?: CurrencyRate[]
  /** Absent: none. */
  regions?: Region[]
  /** The day the prices are of. */
  asOf: CivilDate
}

/** What was issued. Immutable; names nobody but the advisor: the customer is one row elsewhere. */
export interface RevisionDocument {
  format: 1
  number: string
  revision: number
  issuedOn: CivilDate
  standsUntil: CivilDate
  title: string
  advisor: string
  need: Need
  conditions: Conditions
  suggestion: QuoteDraft['suggestion']
  builds: AssembledBuild[]
  included: string[]
  notIncluded: string[]
  cautions: string[]
  note: string
  discount?: QuoteDraft['discount']
  /** What must be said of the money: rates of exchange with their day and source. Absent: nothing. */
  moneyNotes?: string[]
  /** What is otherwise than in the version before; absent in a first version, and in what was issued before it was told. */
  since?: SinceBefore
  inputs: QuoteInputs
}
