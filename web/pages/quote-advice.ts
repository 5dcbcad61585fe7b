import { yearOf } from '../../core/dates.ts'
import { adviceNotes, adviceTable, tagHead, type AdviceRow } from '../../core/quote/advice-table.ts'
import { comparePairs, type ComparedPair } from '../../core/quote/compare-pair.ts'
import { compareTotals } from '../../core/quote/compare-totals.ts'
import type { AssembledBuild, RevisionDocument } from '../../core/quote/revision.ts'
import { tierMark } from '../plots/tier-marks.ts'
import { apart } from './apart.ts'
import { drawing, markup, type Markup } from './markup.ts'

/** What to buy now, what can wait, at which price and by when, as it was told on the day of issue; nothing where nothing was. */
export function adviceSection(quote: RevisionDocument): Markup | '' {
  const tables = quote.builds.map((build) => adviceOfBuild(build, quote)).filter((table) => table !== '')
  if (tables.length === 0) return ''
  return markup`<section class="advice" aria-labelledby="h-advice"><h2 id="h-advice">What to buy now, what can wait</h2>
<div class="advice-tables">${tables}</div>
${adviceNotes(quote).map((note) => markup`<p class="note">${note}</p>`)}</section>`
}

function adviceOfBuild(build: AssembledBuild, quote: RevisionDocument): Markup | '' {
  const { currency } = quote.inputs.install
  const groups = adviceTable(build, currency, yearOf(quote.issuedOn))
  if (groups.length === 0) return ''
  return markup`<table><caption><b>${build.letter}: ${apart(build.name)}</b></caption><thead><tr><th scope="col">What</th><th scope="col">${tagHead(currency)}</th></tr></thead>
${groups.map(({ head, why, rows }) => markup`<tbody><tr><th colspan="2" scope="rowgroup">${head}${small(why)}</th></tr>${rows.map(adviceRow)}</tbody>`)}</table>`
}

const small = (words: string): Markup | '' => (words === '' ? '' : markup`<small>${words}</small>`)

const adviceRow = ({ what, price, note }: AdviceRow): Markup => markup`<tr><th scope="row">${what}${small(note)}</th><td>${price}</td></tr>`

/** What of a difference between two totals outlives the sales, and of three builds or more any two of them, tier by tier. */
export function comparedTotals(quote: RevisionDocument): Markup | '' {
  const { install } = quote.inputs
  const said = { currency: install.currency, thisYear: yearOf(quote.issuedOn), mode: install.mode }
  const compared = compareTotals(quote.builds, said)
  const kits = quote.builds.flatMap(({ letter, kits: told = [] }) => told.map((words) => `In ${letter}: ${words}`))
  if (compared.length + kits.length === 0) return ''
  return markup`<ul class="plain compared">${compared.map(({ letter, words }) => markup`<li>Against ${letter}: ${words}</li>`)}${kits.map((words) => markup`<li>${words}</li>`)}</ul>${anyTwo(comparePairs(quote.builds, said))}`
}

/** One pair open at a time: whoever compares two looks at these two. */
function anyTwo(pairs: readonly ComparedPair[]): Markup | '' {
  if (pairs.length === 0) return ''
  return markup`<div class="pairs"><h3>Compare any two</h3>${pairs.map(
    ({ letters: [one, other], tiers, words }) =>
      markup`<details name="pair"><summary>${one} and ${other}</summary><dl>${tiers.map(({ tier, label, words: told }) => markup`<div><dt>${drawing(tierMark(tier))} ${label}</dt><dd>${told}</dd></div>`)}</dl><p>${words}</p></details>`,
  )}</div>`
}
