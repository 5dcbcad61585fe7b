import { caution } from '../startup/cautions.ts'

/**
 * Cautions that stand beside a finding: those of the one table where they are told there, and what only a finding has to say. Common practice; each defers
 * to the maker, the local code and licensed practice.
 */
export const FINDING_CAUTIONS = {
  floor:
    'Screening only, never an approval. Sagging, bouncing, notched or cut joists, a balcony, a mobile home, or any doubt: ask a licensed structural engineer before you place it.',
  mains:
    'Water and mains electricity can kill. Test the protective device first, unplug everything before hands go in; the local electrical code and a licensed electrician decide.',
  mains_230:
    'Water and mains electricity can kill. Press the test button of the residual-current device first, pull every plug before hands go in; the national wiring rules and a licensed electrician decide.',
  load: 'A full tank that falls can kill: empty it before anything under it is shifted. Maker’s instructions for stand and tank come first.',
  tipping:
    'A tank that tips crushes whoever pulled at it: children climb, pets jump, and an earthquake pushes harder than either. Fix a tall stand to the wall as its maker says, into what holds; where the ground shakes, ask what your local rules want.',
  glass:
    'A pane that bursts cuts and floods, and a tank that held yesterday may not hold tomorrow. A screening only: joints, scratches and chips count for more. The maker or a tank builder decides.',
  drain:
    'Water that runs back floods the floor and reaches the plugs under the tank. Only room in the sump holds it for certain: an air hole clogs, a check valve sticks. Pull the return pump’s plug and watch, before you leave it alone and after every change; outlets and strips hang above all water.',
  heater: caution('unplug'),
  lift: caution('lifting'),
  chemicals: caution('bleach'),
} as const

export type CautionName = keyof typeof FINDING_CAUTIONS
