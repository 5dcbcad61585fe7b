import { scaleLinear } from 'd3-scale'
import { currencyExponent, sayMoney } from '../../core/money.ts'
import type { ByDate } from '../../core/pricing/by-date.ts'
import type { BuildCost, Tier } from '../../core/pricing/tiers.ts'
import { framed, label, px, textWidth, type PlotOptions } from './frame.ts'
import { paintFor, type Paint } from './palette.ts'

/** Totals of one build; null where the tier is incomplete, and then nothing is drawn for it. */
export interface StaffBuild {
  letter: string
  name: string
  fullMinor: number | null
  todayMinor: number | null
  bestSeenMinor: number | null
  /** What is expected by a date, with its range; absent or null: nothing is. */
  byDate?: Pick<ByDate, 'expectedMinor' | 'low10Minor' | 'high90Minor'> | null
}
export interface StaffScale {
  lowMinor: number
  highMinor: number
}
interface StaffOptions extends PlotOptions {
  currency: string
  width?: number
}

const totalOf = (tier: Tier): number | null => (tier.complete ? tier.totalMinor : null)
export const staffBuildOf = (build: { letter: string; name: string; cost: BuildCost; byDate?: ByDate | null }): StaffBuild => ({
  letter: build.letter,
  name: build.name,
  fullMinor: totalOf(build.cost.full),
  todayMinor: totalOf(build.cost.today),
  bestSeenMinor: totalOf(build.cost.bestSeen),
  byDate: build.byDate ?? null,
})

const figuresOf = (build: StaffBuild): number[] =>
  [build.bestSeenMinor, build.todayMinor, build.fullMinor, build.byDate?.low10Minor ?? null, build.byDate?.high90Minor ?? null].filter(
    (minor) => minor !== null,
  )

/** One scale for all builds, ends on round figures, the budget inside. Null where no tier of any build is complete. */
export function staffScale(builds: readonly StaffBuild[], budgetMinor: number | null): StaffScale | null {
  const figures = builds.flatMap(figuresOf)
  if (figures.length === 0) return null
  const all = budgetMinor === null ? figures : [...figures, budgetMinor]
  const low = Math.min(...all)
  const high = Math.max(...all)
  const room = Math.max((high - low) * 0.06, high * 0.02, 1)
  const [lowMinor = 0, highMinor = 1] = scaleLinear()
    .domain([Math.max(0, low - room), high + room])
    .nice(8)
    .domain()
  return { lowMinor: Math.round(lowMinor), highMinor: Math.round(highMinor) }
}

const sayTier = (word: string, minor: number | null, currency: string): string =>
  `${word} ${minor === null ? 'incomplete' : sayMoney(minor, currency)}`

function describe(build: StaffBuild, budgetMinor: number | null, currency: string): string {
  const tiers = [
    sayTier('best seen', build.bestSeenMinor, currency),
    ...(build.byDate ? [`by the date about ${sayMoney(build.byDate.expectedMinor, currency)}`] : []),
    sayTier('today', build.todayMinor, currency),
    sayTier('full price', build.fullMinor, currency),
  ]
  return [...tiers, ...(budgetMinor === null ? [] : [`budget ${sayMoney(budgetMinor, currency)}`])].join(', ')
}

/** The marks of one build on a level at `y`. */
function marks(build: StaffBuild, x: (minor: number) => number, y: number, paper: boolean | undefined): string {
  const paint = paintFor(paper)
  const { fullMinor, todayMinor, bestSeenMinor } = build
  const full =
    fullMinor === null
      ? ''
      : `<path class="staff-full" d="M${px(x(fullMinor))} ${px(y - 6)}v12" stroke="${paint('ink')}" stroke-width="2"/>`
  const best =
    bestSeenMinor === null
      ? ''
      : `<path class="staff-best" d="M${px(x(bestSeenMinor))} ${px(y)}v7" stroke="${paint('ink')}" stroke-width="2"/>`
  const now =
    todayMinor === null ? '' : `<path class="staff-today" d="M${px(x(todayMinor))} ${px(y - 2)}l-4.4-7.5h8.8z" fill="${paint('glass')}"/>`
  const span =
    bestSeenMinor === null || fullMinor === null
      ? ''
      : `<path d="M${px(x(bestSeenMinor))} ${px(y)}H${px(x(fullMinor))}" stroke="${paint('ink-2')}" stroke-width="2.5"/>`
  return span + band(build, x, y, paint) + full + best + now
}

