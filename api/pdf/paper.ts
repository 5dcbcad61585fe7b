import type { AdvicePaper } from './advice-on-paper.ts'
import type { VerdictCount } from '../../core/sizing/count-words.ts'
import type { Verdict } from '../../core/sizing/finding.ts'

/**
 * What the template is given: every figure already said in the reader's units, every date in words. Plain text and numbers only;
 * the template places them as values and never reads them as markup.
 */
export interface Paper {
  size: 'a4' | 'us-letter'
  /** Year, month and day of the document: the PDF carries this date and no clock's. */
  date: [number, number, number]
  docTitle: string
  head: { club: string; quote: string; version: string; date: string; draft: boolean }
  first: FirstPage
  /** What is otherwise than in the version before, build by build; null in a first version. */
  since: SincePaper | null
  detail: BuildPaper
  others: BuildPaper[]
  advice: AdvicePaper | null
  running: RunningPaper | null
  /** Of the build told in full. */
  drawings: DrawingPaper[]
  /** Of the build told in full. */
  reckoned: ReckonedPaper | null
  cautions: CautionPaper[]
  plan: PlanPaper
}

export interface SincePaper {
  version: string
  builds: Array<{ letter: string; name: string; changes: string[] }>
}

export interface FirstPage {
  title: string
  customer: string
  need: string
  /** What each build costs more or less than in the version before; empty in a first version. */
  since: string
  facts: Array<{ label: string; value: string; strong: boolean }>
  builds: Array<{ letter: string; name: string; size: string; why: string; suggested: boolean; drawn: boolean; alt: string }>
  suggestion: { letter: string; name: string; reason: string } | null
  tiers: Array<{ mark: 'full' | 'today' | 'byDate' | 'bestSeen'; label: string; note: string; strong: boolean; cells: TierCell[] }>
  sizing: VerdictCount[][]
  priceHeading: string
  anySale: boolean
  included: Array<{ slot: string; cells: IncludedItem[][] }>
  sums: Array<{ label: string; strong: boolean; cells: string[] }>
  findings: FirstFinding[]
  /** What to find out next, over all builds; empty in what was issued before they were asked. */
  questions: string[]
  notIncluded: string
  priceNote: string
  note: string
  caution: string
  link: LinkPaper | null
}
/** How page one is laid out. All lengths are points. */
export interface PageOneLayout {
  text: number
  /** Above and below a row of a table. */
  row: number
  /** Between parts of the page. */
  gap: number
  /** Between things of one part. */
  between: number
  title: number
  stand: 'whole' | 'cut'
  qr: number
  /** Size and reason of a build in one run. */
  runIn: boolean
  /** What is included stands on page one, else on the next. */
  together: boolean
  /** Width of the facts beside the title, of the labels, between columns, of a price, of the link in words. */
  facts: number
  label: number
  columnGap: number
  price: number
  link: number
  /** Height of the line over the builds, with its words where one is suggested. */
  suggestLine: number
}
/** A figure, or the words that stand in its place: never a total with a hole in it. */
export interface TierCell {
  figure: string | null
  words: string
  /** Said small under the figure. */
  range?: string
}
export interface IncludedItem {
  text: string
  /** What is said where the text takes more than one line; empty where it may. */
  short: string
  price: string
  sale: boolean
  /** Said in the quieter ink: in the kit, owned, not needed. */
  quiet: boolean
  /** Not chosen or without a price: the hatch and the words. */
  open: boolean
}
export interface FirstFinding {
  letters: string
  title: string
  verdict: Verdict
  word: string
  sentence: string
  action: string
}
export interface LinkPaper {
  art: string
  address: string
  words: string
}

export interface BuildPaper {
  letter: string
  name: string
  suggested: boolean
  lines: LinePaper[]
  also: Array<{ slot: string; text: string }>
  /** What the specs of its parts ask for, each once. */
  notes: Array<{ about: string; text: string }>
  /** Under the lines, where any states return days or a warranty. */
  termsNote: string
  /** Heads of the columns that say where a price comes from. */
  seenHeads: [string, string]
  /** Whether any receipt has a discount: else it has no column. */
  discounted: boolean
  /** `tax` has a line a rate. */
  receipts: Array<{ store: string; terms: string; goods: string; discount: string; delivery: string; tax: string[]; total: string }>
  total: TierCell
  sizing: SizingPaper
}
export interface SizingPaper {
  /** With all that stands behind them. */
  findings: FindingPaper[]
  /** In a row each. */
  fits: FitPaper[]
  /** What the rows marked as assumed rest on. */
  assumed: string
  /** Titles of findings that are word for word those of the build told in full. */
  same: string
  /** Titles of the checks that fit, where only the rest is told in full. */
  fitting: string
}
export interface FitPaper {
  title: string
  value: string
  limit: string
  /** Where there is nothing to measure: what was seen. */
  said: string
  assumed: boolean
}
export interface LinePaper {
  text: string
  /** Return days and warranty; empty where neither is stated. */
  terms: string
  /** What the advisor noted on the line; empty where nothing. */
  note: string
  store: string
  how: string
  sale: boolean
  seen: string
  lastDay: string
  regular: string
  price: string | null
}
export interface FindingPaper {
  title: string
  verdict: Verdict
  word: string
  value: string
  limit: string
  reason: string
  action: string
  /** What the value may come to over all that is assumed, and what would change the verdict; empty where nothing. */
  range: string
  turns: string
  assumed: string
  missing: string
  caution: string
}

export interface RunningPaper {
  letters: string[]
  rows: Array<{ what: string; cells: string[] }>
  energy: string[]
  cost: string[]
  note: string
}
/** How findings came about. */
export interface ReckonedPaper {
  /** Each thing once, by where it comes from. */
  went: Array<{ head: string; rows: Array<{ name: string; value: string }> }>
  /** `from` names what of it goes in, `worked` is the sum with its numbers, line after line. */
  checks: Array<{
    title: string
    value: string
    limit: string
    formula: string
    worked: Array<{ name: string; value: string }>
    from: string
    source: string
  }>
  /** What the units of a sum are in the reader's; empty where they are his own. */
  units: string
}
/** A drawing of a finding, with what it says. */
export interface DrawingPaper {
  art: string
  title: string
  says: string
}
export interface CautionPaper {
  title: string
  text: string
  /** Of the checklist, that tells it in full; null where none does. */
  step: number | null
}

export interface PlanPaper {
  letter: string
  title: string
  notComputed: string[]
  groups: Array<{ name: string; steps: StepPaper[] }>
  link: LinkPaper | null
  contact: string
}
export interface StepPaper {
  number: number
  title: string
  when: string
  why: string
  amounts: Array<{ label: string; value: string }>
  actions: string[]
  howLong: string
  stop: string
  done: string
  caution: string
  /** The first step that calls for this caution: there it stands in full, across the step. */
  cautionFirst: boolean
  drawing: 'loop' | 'level' | null
  alt: string
}
