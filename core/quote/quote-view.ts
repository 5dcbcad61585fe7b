import type { CivilDate } from '../dates.ts'
import type { BuildLetter, OwnedLine, QuoteState } from './draft.ts'
import type { QuoteInputs } from './revision.ts'

export interface Customer {
  id: string
  name: string
  /** E-mail, telephone, or how else to reach them. */
  reach: string
  note: string
  /** What they have at home already. */
  gear: OwnedLine[]
  erasedOn: CivilDate | null
  version: number
}

export interface RevisionSummary {
  revision: number
  issuedOn: CivilDate
  standsUntil: CivilDate
  /** Today's totals in order of the builds; null where incomplete. */
  totals: Array<{ letter: BuildLetter; name: string; todayMinor: number | null }>
}

export interface QuoteAnswer {
  revision: number
  answer: 'accepted' | 'declined'
  letter: BuildLetter | null
  note: string
  at: string
}

/** A quote as the desk opens it: with everything `assembleBuild` needs. */
export interface QuoteView extends QuoteInputs {
  id: string
  /** "2026-0147"; given at the first issue. */
  number: string | null
  state: QuoteState
  version: number
  customer: Customer
  advisor: string
  savedAt: string
  revisions: RevisionSummary[]
  answer: QuoteAnswer | null
  /** Full addresses; null before the first issue or where links are off (plain http outside localhost). */
  links: { quote: string; setup: string } | null
}

export interface QuoteListRow {
  id: string
  number: string | null
  title: string
  customerName: string
  state: QuoteState
  advisor: string
  savedAt: string
  standsUntil: CivilDate | null
  /** The build that was accepted. */
  acceptedLetter: BuildLetter | null
  todayMinor: Array<number | null>
}

/** Water test, as read off the kit. Ammonia as the kit's own basis. */
export interface Reading {
  id: string
  takenOn: CivilDate
  ammoniaMgL: number | null
  nitriteMgL: number | null
  nitrateMgL: number | null
  ph: number | null
  /** Carbonate hardness in German degrees, as the kit counts drops. */
  khDegrees: number | null
  temperatureC: number | null
  note: string
}

/** A step that is done, and when. */
export interface StepTick {
  stepId: string
  on: CivilDate
  /** On somebody's word: the log did not bear it out. */
  onWord: boolean
}

export interface SetupView {
  id: string
  quoteNumber: string
  customerName: string
  letter: BuildLetter
  startedOn: CivilDate | null
  ticks: StepTick[]
  stepCount: number
  link: string | null
}
