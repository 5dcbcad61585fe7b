import type { Slot } from '../catalog/kinds.ts'
import type { Conditions } from './conditions.ts'

/** Where somebody answers it: a field of the need, or what a slot of the build is filled with. */
export type AnswerPlace = { at: 'need'; field: keyof Conditions } | { at: 'slot'; slot: Slot }
