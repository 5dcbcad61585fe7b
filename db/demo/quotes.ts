import { addDays, type CivilDate } from '../../core/dates.ts'
import type { BuildLetter, QuoteDraft } from '../../core/quote/draft.ts'
import { emptyNeed } from '../../core/quote/empty-draft.ts'
import { build, buy, notNeeded, owned } from './draft-parts.ts'
import { showcaseDraft } from './showcase.ts'
import { inch } from './tanks.ts'

/** A quote of the scenario and what became of it, in days before today. */
export interface DemoQuote {
  /** The showcased one is the one that the demo prints. */
  key: 'showcase' | 'school' | 'large' | 'planted' | 'goldfish' | 'desk' | 'reef'
  customer: string
  advisor: string
  madeDaysAgo: number
  /** Null for a draft. */
  issuedDaysAgo: number | null
  outcome:
    | { answer: 'accepted'; letter: BuildLetter; daysAgo: number; note: string }
    | { answer: 'declined'; daysAgo: number; note: string }
    | 'withdrawn'
    | null
  draft: QuoteDraft
}

const WATER_CARE = [buy('Stillwell 250 mL'), buy('Dosset Chloride 50 g'), buy('Lockridge Five'), buy('Corbelle GFCI Strip 6')]

/** In the order of their first issue: numbers follow it. Each stands for two weeks. */
export const demoQuotes = (today: CivilDate): DemoQuote[] => [
  { key: 'planted', customer: 'Pia Thornquist-Vale', advisor: 'Tilda Quenby', madeDaysAgo: 72, issuedDaysAgo: 70, outcome: null, draft: planted(today) },
  { key: 'school', customer: 'The Fenmoor School', advisor: 'Bram Ostrey', madeDaysAgo: 48, issuedDaysAgo: 46, draft: school(today), outcome: { answer: 'accepted', letter: 'A', daysAgo: 41, note: 'Please deliver on a weekday.' } },
  { key: 'large', customer: 'Ruben Ashkell', advisor: 'Bram Ostrey', madeDaysAgo: 20, issuedDaysAgo: 19, draft: large(today), outcome: { answer: 'declined', daysAgo: 15, note: 'More than I want to spend this year.' } },
  { key: 'desk', customer: 'Ruben Ashkell', advisor: 'Tilda Quenby', madeDaysAgo: 12, issuedDaysAgo: 12, outcome: 'withdrawn', draft: desk(today) },
  { key: 'showcase', customer: 'Ada Lindqvare', advisor: 'Bram Ostrey', madeDaysAgo: 1, issuedDaysAgo: 0, outcome: null, draft: showcaseDraft(today) },
  { key: 'reef', customer: 'Ruben Ashkell', advisor: 'Tilda Quenby', madeDaysAgo: 3, issuedDaysAgo: null, outcome: null, draft: saltWater(today) },
  { key: 'goldfish', customer: 'Gil Amberley', advisor: 'Bram Ostrey', madeDaysAgo: 0, issuedDaysAgo: null, outcome: null, draft: goldfish(today) },
] // prettier-ignore

/** Issued in autumn and never answered: it lapsed. */
const planted = (today: CivilDate): QuoteDraft => ({
  title: 'A 24 in planted tank for the study',
  need: {
    ...emptyNeed(), lengthMm: inch(24), place: 'in the study upstairs, across the joists', livestockId: 'blackwater-soft', livestockNote: 'pencilfish, later dwarf cichlids',
    budgetMinor: 70_000, byDate: addDays(today, -40), look: 'rimless',
    exact: { coldestRoomC: 19, warmestRoomC: 27, floor: 'timber_upper', joistSpanMm: inch(144), joistSpacingMm: inch(16), joistLie: 'across', plants: 'high', disinfectant: 'chloramine', tapPh: 7.9 },
  },
  builds: [
    build('kit', 'Rimless kit', 'Everything from one maker, soil and care added.', [
      buy('Osmere Studio 60'), buy('Harrowfen Cabinet 60'), buy('Sedgeway Soil 9 L', 2), buy('Torvane Watch'), buy('Dosset Bind 250 mL'), buy('Dosset Chloride 50 g'), buy('Lockridge Five'), buy('Corbelle GFCI Strip 6'),
    ]),
    build('parts', 'Rimless parts', 'The same tank with two guarded heaters and slower water.', [
      buy('Osmere Clear 60'), buy('Osmere Cover 60'), buy('Harrowfen Cabinet 60'), buy('Harrowfen Mat 60'), buy('Pellick H-300'), buy('Quarrick Twin 50 with controller', 2), buy('Lumbry Strand 60'), buy('Sedgeway Soil 9 L', 2), buy('Torvane Watch'), buy('Dosset Bind 250 mL'),
      buy('Dosset Chloride 50 g'), buy('Lockridge Five'), buy('Corbelle GFCI Strip 6'),
    ]),
  ],
  suggestion: { buildId: 'parts', reason: 'Two small heaters in an old house with cold nights.' },
  standsUntil: addDays(today, -56),
  note: '',
}) // prettier-ignore

