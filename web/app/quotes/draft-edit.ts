import type { CivilDate } from '../../../core/dates.ts'
import type { Build, BuildLine, QuoteDraft } from '../../../core/quote/draft.ts'
import type { Discount } from '../../../core/pricing/discount.ts'
import type { Need, NeedExact } from '../../../core/quote/need.ts'
import type { OurService } from '../../../core/quote/our-service.ts'
import type { Deposit } from '../../../core/quote/terms.ts'

/** What an advisor does to a draft. Ids are made by the screen, so that the same edits give the same draft. */
export type DraftEdit =
  | { do: 'title'; title: string }
  | { do: 'note'; note: string }
  | { do: 'stands_until'; date: CivilDate | null }
  /** Undefined: as the install has it. */
  | { do: 'units'; units: QuoteDraft['units'] }
  | { do: 'discount'; discount: Discount | null }
  | { do: 'deposit'; deposit: Deposit | null }
  | { do: 'need'; change: Partial<Omit<Need, 'exact'>> }
  /** A field set to undefined goes back to its assumed default. */
  | { do: 'exact'; change: Partial<NeedExact> }
  | { do: 'add_build'; build: Build }
  | { do: 'duplicate_build'; buildId: string; newId: string; lineIds: string[] }
  | { do: 'remove_build'; buildId: string }
  | { do: 'describe_build'; buildId: string; change: Partial<Pick<Build, 'name' | 'why'>> }
  | { do: 'suggest'; suggestion: QuoteDraft['suggestion'] }
  /** Puts a line where the first one it replaces stood, else last. */
  | { do: 'put_line'; buildId: string; line: BuildLine; replaces: string[] }
  | { do: 'remove_line'; buildId: string; lineId: string }
  | { do: 'set_services'; buildId: string; services: OurService[] }
  /** All lines of a build at once: filled in one go, and taken back in one. */
  | { do: 'set_lines'; buildId: string; lines: BuildLine[] }

/** Four: what fits side by side on a desk and on one sheet. */
export const MOST_BUILDS = 4

/**
 * The draft after an edit; the same object when the edit changes nothing, so that what is computed from it can be kept.
 *
 * Errors: none; an edit of a build that is gone changes nothing, the last build cannot be removed and a fifth cannot be added.
 *
 * @example editDraft(draft, { do: 'title', title: 'A planted tank' }).title // 'A planted tank'
 */
export function editDraft(draft: QuoteDraft, edit: DraftEdit): QuoteDraft {
  switch (edit.do) {
    case 'title':
      return edit.title === draft.title ? draft : { ...draft, title: edit.title }
    case 'note':
      return edit.note === draft.note ? draft : { ...draft, note: edit.note }
    case 'stands_until':
      return edit.date === draft.standsUntil ? draft : { ...draft, standsUntil: edit.date }
    case 'units':
      return edit.units === draft.units ? draft : withoutUndefined({ ...draft, units: edit.units })
    case 'discount':
      return { ...draft, discount: edit.discount }
    case 'deposit':
      return { ...draft, deposit: edit.deposit }
    case 'need':
      return { ...draft, need: { ...draft.need, ...edit.change } }
    case 'exact':
      return { ...draft, need: { ...draft.need, exact: withoutUndefined({ ...draft.need.exact, ...edit.change }) } }
    case 'suggest':
      return { ...draft, suggestion: edit.suggestion }
    default:
      return editBuilds(draft, edit)
  }
}

type BuildEdit = Exclude<
  DraftEdit,
  { do: 'title' | 'note' | 'stands_until' | 'units' | 'discount' | 'deposit' | 'need' | 'exact' | 'suggest' }
>

function editBuilds(draft: QuoteDraft, edit: BuildEdit): QuoteDraft {
  switch (edit.do) {
    case 'add_build':
      return draft.builds.length >= MOST_BUILDS ? draft : { ...draft, builds: [...draft.builds, edit.build] }
    case 'duplicate_build':
      return duplicateBuild(draft, edit.buildId, edit.newId, edit.lineIds)
    case 'remove_build':
      return removeBuild(draft, edit.buildId)
    case 'describe_build':
      return inBuild(draft, edit.buildId, (build) => ({ ...build, ...edit.change }))
    case 'put_line':
      return inBuild(draft, edit.buildId, (build) => ({ ...build, lines: putLine(build.lines, edit.line, edit.replaces) }))
    case 'set_lines':
      return inBuild(draft, edit.buildId, (build) => ({ ...build, lines: edit.lines }))
    case 'set_services':
      return inBuild(draft, edit.buildId, (build) => ({ ...build, services: edit.services }))
    case 'remove_line':
      return inBuild(draft, edit.buildId, (build) => ({ ...build, lines: build.lines.filter((line) => line.id !== edit.lineId) }))
  }
}

function inBuild(draft: QuoteDraft, buildId: string, change: (build: Build) => Build): QuoteDraft {
  if (!draft.builds.some((build) => build.id === buildId)) return draft
  return { ...draft, builds: draft.builds.map((build) => (build.id === buildId ? change(build) : build)) }
}

function putLine(lines: BuildLine[], line: BuildLine, replaces: string[]): BuildLine[] {
  const gone = new Set([...replaces, line.id])
  const at = lines.findIndex((old) => gone.has(old.id))
  const kept = lines.filter((old) => !gone.has(old.id))
  const before = at === -1 ? kept.length : lines.slice(0, at).filter((old) => !gone.has(old.id)).length
  return [...kept.slice(0, before), line, ...kept.slice(before)]
}

function duplicateBuild(draft: QuoteDraft, buildId: string, newId: string, lineIds: string[]): QuoteDraft {
  const original = draft.builds.find((build) => build.id === buildId)
  if (!original || draft.builds.length >= MOST_BUILDS || lineIds.length < original.lines.length) return draft
  const lines = original.lines.map((line, index) => ({ ...line, id: lineIds[index] ?? line.id }))
  // Behind the last, so that no build changes the letter by which customer and advisor know it; without a name, since the name is the original's.
  return { ...draft, builds: [...draft.builds, { ...original, id: newId, name: '', lines }] }
}

function removeBuild(draft: QuoteDraft, buildId: string): QuoteDraft {
  if (draft.builds.length <= 1) return draft
  const suggestion = draft.suggestion?.buildId === buildId ? null : draft.suggestion
  return { ...draft, suggestion, builds: draft.builds.filter((build) => build.id !== buildId) }
}

function withoutUndefined<T extends object>(value: T): T {
  return Object.fromEntries(Object.entries(value).filter(([, inner]) => inner !== undefined)) as T
}
