import { spawnSync } from 'node:child_process'
import { readFileSync, rmSync } from 'node:fs'
import { resolve } from 'node:path'

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

export const isOpen = ({ status }: Mutant): boolean => status === 'Survived' || status === 'NoCoverage'

/** One start of the tool over some files; null where it failed, which is told. */
export function measure(files: readonly string[]): Reported | null {
  rmSync(REPORT, { force: true })
  const stryker = 'node_modules/@stryker-mutator/core/bin/stryker.js'
  const done = spawnSync(process.execPath, [stryker, 'run', 'test/mutation/stryker.json', '--mutate', files.join(',')], {
    encoding: 'utf8',
    // Files that are loaded anew for a mutant are compiled once.
    env: { ...process.env, MUTATED: files.join(','), NODE_COMPILE_CACHE: resolve('.types/mutation/compiled') },
  })
  if (done.status === 0) return (JSON.parse(readFileSync(REPORT, 'utf8')) as { files: Reported }).files
  console.error(`${files.join(', ')} could not be measured:\n${(done.stdout + done.stderr).slice(-2000)}`)
  return null
}
