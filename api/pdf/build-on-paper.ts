import { SLOT_PLAIN_NAMES } from '../../core/catalog/kinds.ts'
import type { Install } from '../../core/install.ts'
import { termsNote } from '../../core/quote/money-notes.ts'
import { sayLineTerms, sayShare } from '../../core/quote/terms.ts'
import type { LineCost, Receipt } from '../../core/pricing/tiers.ts'
import type { AssembledBuild, SlotRow } from '../../core/quote/revision.ts'
import { buildNotes } from '../../core/quote/row-notes.ts'
import { isSale, saysInKit } from './included-on-paper.ts'
import type { BuildPaper, LinePaper } from './paper.ts'
import { sizingOnPaper } from './sizing-on-paper.ts'
import type { Teller } from './teller.ts'
import { tierCell } from './tiers-on-paper.ts'

const HOW: Record<NonNullable<LineCost['condition']>, string> = { shelf: 'shelf price', sale: 'sale', clearance: 'clearance', used: 'used' }

/** One build's lines and receipts; its sizing in full where `told` is null, else only what fits ill and differs from the build told before. */
export function buildOnPaper(
  build: AssembledBuild,
  names: ReadonlyMap<string, string>,
  told: AssembledBuild | null,
  teller: Teller,
  mode: Install['mode'] = 'club',
): BuildPaper {
  const shared = sharedTerms(build)
  return {
    letter: build.letter,
    name: build.name,
    suggested: build.suggested,
    also: build.rows.flatMap((row) => alsoRow(row, teller)),
    notes: buildNotes(build),
    lines: build.cost.lines.map((line) => lineOnPaper(line, build, names, teller, shared)),
    termsNote: termsNote(build.cost.lines),
    seenHeads: mode === 'store' ? ['Price', 'Valid from'] : ['Price seen as', 'Seen on'],
    discounted: build.cost.receipts.some(({ discountMinor }) => (discountMinor ?? 0) !== 0),
    receipts: [
      ...build.cost.receipts.map((receipt) => ({
        store: teller.storeName(receipt.storeId),
        terms: shared.get(receipt.storeId) ?? '',
        goods: teller.bare(receipt.goodsMinor),
        delivery: teller.bare(receipt.deliveryMinor),
        discount: (receipt.discountMinor ?? 0) === 0 ? '' : teller.bare(-(receipt.discountMinor ?? 0)),
        tax: taxLines(receipt, teller),
        total: teller.bare(receipt.totalMinor),
      })),
      ...ownReceipt(build, teller),
    ],
    total: tierCell(build.cost.today, teller),
    sizing: sizingOnPaper(build, told, teller),
  }
}

/** Work at our own price has a receipt of ours: without it the receipts would not make up the total. */
function ownReceipt({ rows }: AssembledBuild, teller: Teller): BuildPaper['receipts'] {
  const ours = rows.reduce((sum, { ourPriceMinor = 0 }) => sum + ourPriceMinor, 0)
  if (ours === 0) return []
  const amount = teller.bare(ours)
  return [{ store: 'Our services', terms: '', goods: amount, delivery: '', discount: '', tax: ['in the price'], total: amount }]
}

/** Return days and warranty by store where all its lines have the same: told once beside its receipt, else on each line. */
function sharedTerms({ cost }: AssembledBuild): Map<string, string> {
  const byStore = Map.groupBy(cost.lines, ({ storeId }) => storeId ?? '')
  return new Map(
    [...byStore].flatMap(([storeId, lines]) => {
      const [terms = '', ...others] = new Set(lines.map(sayLineTerms))
      return cost.receipts.some((receipt) => receipt.storeId === storeId) && others.length === 0 ? [[storeId, terms] as const] : []
    }),
  )
}

/** The tax of a receipt, rate by rate where it has several; what printed prices already hold says so. */
function taxLines(receipt: Receipt, teller: Teller): string[] {
  const held = (receipt.taxIncludedMinor ?? 0) === 0 ? '' : ' in the prices'
  if (!receipt.taxes) return [`${teller.bare(receipt.taxMinor)}${held}`]
  return receipt.taxes.map(
    ({ name, basisPoints, taxMinor }) => `${name ? `${name}, ` : ''}${sayShare(basisPoints)}: ${teller.bare(taxMinor)}${held}`,
  )
}

const reportOf = ({ reporters, sightingIds }: { reporters: number; sightingIds: readonly string[] }): string => {
  if (reporters === 1) return 'one report'
  return reporters === 0 && sightingIds.length > 0 ? 'a list' : ''
}

function lineOnPaper(
  line: LineCost,
  build: AssembledBuild,
  names: ReadonlyMap<string, string>,
  teller: Teller,
  shared: ReadonlyMap<string, string>,
): LinePaper {
  const row = build.rows.find((each) => each.lineId === line.lineId && each.answer !== 'in_kit')
  const name = names.get(line.productId) ?? 'a product no longer in the catalog'
  const onSale = isSale(line)
  return {
    text: row?.text ?? (line.quantity === 1 ? name : `${line.quantity} × ${name}`),
    terms: shared.has(line.storeId ?? '') ? '' : sayLineTerms(line),
    note: row?.lineNote ?? '',
    store: teller.storeName(line.storeId),
    how: [
      line.condition === null
        ? ''
        : line.condition === 'shelf' && line.sightingIds.length === 0 && line.reporters === 0
          ? 'list price'
          : HOW[line.condition],
      line.age === 'ageing' ? 'ageing' : '',
      line.otherClub !== undefined ? 'another club’s report' : reportOf(line),
    ]
      .filter((word) => word !== '')
      .join(', '),
    sale: onSale,
    seen: line.seenOn === null ? '' : teller.date(line.seenOn),
    lastDay: lastDay(line, teller),
    regular: onSale && line.fullMinor !== null && line.fullMinor !== line.todayMinor ? teller.bare(line.fullMinor) : '',
    price: line.todayMinor === null ? null : teller.bare(line.todayMinor),
  }
}

/** A stated last day as it is; the rule's own reckoning with "about". */
function lastDay(line: LineCost, teller: Teller): string {
  if (line.holdsUntil === null) return ''
  return line.lastDayStated ? teller.date(line.holdsUntil) : `about ${teller.date(line.holdsUntil)}`
}

/** What no store sells but belongs to the build, and work at our own price. What is not used says so itself. */
function alsoRow(row: SlotRow, teller: Teller): BuildPaper['also'] {
  const slot = SLOT_PLAIN_NAMES[row.slot]
  if (row.ourPriceMinor !== undefined) return [{ slot, text: `${row.text}: ${teller.bare(row.ourPriceMinor)}, our price, tax in it` }]
  if (row.answer === 'in_kit') return [{ slot, text: saysInKit(row) ? row.text : `in the kit: ${row.text}` }]
  if (row.answer === 'owned') return [{ slot, text: `already owned: ${row.text}` }]
  if (row.answer === 'not_needed') return [{ slot, text: row.text === 'not needed' ? row.text : `not needed: ${row.text}` }]
  if (row.answer === 'missing' && row.required) return [{ slot, text: `open: ${row.needs ?? row.text}` }]
  return []
}
