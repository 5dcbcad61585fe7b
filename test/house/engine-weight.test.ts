import { readFileSync } from 'node:fs'
import { dirname, relative, resolve } from 'node:path'
import { expect, it } from 'vitest'
import { FINDING_CAUTIONS } from '../../core/sizing/finding-cautions.ts'
import { SOURCES } from '../../core/sizing/sources.ts'

const root = resolve(import.meta.dirname, '../..')

/** Every module that one brings with it, itself included. */
function reachedFrom(file: string, reached = new Set<string>()): Set<string> {
  if (reached.has(file)) return reached
  reached.add(file)
  for (const [, typeOnly, target] of readFileSync(file, 'utf8').matchAll(/^(?:import|export)\s+(type\s+)?[^'"]*?from\s+'([^']+)'/gm))
    if (typeOnly === undefined && target?.startsWith('.')) reachedFrom(resolve(dirname(file), target), reached)
  return reached
}
const from = (path: string): string[] => [...reachedFrom(resolve(root, path))].map((file) => relative(root, file))

// What the browser takes with the report's panel alone, by web/vite.config.ts.
const WHEN_READ = /const WHEN_READ = \[([^\]]+)\]/.exec(readFileSync(resolve(root, 'web/vite.config.ts'), 'utf8'))?.[1] ?? ''
const whenRead = [...WHEN_READ.matchAll(/'([^']+)'/g)].map(([, name]) => `core/sizing/${name}.ts`)

it('keeps ranges, questions, sources and cautions out of the engine that the desk carries at every edit', () => {
  const engine = from('core/sizing/engine.ts')
  expect(engine).toContain('core/sizing/heater-stuck.ts')
  expect(engine.filter((path) => whenRead.includes(path) || path.startsWith('core/startup/'))).toEqual([])
})

it('brings all of them with the report’s panel', () => {
  const panel = from('web/app/quotes/told-findings.tsx')
  expect(whenRead.length).toBeGreaterThan(5)
  expect(whenRead.filter((path) => !panel.includes(path))).toEqual([])
})

it('leaves none of them to the desk itself, which opens before the report', () => {
  expect(from('web/app/quotes/sizing-panel.tsx').filter((path) => whenRead.includes(path))).toEqual([])
  expect(from('core/quote/worked-build.ts').filter((path) => whenRead.includes(path))).toEqual([])
})

it('has no source and no caution that no rule names', () => {
  const rules = from('core/sizing/engine.ts')
    .map((path) => readFileSync(resolve(root, path), 'utf8'))
    .join('\n')
  const unnamed = [...Object.keys(SOURCES), ...Object.keys(FINDING_CAUTIONS)].filter((name) => !rules.includes(`'${name}'`))
  expect(unnamed).toEqual([])
})