/** What 8 of 10 outcomes by the date lie in, as a thick band with an open pointer at the expected one. */
function band({ byDate }: StaffBuild, x: (minor: number) => number, y: number, paint: Paint): string {
  if (!byDate || byDate.low10Minor === byDate.high90Minor) return ''
  const [low, high, expected] = [x(byDate.low10Minor), x(byDate.high90Minor), x(byDate.expectedMinor)]
  return (
    `<rect class="staff-date" x="${px(low)}" y="${px(y - 3)}" width="${px(Math.max(1, high - low))}" height="6" fill="${paint('water')}" stroke="${paint('glass')}"/>` +
    `<path d="M${px(expected)} ${px(y + 3)}l-3.6 6h7.2z" fill="${paint('paper')}" stroke="${paint('glass')}"/>`
  )
}

const horizontal = (scale: StaffScale, from: number, to: number): ((minor: number) => number) => {
  const place = scaleLinear().domain([scale.lowMinor, scale.highMinor]).range([from, to]).clamp(true)
  return (minor) => place(minor)
}

/** One build's levels, for a column of its own; give every column the same scale. */
export function staffOfBuild(build: StaffBuild, scale: StaffScale, options: StaffOptions & { budgetMinor: number | null }): string {
  const width = options.width ?? 196
  const paint = paintFor(options.paper)
  const x = horizontal(scale, 6, width - 6)
  const budget =
    options.budgetMinor === null
      ? ''
      : `<path class="staff-budget" d="M${px(x(options.budgetMinor))} 3V28" stroke="${paint('ink')}" stroke-dasharray="2 2"/>`
  return framed(
    {
      ...options,
      width,
      height: 30,
      className: 'staff',
      title: `Build ${build.letter}: its totals on one scale`,
      desc: describe(build, options.budgetMinor, options.currency),
    },
    `<path d="M4 17H${px(width - 4)}" stroke="${paint('edge')}"/>${budget}${marks(build, x, 17, options.paper)}`,
  )
}

const ROW = 28
const TOP = 22
const GUTTER = 22

/** "$1,300": an end of a scale without decimals where there are none. */
const sayRound = (minor: number, currency: string): string => {
  const said = sayMoney(minor, currency)
  return minor % 10 ** currencyExponent(currency) === 0 ? said.replace(/\.0+$/, '') : said
}

/** All builds on one staff, a level each, with one scale and the budget dashed through all of them. Empty text where no tier is complete. */
export function staffPlot(builds: readonly StaffBuild[], budgetMinor: number | null, options: StaffOptions): string {
  const scale = staffScale(builds, budgetMinor)
  if (scale === null) return ''
  const width = options.width ?? 358
  const paint = paintFor(options.paper)
  const x = horizontal(scale, GUTTER + 4, width - 6)
  const foot = TOP + builds.length * ROW
  const rows = builds.map((build, index) => {
    const y = TOP + ROW * index + 14
    return `${label({ x: 0, y: y + 4.5, text: build.letter, fill: paint('glass'), weight: 660, size: 13 })}<path d="M${GUTTER} ${px(y)}H${px(width - 2)}" stroke="${paint('edge')}"/>${marks(build, x, y, options.paper)}`
  })
  return framed(
    {
      ...options,
      width,
      height: foot + 20,
      className: 'staff staff-all',
      title: 'Totals of all builds on one scale',
      desc:
        builds.map((build) => `${build.letter}: ${describe(build, null, options.currency)}`).join('. ') +
        (budgetMinor === null ? '' : `. Budget ${sayMoney(budgetMinor, options.currency)}`),
    },
    budgetLine(budgetMinor, x, foot, options, width) +
      rows.join('') +
      label({ x: GUTTER, y: foot + 15, text: sayRound(scale.lowMinor, options.currency), fill: paint('ink-2') }) +
      label({ x: width - 2, y: foot + 15, text: sayRound(scale.highMinor, options.currency), fill: paint('ink-2'), anchor: 'end' }),
  )
}

function budgetLine(budgetMinor: number | null, x: (minor: number) => number, foot: number, options: StaffOptions, width: number): string {
  if (budgetMinor === null) return ''
  const paint = paintFor(options.paper)
  const text = `budget ${sayRound(budgetMinor, options.currency)}`
  const half = textWidth(text, 12) / 2
  const at = x(budgetMinor)
  return (
    `<path class="staff-budget" d="M${px(at)} ${TOP - 4}V${foot}" stroke="${paint('ink')}" stroke-dasharray="2 2"/>` +
    label({ x: Math.min(Math.max(at, half), width - half), y: 12, text, fill: paint('ink'), anchor: 'middle' })
  )
}
