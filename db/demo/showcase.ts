import { addDays, type CivilDate } from '../../core/dates.ts'
import type { QuoteDraft } from '../../core/quote/draft.ts'
import { emptyNeed } from '../../core/quote/empty-draft.ts'
import { build, buy } from './draft-parts.ts'

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
  buy('Quarrick Twin 100', 2),
  buy('Halden Row 36'),
  buy('Torvane Digital'),
  ...COMMON,
])

/** The kit's one heater is meant for a warm room: in this one it does not hold the temperature, and the report says so. */
const KIT = build('kit', 'Kit', 'One box with tank, lid, light, filter and heater, and a frame under it.', [
  buy('Wendlemere Start 40'),
  buy('Thornby Frame 36'),
  ...COMMON,
])

const RIMLESS = build('rimless', 'Rimless', 'Clear glass without a frame, on a cabinet that hides filter and cords.', [
  buy('Osmere Clear 90'),
  buy('Osmere Cover 90'),
  buy('Harrowfen Cabinet 90'),
  buy('Harrowfen Mat 90'),
  buy('Pellick C-1400'),
  buy('Quarrick Twin 100', 2),
  buy('Lumbry Strand 90'),
  buy('Torvane Watch'),
  ...COMMON,
])

/** The quote that the demo shows: a tank of about 90 cm in a room that gets cold at night. */
export const showcaseDraft = (today: CivilDate): QuoteDraft => ({
  title: 'A tank of about 90 cm for the living room',
  need: {
    ...emptyNeed(),
    lengthMm: 900,
    place: 'Living room, north wall, ground floor',
    livestockId: 'small-tropical',
    livestockNote: 'a shoal of tetras and some small catfish',
    budgetMinor: 100_000,
    byDate: addDays(today, 24),
    look: 'any',
    exact: {
      coldestRoomC: 15,
      warmestRoomC: 24,
      floor: 'ground_slab',
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
    reason: 'Two heaters hold the temperature on a cold night, and a second thermostat stops one that sticks.',
  },
  standsUntil: addDays(today, 14),
  note: 'The frame and the tank come from different stores; fetch the frame first and level it before the tank arrives.',
})
