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
}

/** By path. */
export type Measured = Record<string, MeasuredFile>

/** Share of a file's mutants that the tests notice; 1 where there is nothing to mutate. @example scoreOf({ killed: 8, timedOut: 1, survived: 1, uncovered: 0, … }) // 0.9 */
export function scoreOf({ killed, timedOut, survived, uncovered }: Omit<MeasuredFile, 'survivors'>): number {
  const all = killed + timedOut + survived + uncovered
  return all === 0 ? 1 : (killed + timedOut) / all
}

/** All files together. */
export function totalOf(measured: Measured): Omit<MeasuredFile, 'survivors'> {
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
    survivors: open.map(({ mutatorName, replacement, location }) => ({
      line: location.start.line,
      what: mutatorName,
      was: textBetween(source, location),
      became: short(replacement ?? ''),
    })),
  }
}
