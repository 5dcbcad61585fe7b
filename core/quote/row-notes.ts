import { specNotes } from '../catalog/spec-notes.ts'
import type { Product } from '../catalog/product.ts'
import type { Spec } from '../catalog/spec.ts'
import type { ReaderUnits } from '../units/quantity.ts'
import { sayPhrase } from '../units/say.ts'
import type { AssembledBuild } from './revision.ts'

/** What a product's spec asks for, in the document's units: for a row of a build. */
export const sayNotes = (product: { kind: Product['kind']; spec: Spec }, owned: boolean, units: ReaderUnits): string[] =>
  specNotes(product, { owned }).map(({ text }) => sayPhrase(text, units))

/** Notes of a build, each told once, with what they are about in the order of its rows. @example buildNotes(build)[0] // { about: 'Thornby Bench 36', text: 'Must stay dry: …' } */
export function buildNotes({ rows }: Pick<AssembledBuild, 'rows'>): Array<{ about: string; text: string }> {
  const byText = new Map<string, string[]>()
  for (const row of rows) for (const text of row.notes ?? []) byText.set(text, [...(byText.get(text) ?? []), row.text])
  return [...byText].map(([text, names]) => ({ about: [...new Set(names)].join(', '), text }))
}
