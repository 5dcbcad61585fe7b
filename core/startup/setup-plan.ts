import type { Phrase } from '../units/quantity.ts'

export const STEP_GROUPS = ['before', 'place', 'leak_test', 'fit_out', 'power', 'fill', 'cycle', 'first_fish'] as const
export type StepGroup = (typeof STEP_GROUPS)[number]

/** One step of the startup checklist. Every amount is computed for this tank. */
export interface Step {
  /** Stable within a plan: "drip-loops". */
  id: string
  group: StepGroup
  title: string
  /** Why, in two lines at most. */
  why: Phrase
  /** "How much", "How many", "How low": label and figure. */
  amounts: Array<{ label: string; value: Phrase }>
  /** Lettered actions. */
  actions: Phrase[]
  howLong: string
  /** When to stop and ask. */
  stopAndAsk: Phrase
  /** The criterion the button repeats: "Done: all 4 hang below the outlet". */
  done: string
  /** Days after the start on which it is due at the earliest; null where it depends on readings. */
  earliestDay: number | null
  drawing: 'drip_loop' | 'level' | null
  caution: string | null
}

/** Where a water test means stop and ask. Frozen into the plan, so that a later edition of the rules does not move them. */
export interface ReadingMarks {
  /** Stop at this and above, mg/L. */
  ammoniaMgL: number
  /** Stop above this, mg/L. */
  nitriteMgL: number
  /** Stop below these. */
  lowestPh: number
  lowestKhDegrees: number
  lowestC: number
  /** Most for animals to go in; absent in plans that were frozen without it, and then `dangerC` counts. */
  highestC?: number
  /** Stop at this and above. */
  dangerC: number
  heated: boolean
}

/** Frozen when the setup is made: what was bought decides the steps. */
export interface SetupPlan {
  /** "90 cm tank, 146 L of water" without a name or a price. */
  title: Phrase
  waterVolumeL: number | null
  steps: Step[]
  /** What could not be computed and why: "conditioner dose: the product states none". */
  notComputed: string[]
  /** Where a water test means stop and ask; absent in plans that were frozen before there were marks, and then the general ones count. */
  marks?: ReadingMarks
}
