import { spawnSync } from 'node:child_process'
import { readFileSync, rmSync } from 'node:fs'

const REPORT = '.types/mutation/report.json'

interface Place {
  line: number
  column: number
}
/** One change of one expression, and whether a test noticed it. */
export interface Mutant {
  mutatorName: string
  replacement?: string
  status: string
  location: { start: Place; end: Place }
}
/** By path. */
export type Reported = Record<string, { source: string; mutants: Mutant[] }>

/** Tests that stand near to the changed files, or all. */
export type Reach = 'near' | 'all'

export const isOpen = ({ status }: Mutant): boolean => status === 'Survived' || status === 'NoCoverage'
/** The same change in two starts. */
export const keyOf = ({ mutatorName, replacement = '', location: { start, end } }: Mutant): string =>
  `${start.line}:${start.column}-${end.line}:${end.column} ${mutatorName} ${replacement}`

/** What the tool is asked to change: whole files, or the stretches that are still open in them. Its columns count from 0 there, and from 1 in its report. */
function targets(files: readonly string[], open: Reported): string[] {
  return files.flatMap((file) => {
    const found = open[file]
    if (!found) return [file]
    return found.mutants
      .filter(isOpen)
      .map(({ location: { start, end } }) => `${file}:${start.line}:${start.column - 1}-${end.line}:${end.column - 1}`)
  })
}

/** One start of the tool over some files; null where it failed, which is told. */
export function measure(files: readonly string[], reach: Reach, open: Reported = {}): Reported | null {
  const asked = [...new Set(targets(files, open))]
  if (asked.length === 0) return {}
  rmSync(REPORT, { force: true })
  const stryker = 'node_modules/@stryker-mutator/core/bin/stryker.js'
  const done = spawnSync(process.execPath, [stryker, 'run', 'test/mutation/stryker.json', '--mutate', asked.join(',')], {
    encoding: 'utf8',
    env: { ...process.env, MUTATED: files.join(','), REACH: reach },
  })
  if (done.status === 0) return (JSON.parse(readFileSync(REPORT, 'utf8')) as { files: Reported }).files
  console.error(`${files.join(', ')} could not be measured:\n${(done.stdout + done.stderr).slice(-2000)}`)
  return null
}
