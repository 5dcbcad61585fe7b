import type { Install } from '../../core/install.ts'
import type { AssembledBuild } from '../../core/quote/revision.ts'
import type { Tier } from '../../core/pricing/tiers.ts'
import { sumPartOf, sumRowsOf, type SumPart } from '../../core/quote/sum-parts.ts'
import type { FirstPage, TierCell } from './paper.ts'
import type { Teller } from './teller.ts'

const WHY = {
  no_price: 'has no price',
  cannot_be_delivered: 'cannot be brought',
  archived: 'is no longer sold',
  no_rate: 'is priced in a currency without a rate',
} as const

/** A tier's total, or which lines keep it from being one. @example tierCell(tier, teller).words // 'no total: Torvane 150 W has no price' */
export function tierCell(tier: Tier, teller: Teller): TierCell {
  if (tier.complete) return { figure: teller.money(tier.totalMinor), words: '' }
  const [first, ...more] = tier.missing
  if (first === undefined) return { figure: null, words: 'no total: a line has no price' }
  return { figure: null, words: `no total: ${first.name} ${WHY[first.why]}${more.length > 0 ? `, and ${more.length} more` : ''}` }
}

/** Full price, today and best seen, in the order of water levels. In a store's own quote nothing was seen elsewhere. */
export function tierRows(builds: AssembledBuild[], teller: Teller, mode: Install['mode'] = 'club'): FirstPage['tiers'] {
  const cells = (pick: (build: AssembledBuild) => Tier) => builds.map((build) => tierCell(pick(build), teller))
  const all: FirstPage['tiers'] = [
    { mark: 'full', label: 'Full price', note: 'regular prices', strong: false, cells: cells((build) => build.cost.full) },
    { mark: 'today', label: 'Today', note: 'with delivery and tax', strong: true, cells: cells((build) => build.cost.today) },
    { mark: 'bestSeen', label: 'Best seen', note: 'in the last 365 days', strong: false, cells: cells((build) => build.cost.bestSeen) },
  ]
  const dated = byDateRow(builds, teller)
  if (dated) all.splice(2, 0, dated)
  return mode === 'store' ? all.filter(({ mark }) => mark !== 'bestSeen') : all
}

/** What is expected by the day of the need; no row where nothing is of any build. */
function byDateRow(builds: AssembledBuild[], teller: Teller): FirstPage['tiers'][number] | null {
  const told = builds.map(({ byDate }) => (byDate ? teller.byDate(byDate) : null))
  const label = told.find((each) => each !== null)?.label
  if (label === undefined) return null
  const cells = told.map((each, index): TierCell =>
    each
      ? { figure: each.figure, words: '', ...(each.span !== null && { range: each.span }) }
      : { figure: null, words: whyBlank(builds[index]) },
  )
  return { mark: 'byDate', label, note: 'following the advice', strong: false, cells }
}

/** Why nothing is expected of a build by a day of which something is expected of another. */
function whyBlank(build: AssembledBuild | undefined): string {
  if (build === undefined || build.cost.lines.length === 0) return 'nothing is bought'
  return build.cost.today.complete ? 'not known: too little recorded' : 'no total today'
}

/** Goods, delivery, tax and total of today, in a column that adds up; a build whose tier is incomplete has no sums at all. */
export function sumRows(builds: AssembledBuild[], teller: Teller): FirstPage['sums'] {
  const cell = (part: SumPart['part']) =>
    builds.map(({ cost }) => (cost.today.complete ? teller.bare(sumPartOf(cost.today, part)) : 'not known'))
  const total = { label: 'Today', strong: true, cells: builds.map(({ cost }) => tierCell(cost.today, teller).figure ?? 'no total') }
  if (builds.every(({ cost }) => !cost.today.complete)) return [total]
  return [
    ...sumRowsOf(builds).map(({ part, words }) => ({ label: words, strong: false, cells: cell(part) })),
    total,
    ...depositRow(builds, teller),
  ]
}

/** What is paid when the customer says yes, under the total it is taken of. */
function depositRow(builds: AssembledBuild[], teller: Teller): FirstPage['sums'] {
  if (builds.every(({ depositMinor }) => depositMinor == null)) return []
  const cells = builds.map(({ depositMinor }) => (depositMinor == null ? 'no total' : teller.bare(depositMinor)))
  return [{ label: 'Deposit', strong: false, cells }]
}
