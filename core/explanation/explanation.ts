import type { Phrase } from '../units/quantity.ts'

/** Where a figure comes from: of a product, out of the answers about room and need, the usual one in place of an open one, nowhere yet, of the animals, worked out. */
export const INPUT_SOURCES = ['entered', 'answered', 'assumed', 'missing', 'group', 'reckoned'] as const
export type InputSource = (typeof INPUT_SOURCES)[number]

export const INPUT_SOURCE_WORDS: Record<InputSource, string> = {
  entered: 'entered with the product',
  answered: 'answered, or set for this place',
  assumed: 'assumed: what is usual',
  missing: 'not stated',
  group: 'marks of the animals',
  reckoned: 'worked out from these',
}

/** One thing that went into a finding, with its figures in the reader's units. */
export interface ExplainedInput {
  /** "Heater (2 × Torvane 100 W)", "Coldest room temperature" */
  name: string
  value: Phrase
  from: InputSource
}

/** How a finding came about. Its source is the finding's own. */
export interface Explanation {
  /** The formula in words. */
  formula: Phrase
  inputs: ExplainedInput[]
}
