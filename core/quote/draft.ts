import type { CivilDate } from '../dates.ts'
import type { Slot } from '../catalog/kinds.ts'
import type { Spec } from '../catalog/spec.ts'
import type { ReaderUnits } from '../units/quantity.ts'
import type { Discount } from '../pricing/discount.ts'
import type { Need } from './need.ts'
import type { OurService } from './our-service.ts'
import type { Deposit } from './terms.ts'

/**
 * One answer in a build. Slots a kit fills need no line of their own; one that has a line takes the place of the kit's part, unless it stands beside it
 * (`besideKit`).
 */
export type BuildLine =
  /** `storeId` null: among the stores the customer will use, where the build's total today is least, delivery included. */
  | {
      id: string
      answer: 'buy'
      productId: string
      quantity: number
      storeId: string | null
      note: string
      besideKit?: boolean | undefined
    }
  /** Already owned: a catalog product, or a description with the spec someone read off it. */
  | {
      id: string
      answer: 'owned'
      slot: Slot
      productId: string | null
      description: string
      quantity: number
      spec: Spec | null
      besideKit?: boolean | undefined
    }
  | { id: string; answer: 'not_needed'; slot: Slot; reason: string }

/** What a customer has at home already: kept with the customer too, for the next quote. */
export type OwnedLine = Extract<BuildLine, { answer: 'owned' }>

export interface Build {
  id: string
  name: string
  /** One sentence for the customer: what this build is good for. */
  why: string
  lines: BuildLine[]
  /** Services at our own price; absent: none. */
  services?: OurService[] | undefined
}

/** A quote as the advisor edits it, saved as a whole with the version it was based on. */
export interface QuoteDraft {
  title: string
  need: Need
  /** One to four; A, B, C, D by position. */
  builds: Build[]
  /** The build marked "we suggest", with the reason. */
  suggestion: { buildId: string; reason: string } | null
  standsUntil: CivilDate | null
  /** Units that the customer reads the document in; absent: the install's. */
  units?: ReaderUnits['system'] | undefined
  note: string
  /** Taken off the goods of every build; absent or null: none. */
  discount?: Discount | null | undefined
  /** Asked for when the customer says yes; absent or null: none. */
  deposit?: Deposit | null | undefined
}

export const BUILD_LETTERS = ['A', 'B', 'C', 'D'] as const
export type BuildLetter = (typeof BUILD_LETTERS)[number]

export type QuoteState = 'draft' | 'issued' | 'accepted' | 'declined' | 'lapsed' | 'withdrawn'
