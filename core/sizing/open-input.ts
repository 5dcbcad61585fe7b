import type { Phrase } from '../units/quantity.ts'
import type { AnswerPlace } from './answer-place.ts'
import type { SizingSubject } from './report.ts'

/** One end of what an open input may be. */
export interface InputEnd {
  /** "8 mm", "wood" */
  says: Phrase
  /** The same build in the same room with this end stated. */
  state: (subject: SizingSubject) => SizingSubject
}

/** Something that nobody stated and a default or a typical range stands for. */
export interface OpenInput {
  /** As `assumed` and `missing` of a finding name it: "glass thickness". */
  name: string
  /** In plain words: "How thick is the glass?" */
  question: string
  place: AnswerPlace
  /** Both ends of a range, or every answer of a choice. */
  ends: readonly InputEnd[]
}
