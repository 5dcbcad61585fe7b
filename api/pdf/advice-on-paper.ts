import { yearOf } from '../../core/dates.ts'
import { adviceNotes, adviceTable, tagHead, type AdviceGroup } from '../../core/quote/advice-table.ts'
import { compareSuggested, compareTotals } from '../../core/quote/compare-totals.ts'
import type { AssembledBuild, RevisionDocument } from '../../core/quote/revision.ts'

/** What to buy now and what can wait, of the build that is told in full, and what the totals of all have to do with sales. */
export interface AdvicePaper {
  letter: string
  /** Head of the column of prices. */
  tagHead: string
  groups: AdviceGroup[]
  notes: string[]
  /** "Against B: A is cheaper by $30.00 today. …" */
  compared: string[]
}

/** Null where no advice was frozen and there is nothing to compare. */
export function adviceOnPaper(chosen: AssembledBuild, document: RevisionDocument): AdvicePaper | null {
  const { currency } = document.inputs.install
  const thisYear = yearOf(document.issuedOn)
  const groups = adviceTable(chosen, currency, thisYear)
  const said = { currency, thisYear }
  const totals = compareTotals(document.builds, said).map(({ letter, words }) => `Against ${letter}: ${words}`)
  const suggested = document.builds.find((build) => build.suggested)?.letter
  const others = compareSuggested(document.builds, said).map(
    ({ letter, words }) => `The suggested ${suggested} against ${letter}: ${words}`,
  )
  const kits = document.builds.flatMap(({ letter, kits: told = [] }) => told.map((words) => `In ${letter}: ${words}`))
  const compared = [...totals, ...others, ...kits]
  if (groups.length === 0 && compared.length === 0) return null
  return { letter: chosen.letter, tagHead: tagHead(currency), groups, notes: groups.length === 0 ? [] : adviceNotes(document), compared }
}
