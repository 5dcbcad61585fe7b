import { SLOT_PLAIN_NAMES, SLOTS, type Slot } from '../catalog/kinds.ts'
import type { CivilDate } from '../dates.ts'
import type { ExpectedBuild } from '../pricing/line-advice.ts'
import { CAUTIONS } from '../startup/cautions.ts'
import { assembleBuild } from './assemble.ts'
import { resolveConditions } from './conditions.ts'
import type { Build } from './draft.ts'
import { currencyNotes } from './quote-market.ts'
import type { AssembledBuild, QuoteInputs, RevisionDocument, SlotRow } from './revision.ts'
import { sinceBefore } from './since-before.ts'

/** What a tank takes besides and a build may leave out, said on page one so that nobody expects it: each where no build brings it. Common practice. */
const OFTEN_EXPECTED: ReadonlyArray<{ words: string; slots: ReadonlyArray<readonly [Slot, string]> }> = [
  { words: 'Animals, plants and food', slots: [['animals', 'animals'], ['plants', 'plants'], ['feed', 'food']] },
  { words: 'Rocks, wood and other decoration', slots: [['hardscape', 'rocks, wood and other decoration']] },
  { words: 'Carrying, placing and wiring', slots: [['services', 'carrying, placing and wiring']] },
  { words: 'Bucket, siphon and towels', slots: [['handle', 'bucket, siphon and towels']] },
] // prettier-ignore

/** What of that nobody brings; a group of which something is brought names the rest. @example leftOut(buildsWithPlants)[0] // 'Animals and food' */
function leftOut(builds: AssembledBuild[]): string[] {
  return OFTEN_EXPECTED.flatMap(({ words, slots }) => {
    const open = slots.filter(([slot]) => !builds.some((build) => covered(build, slot)))
    if (open.length === slots.length) return [words]
    const said = open.map(([, name]) => name).join(' and ')
    return said === '' ? [] : [said.charAt(0).toUpperCase() + said.slice(1)]
  })
}

const covered = (build: AssembledBuild, slot: string): boolean =>
  build.rows.some((row) => row.slot === slot && ['buy', 'kit', 'in_kit', 'our_price'].includes(row.answer))

/** Slots that at least one build fills, and what none brings. */
function scopeOf(builds: AssembledBuild[]): Pick<RevisionDocument, 'included' | 'notIncluded'> {
  const included = SLOTS.flatMap((slot) => {
    const those = builds.filter((build) => covered(build, slot)).map(({ letter }) => letter)
    const some = those.length < builds.length ? ` (in ${those.join(', ')})` : ''
    return those.length === 0 ? [] : [`${SLOT_PLAIN_NAMES[slot]}${some}`]
  })
  const open = SLOTS.flatMap((slot) => [
    ...said(builds, slot, 'not chosen', (row) => row.answer === 'missing' && row.lineId === null),
    ...said(builds, slot, 'no longer in the catalog', (row) => row.answer === 'missing' && row.lineId !== null),
    ...said(builds, slot, 'your own', (row) => row.answer === 'owned'),
  ])
  return { included: [...included, 'Delivery and tax, where a store charges them'], notIncluded: [...open, ...leftOut(builds)] }
}

/** "Heater (your own in A, B)"; nothing where no build has such a row. */
function said(builds: AssembledBuild[], slot: Slot, words: string, is: (row: SlotRow) => boolean): string[] {
  const letters = builds.filter((build) => build.rows.some((row) => row.slot === slot && is(row))).map((build) => build.letter)
  return letters.length === 0 ? [] : [`${SLOT_PLAIN_NAMES[slot]} (${words} in ${letters.join(', ')})`]
}

/** The figures of one issue beside its inputs. */
export interface RevisionHeading {
  number: string
  revision: number
  issuedOn: CivilDate
  standsUntil: CivilDate
  advisor: string
}

/** In store mode what a draft says of other stores, from before or by a slip, stays out of what is issued. */
function withoutOthers(inputs: QuoteInputs): QuoteInputs {
  if (inputs.install.mode !== 'store') return inputs
  const { draft } = inputs
  const own = new Set(inputs.stores.flatMap(({ id, own }) => (own ? [id] : [])))
  const lines = (of: Build): Build['lines'] =>
    of.lines.map((line) => (line.answer === 'buy' && line.storeId !== null && !own.has(line.storeId) ? { ...line, storeId: null } : line))
  return {
    ...inputs,
    stores: inputs.stores.filter(({ id }) => own.has(id)),
    prices: inputs.prices.filter(({ storeId }) => own.has(storeId)),
    regions: [],
    draft: {
      ...draft,
      need: { ...draft.need, storeIds: draft.need.storeIds.filter((id) => own.has(id)), regionId: null },
      builds: draft.builds.map((build) => ({ ...build, lines: lines(build) })),
      ...(draft.discount && { discount: { ...draft.discount, storeId: null } }),
    },
  }
}

/**
 * What is issued: every build worked out and frozen together with what it was worked out from, and what is expected of it by the day of the need, by the
 * build's id. Held against the version `before` it, where there was one.
 */
export function revisionDocument(
  given: QuoteInputs,
  heading: RevisionHeading,
  expected: ReadonlyMap<string, ExpectedBuild> = new Map(),
  before?: RevisionDocument,
): RevisionDocument {
  const inputs = withoutOthers(given)
  const moneyNotes = currencyNotes(inputs)
  const builds = inputs.draft.builds.map(({ id }, index): AssembledBuild => {
    const { byDate = null, advice = [] } = expected.get(id) ?? {}
    return { ...assembleBuild(inputs, index), ...(byDate && { byDate }), ...(advice.length > 0 && { advice }) }
  })
  const since = before && sinceBefore(before, { issuedOn: heading.issuedOn, builds, inputs })
  return {
    format: 1,
    ...heading,
    title: inputs.draft.title,
    need: inputs.draft.need,
    conditions: resolveConditions(inputs.draft.need, inputs.install),
    suggestion: inputs.draft.suggestion,
    builds,
    ...scopeOf(builds),
    cautions: CAUTIONS.map((caution) => caution.text),
    note: inputs.draft.note,
    ...(inputs.draft.discount && { discount: inputs.draft.discount }),
    ...(moneyNotes.length > 0 && { moneyNotes }),
    ...(since && { since }),
    inputs,
  }
}
