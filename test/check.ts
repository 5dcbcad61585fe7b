import { spawnSync } from 'node:child_process'

/** Everything that must hold before the tests run: format, lint, types, generated files unchanged. */
const node = process.execPath
const STEPS: Array<{ what: string; command: string; args: string[] }> = [
  { what: 'format', command: node, args: ['node_modules/prettier/bin/prettier.cjs', '--check', '--log-level', 'warn', '.'] },
  { what: 'lint', command: node, args: ['node_modules/oxlint/bin/oxlint', '--type-aware', '--deny-warnings'] },
  { what: 'types', command: node, args: ['node_modules/typescript/bin/tsc', '-b'] },
  { what: 'generated files', command: node, args: ['test/generate.ts', '--check'] },
]

let failed = 0
for (const { what, command, args } of STEPS) {
  const started = performance.now()
  const done = spawnSync(command, args, { stdio: 'inherit' })
  const good = done.status === 0
  if (!good) failed += 1
  console.log(`${good ? 'holds ' : 'BROKEN'} ${what} (${((performance.now() - started) / 1000).toFixed(1)} s)`)
}
process.exit(failed === 0 ? 0 : 1)
