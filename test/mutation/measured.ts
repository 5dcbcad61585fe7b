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
