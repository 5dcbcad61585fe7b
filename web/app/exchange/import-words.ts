import type { ImportView } from '../../../core/exchange/import-view.ts'
import { setWords } from './set-words.ts'

const figure = (count: number): string => count.toLocaleString('en-US')
const rows = (count: number): string => (count === 1 ? '1 row' : `${figure(count)} rows`)

/** @example fileWords({ set: 'catalog', kind: 'heater', fileName: 'list.csv' }) // 'list.csv, heater' */
export const fileWords = ({ set, kind, fileName }: Pick<ImportView, 'set' | 'kind' | 'fileName'>): string =>
  [fileName, setWords(set, kind)].filter(Boolean).join(', ')

/** How far it is, from 0 to 1; null while that is not known. */
export const shareDone = ({ done, total }: Pick<ImportView, 'done' | 'total'>): number | null =>
  total > 0 ? Math.min(1, done / total) : null

const AT: Record<ImportView['phase'], string> = {
  reading: 'Reading the file',
  checking: 'Checking the rows against what is here',
  writing: 'Writing',
}

/** What is happening, with its figure. @example progressWords({ state: 'running', phase: 'checking', done: 50, total: 200, … }) // 'Checking the rows against what is here: 50 of 200' */
export function progressWords({
  state,
  phase,
  done,
  total,
  cancelAsked,
}: Pick<ImportView, 'state' | 'phase' | 'done' | 'total' | 'cancelAsked'>): string {
  if (cancelAsked) return 'Being cancelled'
  if (state === 'waiting') return 'Waiting for its turn'
  if (total === 0) return AT[phase]
  return phase === 'reading' ? `${AT.reading}: ${Math.floor((100 * done) / total)} %` : `${AT[phase]}: ${figure(done)} of ${figure(total)}`
}

/** One sentence of what came of it. */
export function endWords({ state, outcome, words }: Pick<ImportView, 'state' | 'outcome' | 'words'>): string {
  if (words !== null) return words
  if (state === 'cancelled') return 'Cancelled. Nothing of it was kept.'
  if (outcome === null) return 'Not ended yet'
  const { applied, ready, faults, more, creates, updates, unchanged } = outcome
  if (outcome.rows === 0 && faults === 0) return 'Nothing to import: the file has no rows.'
  if (applied) return `Written: ${figure(creates)} new, ${figure(updates)} changed, ${figure(unchanged)} as they were`
  const counted = `${figure(faults)}${more ? ' or more' : ''} ${faults === 1 && !more ? 'fault' : 'faults'}`
  if (faults > 0 && outcome.rows === 0) return `Nothing written: ${counted} in the heading`
  if (faults > 0) return `Nothing written: ${counted} in ${rows(outcome.rows)}`
  if (creates + updates === 0) return 'Tried, without a fault. Nothing to write: all of it is here already.'
  return ready ? 'Tried, without a fault. Waits to be written.' : 'Tried, without a fault, and not written.'
}

/** The figures of an outcome, each with its word. */
export const countWords = ({ outcome }: Pick<ImportView, 'outcome'>): string[] =>
  outcome === null
    ? []
    : [
        rows(outcome.rows),
        `${figure(outcome.creates)} new`,
        `${figure(outcome.updates)} changed`,
        `${figure(outcome.unchanged)} as they are`,
        `${figure(outcome.faults)} ${outcome.faults === 1 ? 'fault' : 'faults'}`,
      ]
