import { yearOf } from '../../../core/dates.ts'
import { compareBuilds, type BuildChange } from '../../../core/quote/compare-builds.ts'
import type { WorkedBuild, QuoteInputs } from '../../../core/quote/revision.ts'
import { compareDrafts } from './draft-compare.ts'

/** A version, or the draft as it stands: what was asked and what came of it. */
export interface Compared {
  inputs: QuoteInputs
  builds: WorkedBuild[]
}

export interface ChangeGroup {
  title: string
  changes: Array<Omit<BuildChange, 'part'> & { part: BuildChange['part'] | 'terms' }>
}

/**
 * What is otherwise in a later version, what was asked and promised first, then build by build. Groups in which nothing changed are left out.
 *
 * @example quoteChanges(version1, version2).map((group) => group.title) // ['Need and terms', 'Build A, Long and deep']
 */
export function quoteChanges(before: Compared, after: Compared): ChangeGroup[] {
  const { inputs } = after
  const products = [...before.inputs.products, ...inputs.products]
  const terms = compareDrafts(before.inputs.draft, inputs.draft, { ...inputs, products })
    .filter(({ where }) => !/^Build [A-D], (?!name$)/.test(where))
    .map(({ where, mine, theirs }) => ({ part: 'terms' as const, what: where, was: mine, now: theirs }))
  const { install, stores, asOf } = inputs
  const builds = compareBuilds(before.builds, after.builds, { currency: install.currency, stores, thisYear: yearOf(asOf) })
  return [
    { title: 'Need and terms', changes: terms },
    ...builds.map(({ letter, name, changes }) => ({ title: [`Build ${letter}`, name].filter(Boolean).join(', '), changes })),
  ].filter(({ changes }) => changes.length > 0)
}
