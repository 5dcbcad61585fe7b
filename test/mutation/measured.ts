import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { isOpen, type Mutant, type Reported } from './one-start.ts'

/** One mutant that no test noticed. */
export interface Survivor {
  line: number
  what: string
  /** What stands there, and what stood in its place. */
  was: string
  became: string
}

/** What the last run found in one file. */
export interface MeasuredFile {
  killed: number
  /** Ran without an end, which the tests notice too. */
  timedOut: number
  survived: number
  /** No test reaches them. */
  uncovered: number
  survivors: Survivor[]
  /** Mark of the text that was counted; absent in a count of before there were marks. */
  of?: string
}

/** The counts alone. */
type Counted = Omit<MeasuredFile, 'survivors' | 'of'>

/** Mark of a file's text: the same for the same text. */
export const markOf = (source: string): string => createHash('sha256').update(source).digest('hex').slice(0, 16)

/** Files whose count is of another text than stands there now, or that have none. */
export const staleOf = (measured: Measured, files: readonly string[]): string[] =>
  files.filter((path) => measured[path]?.of !== markOf(readFileSync(path, 'utf8')))

/** By path. */
export type Measured = Record<string, MeasuredFile>

/** Share of a file's mutants that the tests notice; 1 where there is nothing to mutate. @example scoreOf({ killed: 8, timedOut: 1, survived: 1, uncovered: 0, … }) // 0.9 */
export function scoreOf({ killed, timedOut, survived, uncovered }: Counted): number {
  const all = killed + timedOut + survived + uncovered
  return all === 0 ? 1 : (killed + timedOut) / all
}

/** All files together. */
export function totalOf(measured: Measured): Counted {
  const total = { killed: 0, timedOut: 0, survived: 0, uncovered: 0 }
  for (const each of Object.values(measured))
    for (const key of ['killed', 'timedOut', 'survived', 'uncovered'] as const) total[key] += each[key]
  return total
}

const MOST_SIGNS = 90
function short(text: string): string {
  const one = text.replaceAll(/\s+/g, ' ')
  return one.length > MOST_SIGNS ? `${one.slice(0, MOST_SIGNS)}…` : one
}

/** What stood between two places, in one line. */
function textBetween(source: string, { start, end }: Mutant['location']): string {
  const lines = source.split('\n').slice(start.line - 1, end.line)
  const text = lines.map((line, index) =>
    line.slice(index === 0 ? start.column - 1 : 0, index === lines.length - 1 ? end.column - 1 : undefined),
  )
  return short(text.join(' '))
}

/** One file's count, with its survivors by line. */
export function measuredOf({ source, mutants }: Reported[string]): MeasuredFile {
  const count = (status: string) => mutants.filter((mutant) => mutant.status === status).length
  const open = mutants.filter(isOpen).sort((a, b) => a.location.start.line - b.location.start.line)
  return {
    killed: count('Killed'),
    timedOut: count('Timeout'),
    survived: count('Survived'),
    uncovered: count('NoCoverage'),
    of: markOf(source),
    survivors: open.map(({ mutatorName, replacement, location }) => ({
      line: location.start.line,
      what: mutatorName,
      was: textBetween(source, location),
      became: short(replacement ?? ''),
    })),
  }
}
