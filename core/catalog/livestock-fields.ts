import { number, required } from '../fields.ts'

const warmth = (key: 'lowestC' | 'targetC' | 'highestC' | 'dangerC', label: string, help: string) =>
  required(number(key, label, 'degC', 0, 45, { help }))

/** Figures of a livestock group, in the order a form asks for them. */
export const LIVESTOCK_FIELDS = [
  warmth('lowestC', 'Lowest safe', 'Below it the animals are harmed.'),
  warmth('targetC', 'Target', 'What the heater is set to.'),
  warmth('highestC', 'Highest comfortable', 'In summer.'),
  warmth('dangerC', 'Danger mark', 'A heater that sticks on must stay below it.'),
  required(number('flowFloorPerHour', 'Least turnover', 'per_hour', 0.1, 60, { help: 'Through the filter, with its media in.' })),
  number('flowCeilingPerHour', 'Most turnover', 'per_hour', 0.1, 100, { help: 'Empty where strong flow does no harm.' }),
  required(number('smallestVolumeL', 'Smallest tank', 'L', 1, 20_000)),
  required(number('feedGramsPerDay', 'Feed a day', 'g', 0.01, 1000, { help: 'Dry feed for a usual stock.' })),
] as const
