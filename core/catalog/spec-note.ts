import { phrase, type Phrase } from '../units/quantity.ts'
import type { Product } from './product.ts'

/** What a product's own spec asks of whoever sets it up. */
export interface SpecNote {
  /** "stand-particle-board": the same words are told once a build. */
  id: string
  text: Phrase
  source: { tag: 'common_practice' | 'own'; text: string }
}

export const practice = (id: string, text: Phrase): SpecNote => ({ id, text, source: { tag: 'common_practice', text: 'Common practice.' } })

/** A kind with its spec, as much of a product as the notes look at. */
export type NotedProduct = { [P in Product as P['kind']]: { kind: P['kind']; spec: P['spec'] } }[Product['kind']]

/** What every air hose asks for. */
export const airPumpNote = (id: string, whose: string): SpecNote =>
  practice(
    id,
    phrase`${whose} stands above the water line, or has a check valve in the hose: else water runs back into it when the power fails.`,
  )
