import { choice, flag, number, openChoice } from '../fields.ts'
import type { SeededGroupId } from './living-spec.ts'

/** Names as in the groups' table; a test holds the two together. */
const GROUPS = {
  'small-tropical': 'Small tropical community',
  labyrinth: 'Betta and other labyrinth fish',
  'livebearers-hard': 'Livebearers in hard water',
  'blackwater-soft': 'Soft-water, blackwater fish',
  'warm-cichlids': 'Warm-water cichlids',
  'african-lake': 'African lake cichlids',
  'goldfish-fancy': 'Fancy goldfish',
  'cool-stream': 'Cool-water stream fish',
  'dwarf-shrimp': 'Dwarf shrimp',
  'marine-fish': 'Salt-water fish',
  'soft-coral-reef': 'Reef with soft corals',
} as const satisfies Record<SeededGroupId, string>

/** Liquid water that anything lives in. */
const warmth = (key: 'lowestC' | 'highestC', label: string) => number(key, label, 'degC', 0, 40)

/** Spec fields of plants and animals: what they need, where it is known. */
export const LIVING_FIELDS = {
  plant: [
    choice('light', 'Light', { low: 'Low', medium: 'Medium', high: 'High' }),
    choice('place', 'Place', {
      front: 'Front', middle: 'Middle', back: 'Back', on_hardscape: 'On wood or rock', floating: 'Floating',
    }), // prettier-ignore
    warmth('lowestC', 'Lowest temperature'),
    warmth('highestC', 'Highest temperature'),
    number('heightMm', 'Height when grown', 'mm', 5, 3000),
    flag('co2Needed', 'Needs CO2'),
    choice('water', 'Water', { fresh: 'Fresh', salt: 'Salt' }),
  ],
  livestock: [
    openChoice('group', 'Livestock group', GROUPS, 'Water, warmth and feed that the group asks for.'),
    number('smallestVolumeL', 'Smallest tank', 'L', 1, 20_000),
    warmth('lowestC', 'Lowest temperature'),
    warmth('highestC', 'Highest temperature'),
    number('adultLengthMm', 'Length when grown', 'mm', 2, 3000),
    number('leastTogether', 'At least together', 'count', 1, 500, { whole: true, help: 'Fewer of them are unwell.' }),
    flag('jumps', 'Jumps', 'A lid keeps it in.'),
  ],
} as const
