import type { LivestockGroup } from '../sizing/conditions.ts'

/**
 * Groups of animals that ask for the same water, in plain words. Every figure is a starting point that an advisor may change for one quote.
 *
 * Units:  degrees Celsius, litres, turnovers an hour, grams of dry feed a day for a usual stock of the group.
 * Source: common practice of the keeping trade; `source` says what of it, and what is from memory, without figures, which a reader has in other units.
 *         Nothing here was read off a standard.
 *
 * `lowestC` and `dangerC` are marks of danger, `targetC` and `highestC` of comfort: a heater is chosen for the target, and one that sticks on must
 * stay below the danger mark.
 */
export const LIVESTOCK_GROUPS: readonly LivestockGroup[] = [
  {
    id: 'small-tropical',
    name: 'Small tropical community',
    examples: 'tetras, rasboras, small catfish',
    lowestC: 21,
    targetC: 25,
    highestC: 28,
    dangerC: 32,
    flowCeilingPerHour: 10,
    flowFloorPerHour: 4,
    smallestVolumeL: 54,
    feedGramsPerDay: 1,
    lidNeeded: false,
    water: 'fresh',
    // 24 to 26 °C, 4 to 10 turnovers an hour, 54 L as the smallest for a shoal.
    source: 'small shoaling fish of warm water; the danger mark is the general one for tropical fish',
  },
  {
    id: 'labyrinth',
    name: 'Betta and other labyrinth fish',
    examples: 'betta, gouramis, paradise fish kept warm',
    lowestC: 22,
    targetC: 26,
    highestC: 29,
    dangerC: 32,
    flowCeilingPerHour: 6,
    flowFloorPerHour: 2,
    smallestVolumeL: 20,
    feedGramsPerDay: 0.2,
    lidNeeded: true,
    water: 'fresh',
    source: 'long fins want slow water, and a lid keeps the air they breathe warm and the fish in',
  },
  {
    id: 'livebearers-hard',
    name: 'Livebearers in hard water',
    examples: 'guppies, platies, mollies, swordtails',
    lowestC: 19,
    targetC: 24,
    highestC: 28,
    dangerC: 32,
    flowCeilingPerHour: 10,
    flowFloorPerHour: 4,
    smallestVolumeL: 60,
    feedGramsPerDay: 1.5,
    lidNeeded: false,
    water: 'fresh',
    // 22 to 26 °C.
    source: 'hard, slightly alkaline water of middling warmth',
  },
  {
    id: 'blackwater-soft',
    name: 'Soft-water, blackwater fish',
    examples: 'wild-type tetras, pencilfish, dwarf cichlids of soft rivers',
    lowestC: 23,
    targetC: 26,
    highestC: 29,
    dangerC: 32,
    flowCeilingPerHour: 6,
    flowFloorPerHour: 3,
    smallestVolumeL: 60,
    feedGramsPerDay: 0.7,
    lidNeeded: true,
    water: 'fresh',
    source: 'slow, warm, soft water; several of the group jump',
  },
  {
    id: 'warm-cichlids',
    name: 'Warm-water cichlids',
    examples: 'discus, angelfish kept with them, rams',
    lowestC: 25,
    targetC: 28,
    highestC: 31,
    dangerC: 33,
    flowCeilingPerHour: 6,
    flowFloorPerHour: 3,
    smallestVolumeL: 200,
    feedGramsPerDay: 5,
    lidNeeded: false,
    water: 'fresh',
    // 27 to 30 °C; 33 °C is from memory.
    source: 'fish of water warmer than most; the danger mark is quoted from memory',
  },
  {
    id: 'african-lake',
    name: 'African lake cichlids',
    examples: 'rock dwellers of the great rift lakes',
    lowestC: 21,
    targetC: 25,
    highestC: 28,
    dangerC: 31,
    flowCeilingPerHour: null,
    flowFloorPerHour: 6,
    smallestVolumeL: 200,
    feedGramsPerDay: 5,
    lidNeeded: true,
    water: 'fresh',
    // 31 °C is from memory.
    source:
      'full stock and much filtration, hard alkaline water, chased fish jump; warm lake water holds little oxygen, hence the lower danger mark, quoted from memory',
  },
  {
    id: 'goldfish-fancy',
    name: 'Fancy goldfish',
    examples: 'double-tailed, round-bodied goldfish',
    lowestC: 12,
    targetC: 20,
    highestC: 24,
    dangerC: 30,
    flowCeilingPerHour: 8,
    flowFloorPerHour: 4,
    smallestVolumeL: 120,
    feedGramsPerDay: 3,
    lidNeeded: false,
    water: 'fresh',
    // 18 to 22 °C; 12 and 30 °C are from memory.
    source: 'cool water, heavy feeders, weak swimmers; the lowest and the danger mark are quoted from memory',
  },
  {
    id: 'cool-stream',
    name: 'Cool-water stream fish',
    examples: 'mountain minnows, hillstream loaches, danios',
    lowestC: 14,
    targetC: 20,
    highestC: 23,
    dangerC: 27,
    flowCeilingPerHour: null,
    flowFloorPerHour: 8,
    smallestVolumeL: 80,
    feedGramsPerDay: 0.7,
    lidNeeded: true,
    water: 'fresh',
    // 27 °C is from memory.
    source: 'cool, fast, oxygen-rich water; most jump; the danger mark is quoted from memory',
  },
  {
    id: 'dwarf-shrimp',
    name: 'Dwarf shrimp',
    examples: 'small algae-eating shrimp and snails',
    lowestC: 15,
    targetC: 22,
    highestC: 26,
    dangerC: 30,
    flowCeilingPerHour: 8,
    flowFloorPerHour: 2,
    smallestVolumeL: 15,
    feedGramsPerDay: 0.05,
    lidNeeded: false,
    water: 'fresh',
    // 20 to 24 °C; 15 and 30 °C are from memory.
    source: 'slow water and a guarded filter inlet; the lowest and the danger mark are quoted from memory',
  },
  {
    id: 'marine-fish',
    name: 'Salt-water fish',
    examples: 'clownfish, gobies, small damsels, without corals',
    lowestC: 22,
    targetC: 25,
    highestC: 27,
    dangerC: 31,
    flowCeilingPerHour: null,
    flowFloorPerHour: 5,
    smallestVolumeL: 120,
    feedGramsPerDay: 2,
    lidNeeded: true,
    water: 'salt',
    // 24 to 26 °C at salinity 33 to 35; 22 and 31 °C are from memory.
    source:
      'steady warmth and strong movement, which pumps beside the filter add; many jump; the lowest and the danger mark are quoted from memory',
  },
  {
    id: 'soft-coral-reef',
    name: 'Reef with soft corals',
    examples: 'soft and button corals, a few small fish, shrimps',
    lowestC: 22,
    targetC: 25,
    highestC: 27,
    dangerC: 30,
    flowCeilingPerHour: null,
    flowFloorPerHour: 5,
    smallestVolumeL: 100,
    feedGramsPerDay: 1,
    lidNeeded: false,
    water: 'salt',
    // 24 to 26 °C at salinity 35; 22 and 30 °C are from memory.
    source: 'corals bleach in water that stays warm; an open top cools; the lowest and the danger mark are quoted from memory',
  },
]

/**
 * All groups of a place: those that came with the service, an edited one in its own stead, then the place's own.
 *
 * @example groupsOf({ livestock: [{ ...smallTropical, targetC: 24, standing: 'edited' }] })[0]?.targetC // 24
 */
export function groupsOf({ livestock = [] }: { livestock?: readonly LivestockGroup[] | undefined } = {}): LivestockGroup[] {
  const changed = new Map(livestock.map((group) => [group.id, group]))
  const seeded = new Set(LIVESTOCK_GROUPS.map(({ id }) => id))
  return [...LIVESTOCK_GROUPS.map((group) => changed.get(group.id) ?? group), ...livestock.filter(({ id }) => !seeded.has(id))]
}

/**
 * The group with this id at a place, as it came where no place is given; undefined if there is none.
 *
 * @example livestockGroup('dwarf-shrimp')?.targetC // 22
 */
export function livestockGroup(id: string, place: { livestock?: readonly LivestockGroup[] | undefined } = {}): LivestockGroup | undefined {
  return groupsOf(place).find((group) => group.id === id)
}
