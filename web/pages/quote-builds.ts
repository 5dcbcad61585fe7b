import { shapeWords } from '../../core/catalog/tank-shape.ts'
import { SLOTS, SLOT_PLAIN_NAMES, type Slot } from '../../core/catalog/kinds.ts'
import { sayDate, yearOf } from '../../core/dates.ts'
import { sayMoney } from '../../core/money.ts'
import { sayByDate, type ByDate } from '../../core/pricing/by-date.ts'
import { salesEndingBefore, saySalesEnding } from '../../core/pricing/sales-ending.ts'
import type { LineCost, Tier } from '../../core/pricing/tiers.ts'
import { documentUnits } from '../../core/quote/document-units.ts'
import type { AssembledBuild, RevisionDocument, SlotRow } from '../../core/quote/revision.ts'
import { sayOpenSlots } from '../../core/quote/open-slots.ts'
import { sumPartOf, sumRowsOf } from '../../core/quote/sum-parts.ts'
import { sayLineTerms } from '../../core/quote/terms.ts'
import { saySize } from '../../core/units/say.ts'
import { dip } from '../plots/dip.ts'
import { apart } from './apart.ts'
import { tankDrawings, type TankFigure } from '../plots/tank-drawing.ts'
import { tierMark, type TierName } from '../plots/tier-marks.ts'
import { vial } from '../plots/vial.ts'
import { drawing, markup, type Markup } from './markup.ts'
import { sizingOf } from './quote-findings.ts'

/** Builds as columns on a desk and one under the other on a phone; rows of the columns share their heights. */
export function buildsSideBySide(quote: RevisionDocument, path: string): Markup {
  const tanks = quote.builds.map((build): TankFigure | null => (build.drawing === null ? null : { ...build.drawing, letter: build.letter }))
  const drawings = tankDrawings(tanks, { id: 'tank', reader: documentUnits(quote.inputs), stand: 'whole', width: 220 })
  const slots = SLOTS.filter((slot) => quote.builds.some((build) => build.rows.some((row) => row.slot === slot)))
  return markup`<div class="builds builds-${quote.builds.length} slots-${slots.length}">${quote.builds.map((build, index) => column(build, quote, slots, drawings[index] ?? '', path))}</div>`
}

function column(build: AssembledBuild, quote: RevisionDocument, slots: readonly Slot[], svg: string, path: string): Markup {
  const id = `build-${build.letter}`
  const reason = build.suggested ? (quote.suggestion?.reason ?? '') : null
  return markup`<section class="build${reason === null ? '' : ' suggested'}" aria-labelledby="${id}">
<div class="build-head">${drawing(svg)}<h2 id="${id}"><span class="letter">${build.letter}</span> ${apart(build.name)}</h2>
<p class="quiet">${sizeOf(build, quote)}</p><p>${build.why}</p>${reason === null ? '' : markup`<p class="we-suggest"><b>We suggest this one.</b> ${reason}</p>`}</div>
${tiers(build, quote)}
${sizingOf(build, quote, path)}
<h3 class="included">What it is made of</h3>
<ul class="slots">${slots.map((slot) => slotRow(slot, build, quote))}</ul>
<div>${sums(build.cost.today, build, quote)}${salesEnd(build, quote)}</div>
</section>`
}

const sizeOf = (build: AssembledBuild, quote: RevisionDocument): string => {
  if (build.drawing === null) return 'no tank in this build'
  const { lengthMm, widthMm, heightMm, style, plan } = build.drawing
  const kit = build.rows.some((row) => row.answer === 'kit') && 'kit'
  return `${[kit, shapeWords(plan?.form), style].filter(Boolean).join(', ')}, ${saySize([lengthMm, widthMm, heightMm], documentUnits(quote.inputs))} outside`
}

function tiers(build: AssembledBuild, quote: RevisionDocument): Markup {
  const rows: Array<[TierName, string, Tier, string]> = [
    ['full', 'Full price', build.cost.full, ''],
    ['today', 'Today', build.cost.today, 'now'],
    ...(quote.inputs.install.mode === 'store'
      ? []
      : [['bestSeen', 'Best seen', build.cost.bestSeen, ''] as [TierName, string, Tier, string]]),
  ]
  const date = build.byDate ? byDateRow(build.byDate, quote) : ''
  return markup`<ul class="tiers">${rows.map(([name, words, tier, className]) => markup`<li class="${className}">${drawing(tierMark(name))}<span>${words}${name === 'bestSeen' ? markup`<small>in 12 months</small>` : ''}</span><span class="f">${figure(tier, quote)}</span></li>${name === 'today' ? date : ''}`)}</ul>`
}

/** What is expected by the day of the need, between today and what was seen best. */
function byDateRow(byDate: ByDate, quote: RevisionDocument): Markup {
  const { label, figure: about, range } = sayByDate(byDate, quote.inputs.install.currency, yearOf(quote.issuedOn))
  return markup`<li>${drawing(tierMark('byDate'))}<span>${label}<small>following the advice</small></span><span class="f">${about}<small>${range}</small></span></li>`
}

/** A total, or which line keeps it from being one. Never a total with a hole in it. */
function figure(tier: Tier, quote: RevisionDocument): Markup {
  if (tier.complete) return markup`${sayMoney(tier.totalMinor, quote.inputs.install.currency)}`
  const [first] = tier.missing
  const why = first === undefined ? 'a line has no price' : `${first.name} ${MISSING_WORDS[first.why]}`
  const more = tier.missing.length > 1 ? `, and ${tier.missing.length - 1} more` : ''
  return markup`<span class="no-total"><span class="verdict not-known">${drawing(vial('not_known'))}no total</span><small>${why}${more}</small></span>`
}

