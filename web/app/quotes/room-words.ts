import type { Conditions } from '../../../core/sizing/conditions.ts'
import { floorSketch } from '../../plots/floor-sketch.ts'
import { joistSketch } from '../../plots/joist-sketch.ts'
import type { PictureOption } from '../parts/picture-choice.tsx'

type Floor = Conditions['floor']
type Lie = NonNullable<Conditions['joistLie']> | 'unknown'

const floorOption = (value: Floor, label: string, says: string): PictureOption<Floor> => ({
  value,
  label,
  says,
  picture: floorSketch(value),
})
const lieOption = (value: Lie, label: string, says: string): PictureOption<Lie> => ({ value, label, says, picture: joistSketch(value) })

/** What the floor is, for someone who has only ever stood on it. */
export const FLOOR_OPTIONS: ReadonlyArray<PictureOption<Floor>> = [
  floorOption('ground_slab', 'On the ground', 'Concrete lying on soil, nothing under it.'),
  floorOption('timber_upper', 'Wood', 'Boards on beams, with a room, a cellar or a crawl space under them.'),
  floorOption('concrete_upper', 'Concrete over a room', 'As in most apartment houses.'),
  floorOption('unknown', 'I don’t know', 'Then the report says whom to ask.'),
]

/** How the tank lies on the joists. Not known counts as the worse of the ways. */
export const LIE_OPTIONS: ReadonlyArray<PictureOption<Lie>> = [
  lieOption('bearing_wall', 'Across them, at the wall they rest on', 'Their ends lie in the wall behind the tank.'),
  lieOption('across', 'Across them, elsewhere', 'Several joists share the tank.'),
  lieOption('along', 'Along them', 'One or two joists carry most of it.'),
  lieOption('unknown', 'I don’t know', 'Then the worse way counts.'),
]

/** Ways to find out that leave the floor whole. Common practice. */
export const FIND_JOISTS: readonly string[] = [
  'From a cellar, a garage or an attic the joists can often be seen.',
  'Floorboards run across the joists, and their nails or screws stand in rows over them, a joist under each row.',
  'Joists mostly span the shorter way across a room.',
  'A landlord or the plans of the house may say. Never drill or cut a floor to look.',
]
