import { CHEMISTRY, NUMBERS } from './chemistry.ts'
import { ELECTRICAL } from './electrical.ts'
import { FLOOR, STANDING_FIRM } from './floor.ts'
import { FLOW } from './flow.ts'
import { GLASS } from './glass.ts'
import { HEAT, HEAT_IN_TIME } from './heat.ts'
import { NITROGEN, OXYGEN } from './life.ts'
import { LIGHT } from './light.ts'
import type { ReferenceTopic } from './reference-value.ts'
import { TANK } from './tank.ts'
import { UNITS } from './units.ts'
import { WATER } from './water.ts'

/** Every check value, by topic. One test asserts them all, and docs/reference-values.md is written from them. */
export const TOPICS: readonly ReferenceTopic[] = [
  WATER, UNITS, TANK, STANDING_FIRM, FLOOR, GLASS, HEAT, HEAT_IN_TIME, FLOW, OXYGEN, NITROGEN, LIGHT, ELECTRICAL, CHEMISTRY, NUMBERS,
] // prettier-ignore