const school = (today: CivilDate): QuoteDraft => ({
  title: 'A tank for the reading room',
  need: {
    ...emptyNeed(), commonSizeId: 'us-20-long', place: 'in the reading room, beside the door', livestockId: 'livebearers-hard', livestockNote: 'a group of platies', budgetMinor: 60_000, byDate: addDays(today, -30), look: 'any',
    exact: { coldestRoomC: 17, warmestRoomC: 26, floor: 'ground_slab', disinfectant: 'chlorine', outletHeightMm: 300, outletDistanceMm: 400 },
  },
  builds: [
    build('parts', 'Parts on a frame', 'Two guarded heaters and room for the bacteria in the filter.', [
      buy('Wendlemere 20 long'), buy('Wendlemere Lid 30'), buy('Thornby Frame 30'), buy('Pellick C-600'), buy('Quarrick Twin 50 with controller', 2), buy('Halden Row 30'), buy('Millrace Gravel 20 lb', 3), buy('Torvane Digital'), ...WATER_CARE,
    ]),
    build('kit', 'Kit on a frame', 'Little to choose; one heater.', [
      buy('Wendlemere Start 20'), buy('Thornby Frame 30'), buy('Millrace Gravel 20 lb', 3), ...WATER_CARE,
    ]),
  ],
  suggestion: { buildId: 'parts', reason: 'Nobody is there at weekends: two heaters, each with a controller that switches it off if it sticks.' },
  standsUntil: addDays(today, -32),
  note: 'Begin in a week without holidays: somebody reads the water every few days.',
}) // prettier-ignore

const large = (today: CivilDate): QuoteDraft => ({
  title: 'A large tank for the hall',
  need: {
    ...emptyNeed(), commonSizeId: 'us-75', place: 'in the hall, along the outside wall', livestockId: 'small-tropical', livestockNote: 'several shoals of small fish', budgetMinor: 110_000, byDate: addDays(today, 60), look: 'standard', usedAccepted: true,
    exact: { coldestRoomC: 16, warmestRoomC: 25, floor: 'unknown', disinfectant: 'chlorine' },
  },
  builds: [
    build('frame', 'On a frame', 'The frame states the load it carries.', [
      buy('Wendlemere 75'), buy('Wendlemere Lid 48 deep'), buy('Thornby Frame 48 deep'), buy('Pellick C-1000', 2), buy('Quarrick Twin 200 with controller', 2), buy('Halden Row 48'), buy('Millrace Gravel 50 lb', 2), buy('Torvane Watch'), buy('Stillwell 500 mL'),
      buy('Dosset Chloride 50 g'), buy('Lockridge Five'), buy('Corbelle GFCI Strip 8'),
    ]),
    build('bench', 'On a bench', 'A cupboard below; its maker states no load.', [
      buy('Wendlemere 75'), buy('Wendlemere Lid 48 deep'), buy('Thornby Bench 48'), buy('Pellick C-1400'), buy('Torvane 300 W'), buy('Halden Row 48'), buy('Millrace Gravel 50 lb', 2), buy('Torvane Glass'), buy('Stillwell 500 mL'),
      buy('Dosset Chloride 50 g'), buy('Lockridge Five'), buy('Corbelle GFCI Strip 8'),
    ]),
  ],
  suggestion: { buildId: 'frame', reason: 'A stated load, and two heaters in a cold hall.' },
  standsUntil: addDays(today, -5),
  note: '',
}) // prettier-ignore

const desk = (today: CivilDate): QuoteDraft => ({
  title: 'A small shrimp tank for the desk',
  need: { ...emptyNeed(), commonSizeId: 'cm-30-cube', place: 'on the desk', livestockId: 'dwarf-shrimp', livestockNote: 'a colony of dwarf shrimp', budgetMinor: 25_000, look: 'rimless', exact: { plants: 'medium' } },
  builds: [
    build('studio', 'Rimless cube', 'Small, clear, quiet.', [
      buy('Osmere Studio 30'), buy('Torvane 25 W'), buy('Sedgeway Soil 9 L'), buy('Torvane Glass'), notNeeded('carry_tank', 'stands on the desk'), ...WATER_CARE,
    ]),
  ],
  suggestion: { buildId: 'studio', reason: 'It fits the desk and leaves room to write.' },
  standsUntil: addDays(today, 2),
  note: '',
}) // prettier-ignore

