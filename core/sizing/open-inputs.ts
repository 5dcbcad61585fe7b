import type { OpenInput } from './open-input.ts'
import { flowInputs } from './flow-inputs.ts'
import { pluggedInputs } from './plugged-inputs.ts'
import type { SizingSubject } from './report.ts'
import { roomInputs } from './room-inputs.ts'
import { sumpInputs } from './sump-inputs.ts'
import { tankInputs } from './tank-inputs.ts'

/**
 * Everything that a report on this build rests on without anybody having stated it, as far as there is a range to try it over: the defaults of the room, and
 * specs that nobody entered at the ends of their typical range, which are those that the checks themselves take them to.
 *
 * Source: room-inputs.ts and typical-ranges.ts, common practice.
 *
 * @example openInputs(subject).map(({ name }) => name) // ['coldest room temperature', 'glass thickness']
 */
export const openInputs = ({ gear, conditions }: SizingSubject): OpenInput[] => [
  ...roomInputs(conditions),
  ...tankInputs(gear),
  ...pluggedInputs(gear),
  ...flowInputs(gear),
  ...sumpInputs(gear, conditions),
]
