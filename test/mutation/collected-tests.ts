import { expect } from 'vitest'

/**
 * What the tests of the physics import in place of the test program while mutants run: it keeps what they describe, so that a test can be run again and again
 * within one process. It knows the parts that they use and no others: a test that asks for more fails to load, and the count stops before it begins.
 */
export { expect }

type Body = () => unknown
/** A file or a `describe`, with what runs before its first test. */
interface Scope {
  names: string[]
  before: Body[]
  ready: boolean
}
export interface CollectedTest {
  id: string
  fileName: string
  scopes: Scope[]
  body: Body
}

let fileName = ''
let scopes: Scope[] = []
const collected = new Map<string, CollectedTest[]>()

const scopeOf = (names: string[]): Scope => ({ names, before: [], ready: false })

/** The tests of a file, loaded on first asking. */
export async function testsIn(path: string, load: () => Promise<unknown>): Promise<CollectedTest[]> {
  const known = collected.get(path)
  if (known) return known
  const tests: CollectedTest[] = []
  collected.set(path, tests)
  fileName = path
  scopes = [scopeOf([])]
  await load()
  return tests
}

/** Every hook runs anew for each mutant. */
export function startAfresh(): void {
  for (const tests of collected.values()) for (const test of tests) for (const scope of test.scopes) scope.ready = false
}

export async function runTest({ scopes: around, body }: CollectedTest): Promise<void> {
  for (const scope of around.filter(({ ready }) => !ready)) {
    scope.ready = true
    for (const before of scope.before) await before()
  }
  await body()
}

export function beforeAll(body: Body): void {
  scopes.at(-1)?.before.push(body)
}

function addTest(name: string, body: Body): void {
  const tests = collected.get(fileName) ?? []
  const names = [...(scopes.at(-1)?.names ?? []), name]
  tests.push({ id: `${fileName}#${tests.length} ${names.join(' ')}`, fileName, scopes: [...scopes], body })
}

function addScope(name: string, body: Body): void {
  scopes = [...scopes, scopeOf([...(scopes.at(-1)?.names ?? []), name])]
  body()
  scopes = scopes.slice(0, -1)
}

type Row = (...values: unknown[]) => unknown
/** One for each row of a table; a row that is an array is told apart into its values. */
const eachOf = (add: (name: string, body: Body) => void) => (table: readonly unknown[]) => (name: string, body: Row) => {
  table.forEach((row, index) => add(`${name} (${index})`, () => (Array.isArray(row) ? body(...(row as unknown[])) : body(row))))
}

export const it = Object.assign(addTest, { each: eachOf(addTest) })
export const describe = Object.assign(addScope, { each: eachOf(addScope) })