const MISSING_WORDS = {
  no_price: 'has no price',
  cannot_be_delivered: 'cannot be delivered',
  archived: 'is no longer sold',
  no_rate: 'is priced in a currency without a rate',
} as const

function slotRow(slot: Slot, build: AssembledBuild, quote: RevisionDocument): Markup {
  const rows = build.rows.filter((row) => row.slot === slot)
  const said = rows.length === 0 ? markup`<span class="line soft">not in this build</span>` : rows.map((row) => line(row, build, quote))
  return markup`<li><span class="slot-name">${SLOT_PLAIN_NAMES[slot]}</span>${said}</li>`
}

function line(row: SlotRow, build: AssembledBuild, quote: RevisionDocument): Markup {
  if (row.answer === 'missing')
    return markup`<span class="line missing"><b>${row.required ? 'still missing' : 'not chosen'}</b>${row.needs === null ? '' : markup` ${row.needs}`}</span>`
  if (row.answer === 'owned') return markup`<span class="line soft">${row.text} (already owned)</span>${notes(row)}`
  if (row.answer === 'not_needed')
    return markup`<span class="line soft">not needed${row.text === '' || row.text === 'not needed' ? '' : `: ${row.text}`}</span>`
  if (row.answer === 'in_kit')
    return markup`<span class="line soft">${row.text}${/in the kit/.test(row.text) ? '' : ' (in the kit)'}</span>${notes(row)}`
  if (row.ourPriceMinor !== undefined)
    return markup`<span class="line"><span>${row.text}</span><span class="price">${sayMoney(row.ourPriceMinor, quote.inputs.install.currency, { symbol: false })}</span></span><span class="src"><span>our price, tax in it</span></span>`
  const cost = build.cost.lines.find((candidate) => candidate.lineId === row.lineId)
  return markup`<span class="line"><span>${row.text}</span><span class="price">${price(cost, quote)}</span></span>${cost === undefined ? '' : source(cost, quote)}${lineNote(row)}${notes(row)}`
}

/** What the advisor noted on the line. */
const lineNote = (row: SlotRow): Markup | '' =>
  row.lineNote === undefined ? '' : markup`<span class="mind line-note">${row.lineNote}</span>`

/** What its spec asks of whoever sets it up. */
const notes = (row: SlotRow): Markup | '' => (row.notes === undefined ? '' : markup`<span class="mind">${row.notes.join(' ')}</span>`)

const price = (cost: LineCost | undefined, quote: RevisionDocument): string =>
  cost === undefined || cost.todayMinor === null ? 'no price' : sayMoney(cost.todayMinor, quote.inputs.install.currency, { symbol: false })

/** Where from and until when: a sale with its last day and the full price under it. */
function source(cost: LineCost, quote: RevisionDocument): Markup {
  const store = quote.inputs.stores.find((candidate) => candidate.id === cost.storeId)
  const { currency } = quote.inputs.install
  const onSale = cost.condition === 'sale' || cost.condition === 'clearance'
  const until = cost.holdsUntil === null ? '' : ` to ${sayDate(cost.holdsUntil, yearOf(quote.issuedOn))}`
  const full =
    onSale && cost.fullMinor !== null && cost.todayMinor !== null && cost.fullMinor > cost.todayMinor
      ? markup`<span class="was"><span class="sr">full price </span>${sayMoney(cost.fullMinor, currency, { symbol: false })}</span>`
      : ''
  const seen =
    quote.inputs.install.mode === 'club' && cost.seenOn !== null ? `, as seen on ${sayDate(cost.seenOn, yearOf(quote.issuedOn))}` : ''
  const terms = sayLineTerms(cost)
  return markup`<span class="src"><span>${store?.name ?? ''}${seen}${onSale ? markup` <span class="sale">${drawing(dip())}${cost.condition}${until}</span>` : ''}</span>${full}</span>${terms === '' ? '' : markup`<span class="src">${terms}</span>`}`
}

/** Which prices are over before the quote is: what is accepted on its last day costs more by then. */
export function salesEnd(build: AssembledBuild, quote: RevisionDocument): Markup | '' {
  const ending = salesEndingBefore(build.cost.lines, quote.standsUntil)
  return ending === null ? '' : markup`<p class="note ends">${saySalesEnding(ending, yearOf(quote.issuedOn))}</p>`
}

function sums(tier: Tier, build: AssembledBuild, quote: RevisionDocument): Markup {
  if (!tier.complete) return markup`<dl class="sums"><div class="sum"><dt>Today</dt><dd>${figure(tier, quote)}</dd></div></dl>`
  const bare = (minor: number): string => sayMoney(minor, quote.inputs.install.currency, { symbol: false })
  const parts = sumRowsOf([build]).map(({ part, words }) => markup`<div><dt>${words}</dt><dd>${bare(sumPartOf(tier, part))}</dd></div>`)
  const open = sayOpenSlots(build)
  const deposit = build.depositMinor == null ? '' : markup`<div><dt>Deposit when you say yes</dt><dd>${bare(build.depositMinor)}</dd></div>`
  return markup`<dl class="sums">${parts}<div class="sum"><dt>Today</dt><dd>${sayMoney(tier.totalMinor, quote.inputs.install.currency)}</dd></div>${deposit}</dl>${open === '' ? '' : markup`<p class="note">${open}</p>`}`
}
