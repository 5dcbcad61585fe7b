import { existsSync } from 'node:fs'
import { startVitest } from 'vitest/node'
import { chromiumPath } from './support/chromium.ts'
import { postgresAvailable } from './support/postgres-server.ts'

/**
 * Runs every suite that this machine can run and names the ones it cannot in one line: those count as skipped, never as passed.
 * Arguments are vitest's file filters. The last line is the runner's own total.
 */
interface Totals {
  passed: number
  failed: number
  skipped: number
}

async function suitesToRun(): Promise<{ run: string[]; left: string[] }> {
  const run = ['rules', 'embedded']
  const left: string[] = []
  const postgres = await postgresAvailable()
  if (postgres.available) run.push('postgres')
  else left.push(`real PostgreSQL (${postgres.reason})`)
  if (chromiumPath() && existsSync('web/dist/index.html')) run.push('browser')
  else left.push('a real browser (no Chromium found; install it or name it in CHROME_PATH)')
  return { run, left }
}

const filters = process.argv.slice(2).filter((argument) => !argument.startsWith('-'))
const { run, left } = await suitesToRun()
const vitest = await startVitest('test', filters, { run: true, watch: false, project: run, passWithNoTests: false })
const totals: Totals = { passed: 0, failed: 0, skipped: left.length }
for (const module of vitest.state.getTestModules()) {
  if (module.errors().length > 0) totals.failed += 1
  for (const test of module.children.allTests()) {
    const state = test.result().state
    if (state === 'passed') totals.passed += 1
    else if (state === 'failed') totals.failed += 1
    else totals.skipped += 1
  }
}
const unhandled = vitest.state.getUnhandledErrors().length
await vitest.close()
if (left.length > 0) console.log(`Not run here, each counted as skipped: ${left.join('; ')}.`)
const failed = totals.failed + unhandled
console.log(`${totals.passed} passed, ${failed} failed, ${totals.skipped} skipped`)
process.exit(failed > 0 || totals.passed === 0 ? 1 : 0)
