import { SLOT_PLAIN_NAMES } from '../../core/catalog/kinds.ts'
import type { LineCost } from '../../core/pricing/tiers.ts'
import type { AssembledBuild, SlotRow } from '../../core/quote/revision.ts'
import { findingOnPaper, verdictWord } from './findings-on-paper.ts'
import { isSale } from './included-on-paper.ts'
import type { BuildPaper, LinePaper } from './paper.ts'
import type { Teller } from './teller.ts'
import { tierCell } from './tiers-on-paper.ts'

const HOW: Record<NonNullable<LineCost['condition']>, string> = { shelf: 'shelf price', sale: 'sale', clearance: 'clearance', used: 'used' }

/** One build's lines and receipts; its sizing in full where `told` is null, else only what fits ill and differs from the build told before. */
export function buildOnPaper(
  build: AssembledBuild,
  names: ReadonlyMap<string, string>,
  told: AssembledBuild | null,
  teller: Teller,
): BuildPaper {
  return {
    letter: build.letter,
    name: build.name,
    suggested: build.suggested,
    lines: build.cost.lines.map((line) => lineOnPaper(line, build, names, teller)),
    also: build.rows.flatMap(alsoRow),
    receipts: build.cost.receipts.map((receipt) => ({
      store: teller.storeName(receipt.storeId),
      goods: teller.bare(receipt.goodsMinor),
      delivery: teller.bare(receipt.deliveryMinor),
      tax: (receipt.taxIncludedMinor ?? 0) === 0 ? teller.bare(receipt.taxMinor) : `${teller.bare(receipt.taxMinor)} in the prices`,
      total: teller.bare(receipt.totalMinor),
    })),
    total: tierCell(build.cost.today, teller),
    ...sizingOnPaper(build, told, teller),
  }
}

function sizingOnPaper(
  build: AssembledBuild,
  told: AssembledBuild | null,
  teller: Teller,
): Pick<BuildPaper, 'findings' | 'same' | 'fitting'> {
  const all = build.report.findings
  if (told === null) return { findings: all.map((finding) => findingOnPaper(finding, teller)), same: '', fitting: '' }
  const known = new Set(told.report.findings.map((finding) => JSON.stringify(finding)))
  const fitting = all.filter((finding) => finding.verdict === 'fits' && finding.wording === undefined)
  const rest = all.filter((finding) => !fitting.includes(finding))
  const differing = rest.filter((finding) => !known.has(JSON.stringify(finding)))
  const checks = new Set(told.report.findings.map((finding) => finding.check))
  return {
    findings: differing.map((finding) => {
      const whole = findingOnPaper(finding, teller)
      return checks.has(finding.check) ? { ...whole, caution: '', source: '', assumed: '' } : whole
    }),
    same: rest
      .filter((finding) => !differing.includes(finding))
      .map((finding) => `${finding.title} (${verdictWord(finding)})`)
      .join(', '),
    fitting: fitting.map((finding) => finding.title).join(', '),
  }
}

function lineOnPaper(line: LineCost, build: AssembledBuild, names: ReadonlyMap<string, string>, teller: Teller): LinePaper {
  const row = build.rows.find((each) => each.lineId === line.lineId && each.answer !== 'in_kit')
  const name = names.get(line.productId) ?? 'a product no longer in the catalog'
  const onSale = isSale(line)
  return {
    text: row?.text ?? (line.quantity === 1 ? name : `${line.quantity} × ${name}`),
    store: teller.storeName(line.storeId),
    how: [
      line.condition === null ? '' : HOW[line.condition],
      line.age === 'ageing' ? 'ageing' : '',
      line.reporters === 1 ? 'one report' : '',
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

/** What costs nothing but belongs to the build. */
function alsoRow(row: SlotRow): BuildPaper['also'] {
  const slot = SLOT_PLAIN_NAMES[row.slot]
  if (row.answer === 'in_kit') return [{ slot, text: `in the kit: ${row.text}` }]
  if (row.answer === 'owned') return [{ slot, text: `already owned: ${row.text}` }]
  if (row.answer === 'not_needed') return [{ slot, text: row.text === 'not needed' ? row.text : `not needed: ${row.text}` }]
  if (row.answer === 'missing' && row.required) return [{ slot, text: `open: ${row.needs ?? row.text}` }]
  return []
}