/** Salt water, with what it needs besides; not issued yet. */
const saltWater = (today: CivilDate): QuoteDraft => ({
  title: 'A 75 gallon salt-water tank for the waiting room',
  need: {
    ...emptyNeed(), commonSizeId: 'us-75', place: 'in the waiting room, across from the desk', livestockId: 'marine-fish', livestockNote: 'a pair of clownfish, later a goby', budgetMinor: 200_000, byDate: addDays(today, 90), look: 'standard',
    exact: { coldestRoomC: 18, warmestRoomC: 24, floor: 'ground_slab', disinfectant: 'chlorine' },
  },
  builds: [
    build('skimmer', 'With a skimmer', 'Foam takes the waste out before it is ammonia.', [
      buy('Wendlemere 75'), buy('Wendlemere Lid 48 deep'), buy('Thornby Frame 48 deep'), buy('Pellick C-1400', 2), buy('Quarrick Twin 200 with controller', 2), buy('Halden Row 48'), buy('Quarrick Skim 300'), buy('Pellick Drift 4000', 2),
      buy('Stillwell Sea 10 kg', 2), buy('Lockridge Sea lens'), buy('Stillwell RO 190'), buy('Millrace Dry reef rock 9 kg', 3), buy('Millrace Sand 10 kg', 4), buy('Torvane Watch'), buy('Stillwell 500 mL'), buy('Dosset Chloride 50 g'), buy('Lockridge Five'), buy('Corbelle GFCI Strip 8'),
    ]),
    build('plain', 'Without a skimmer', 'Two filters and a water change every week.', [
      buy('Wendlemere 75'), buy('Wendlemere Lid 48 deep'), buy('Thornby Frame 48 deep'), buy('Pellick C-1000', 2), buy('Torvane 300 W'), buy('Halden Row 48'), buy('Pellick Drift 4000'),
      buy('Stillwell Sea 10 kg', 2), buy('Lockridge Swing arm'), buy('Stillwell RO 190'), buy('Millrace Dry reef rock 9 kg', 2), buy('Millrace Sand 10 kg', 4), buy('Torvane Glass'), buy('Stillwell 500 mL'), buy('Dosset Chloride 50 g'), buy('Lockridge Five'), buy('Corbelle GFCI Strip 8'),
    ]),
    build('sump', 'With a sump', 'Heaters, skimmer and top-up stand out of sight below the tank.', [
      buy('Wendlemere 75'), buy('Wendlemere Lid 48 deep'), buy('Thornby Frame 48 deep'), buy('Osmere Sump 60'), buy('Pellick Return 3000'), buy('Quarrick Twin 200 with controller', 2), buy('Halden Row 48'), buy('Quarrick Skim 400'), buy('Pellick Drift 4000', 2),
      buy('Stillwell Sea 10 kg', 2), buy('Lockridge Sea lens'), buy('Stillwell RO 190'), buy('Millrace Dry reef rock 9 kg', 3), buy('Millrace Sand 10 kg', 4), buy('Torvane Watch'), buy('Stillwell 500 mL'), buy('Dosset Chloride 50 g'), buy('Lockridge Five'), buy('Corbelle GFCI Strip 8'),
    ]),
  ],
  suggestion: { buildId: 'skimmer', reason: 'Two heaters with controllers, and more air at the surface.' },
  standsUntil: addDays(today, 14),
  note: '',
}) // prettier-ignore

/** Still open: two slots have no answer yet. */
const goldfish = (today: CivilDate): QuoteDraft => ({
  title: 'A 40 gallon tank for two goldfish',
  need: {
    ...emptyNeed(), commonSizeId: 'us-40-breeder', place: 'in the kitchen, under the window', livestockId: 'goldfish-fancy', livestockNote: 'two fancy goldfish, three years old', budgetMinor: 60_000, byDate: addDays(today, 14),
    exact: { coldestRoomC: 16, warmestRoomC: 28 },
  },
  builds: [
    build('simple', 'Simple', 'A filter larger than the tank asks for.', [
      buy('Wendlemere 40 breeder'), buy('Pellick C-1400'), buy('Wendlemere Lid 36 deep'), owned('read_temperature', 'a glass thermometer'), buy('Stillwell 250 mL'), buy('Lockridge Five'), notNeeded('heat', 'kept at room temperature'),
    ]),
  ],
  suggestion: null,
  standsUntil: null,
  note: '',
}) // prettier-ignore
