import { choice, flag, number, type Field, type FieldsObject } from '../fields.ts'
import type { NeedExact } from '../quote/need.ts'

/**
 * The room, the outlet and the water under "more exact", in the order a form asks for them, with limits that refuse the absurd:
 * rooms people live in, outlets in a wall, circuits of a household, water an animal could live in.
 */
const FIELDS = [
  number('coldestRoomC', 'Coldest the room gets', 'degC', -5, 35, { help: 'On a winter night, heating down.' }),
  number('warmestRoomC', 'Warmest the room gets', 'degC', 5, 45, { help: 'On a summer afternoon.' }),
  choice(
    'floor',
    'Floor',
    {
      ground_slab: 'Slab on the ground',
      timber_upper: 'Timber, upper storey',
      concrete_upper: 'Concrete, upper storey',
      unknown: 'Not known',
    },
    'A screening only; an engineer decides.',
  ),
  number('joistSpanMm', 'Joist span', 'mm', 600, 9000, { help: 'Between the walls or beams that carry the joists.' }),
  number('joistSpacingMm', 'Joist spacing', 'mm', 150, 1200, { help: 'From the middle of one joist to the middle of the next.' }),
  choice('joistLie', 'Tank and joists', {
    bearing_wall: 'Back against the wall that carries them',
    across: 'Across them, elsewhere',
    along: 'Along them',
  }),
  choice('floorUse', 'Room is', { bedroom: 'Bedroom', other: 'Not a bedroom' }, 'Bedrooms are built for less.'),
  number('altitudeM', 'Height above the sea', 'm', -400, 5000, { help: 'Thinner air gives the water less oxygen.' }),
  number('waterBelowRimMm', 'Water below the rim', 'mm', 0, 300),
  number('substrateDepthMm', 'Substrate depth', 'mm', 0, 300),
  number('outletHeightMm', 'Outlet height above the floor', 'mm', 0, 2500),
  number('outletDistanceMm', 'Outlet distance from the tank', 'mm', 0, 10_000, { help: 'Along the wall.' }),
  number('circuitVoltageV', 'Circuit voltage', 'V', 90, 260),
  number('circuitCurrentA', 'Circuit current', 'A', 1, 63),
  number('otherLoadW', 'Other load on the circuit', 'W', 0, 20_000),
  flag('circuitProtected', 'Circuit protected', 'A GFCI or residual-current device already protects it.'),
  number('energyPriceMinor', 'Price of a kilowatt hour', null, 0, 1_000_000, { unitText: 'minor units' }),
  number('lightHoursPerDay', 'Light a day', 'h', 0, 24),
  choice('plants', 'Plants', { none: 'None', low: 'Low light', medium: 'Medium light', high: 'High light' }),
  choice('disinfectant', 'Tap water has', { chlorine: 'Chlorine', chloramine: 'Chloramine', none: 'None (well)', unknown: 'Not known' }),
  number('siphonBelowMm', 'Siphon level below the water', 'mm', 0, 1000, {
    help: 'Of a tank over a sump: the overflow’s edge or the return’s outlet or air hole, whichever is lower.',
  }),
  number('pipeVolumeL', 'Water in the pipes', 'L', 0, 100, { help: 'Of a sump: what falls back when the pump stops.' }),
  number('tapC', 'Tap water temperature', 'degC', 0, 45, { help: 'In winter, as it comes out of the cold tap or is mixed.' }),
  number('waterChangePercent', 'Water changed at once', 'percent', 1, 100, { help: 'A quarter is usual.' }),
  number('tapPh', 'Tap pH', null, 3, 11),
  number('tapGhDegrees', 'Tap GH', 'dKH', 0, 60, { help: 'German degrees.' }),
  number('tapKhDegrees', 'Tap KH', 'dKH', 0, 60, { help: 'German degrees.' }),
  number('targetC', 'Target temperature', 'degC', 5, 35, { help: 'Overrides the livestock group.' }),
  number('lowestC', 'Lowest safe temperature', 'degC', 0, 35, { help: 'Overrides the livestock group.' }),
  number('dangerC', 'Danger mark', 'degC', 15, 45, { help: 'A heater stuck on must not reach it.' }),
] as const satisfies readonly Field[]

/** A compile error here means that the table and NeedExact describe different objects. */
type Same = [FieldsObject<typeof FIELDS>, NeedExact, keyof FieldsObject<typeof FIELDS>] extends [
  NeedExact,
  FieldsObject<typeof FIELDS>,
  keyof NeedExact,
]
  ? keyof NeedExact extends keyof FieldsObject<typeof FIELDS>
    ? true
    : false
  : false
type Checked<T extends true> = T extends true ? readonly Field[] : never

export const CONDITION_FIELDS: Checked<Same> = FIELDS
