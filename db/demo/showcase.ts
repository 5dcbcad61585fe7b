import { addDays, type CivilDate } from '../../core/dates.ts'
import type { QuoteDraft } from '../../core/quote/draft.ts'
import { emptyNeed } from '../../core/quote/empty-draft.ts'
import { fahrenheitToCelsius } from '../../core/units/factors.ts'
import { build, buy, storesNamed } from './draft-parts.ts'
import { inch } from './tanks.ts'

/** What every build of the showcased quote has besides: water, tests, and a strip that trips before a person does. */
const COMMON = [
  buy('Millrace Gravel 20 lb', 4),
  buy('Stillwell 250 mL'),
  buy('Dosset Chloride 50 g'),
  buy('Lockridge Five'),
  buy('Corbelle GFCI Strip 6'),
]

const STANDARD = build('standard', 'Standard parts', 'Rimmed glass on a steel frame, every part easy to replace.', [
  buy('Wendlemere 40 breeder'),
  buy('Wendlemere Lid 36 deep'),
  buy('Thornby Frame 36'),
  buy('Pellick C-1400'),
  buy('Quarrick Twin 100 with controller', 2),
  buy('Halden Row 36'),
  buy('Torvane Digital'),
  ...COMMON,
])

/**
 * The kit's one heater is meant for a warm room, and the bench's maker states no load: the report says that the one does not hold the
 * temperature here, and that the other is not known to carry the tank.
 */
const KIT = build('kit', 'Kit', 'One box with tank, lid, light, filter and heater, and a plain bench under it.', [
  buy('Wendlemere Start 40'),
  buy('Thornby Bench 36'),
  ...COMMON,
])

const RIMLESS = build('rimless', 'Rimless', 'Clear glass without a frame, on a cabinet that hides filter and cords.', [
  buy('Osmere Clear 90'),
  buy('Osmere Cover 90'),
  buy('Harrowfen Cabinet 90'),
  buy('Harrowfen Mat 90'),
  buy('Pellick C-1400'),
  buy('Quarrick Twin 100 with controller', 2),
  buy('Lumbry Strand 90'),
  buy('Torvane Watch'),
  ...COMMON,
])

/** The quote that the demo shows: a tank of three feet in a room that gets cold at night. Two stores are near enough to fetch from. */
export const showcaseDraft = (today: CivilDate): QuoteDraft => ({
  title: 'A 36 in planted tank for a cool living room',
  need: {
    ...emptyNeed(),
    lengthMm: inch(36),
    place: 'in the living room upstairs, against the north wall that carries the joists',
    livestockId: 'small-tropical',
    livestockNote: 'a shoal of tetras, a few small catfish and easy plants',
    budgetMinor: 100_000,
    byDate: addDays(today, 24),
    look: 'any',
    storeIds: storesNamed('Kettle Lane', 'Saltcote Pet', 'Upriver'),
    exact: {
      coldestRoomC: 15,
      warmestRoomC: fahrenheitToCelsius(75),
      floor: 'timber_upper',
      joistSpanMm: inch(144),
      joistSpacingMm: inch(16),
      joistLie: 'bearing_wall',
      floorUse: 'other',
      plants: 'low',
      disinfectant: 'chlorine',
      outletHeightMm: 450,
      outletDistanceMm: 600,
      otherLoadW: 300,
      tapPh: 7.6,
      tapKhDegrees: 5,
    },
  },
  builds: [STANDARD, KIT, RIMLESS],
  suggestion: {
    buildId: 'standard',
    reason: 'Two heaters hold the temperature on a cold night, and the controller that comes with each switches off one that sticks.',
  },
  standsUntil: addDays(today, 14),
  note: 'Bring the stand home first and level it where the tank will stand, before the tank arrives.',
})
