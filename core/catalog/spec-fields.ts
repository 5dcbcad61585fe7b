import { choice, flag, number, required, type Field, type FieldsObject } from '../fields.ts'
import { APPLIANCE_FIELDS } from './appliance-fields.ts'
import { CORD_FIELD } from './cord-field.ts'
import { kindInText, type Kind } from './kinds.ts'
import { LIVING_FIELDS } from './living-fields.ts'
import type { SpecOf } from './spec.ts'
import { SUPPLY_FIELDS } from './supply-fields.ts'
import { TANK_SHAPES } from './tank-shape.ts'

/*
 * Limits refuse what cannot be such a thing; they are wide on purpose, since a limit that refuses a real product stops a manager's work.
 * The largest tank of 4 m and 2 m a side is beyond anything a shop sells without an engineer; the smallest, 10 cm, is a desk bowl.
 */
const FIELDS = {
  tank: [
    required(number('lengthMm', 'Length', 'mm', 100, 4000, { help: 'Outside, along the front.' })),
    required(number('widthMm', 'Width', 'mm', 100, 2000, { help: 'Outside, front to back.' })),
    required(number('heightMm', 'Height', 'mm', 100, 2000, { help: 'Outside, bottom to upper rim.' })),
    choice('shape', 'Shape', TANK_SHAPES, 'Seen from above. Length and depth are those of the box around it; left out, it is rectangular.'),
    number('bowMm', 'Bow', 'mm', 10, 1000, { help: 'Bow-front: how far the middle of the front stands out before its ends.' }),
    number('endMm', 'Depth of the ends', 'mm', 20, 1800, { help: 'Corner with a cut front: the short panes on either back.' }),
    number('glassMm', 'Side thickness', 'mm', 2, 40, { help: 'Of the upright panes.' }),
    number('bottomMm', 'Bottom thickness', 'mm', 2, 50),
    choice('material', 'Material', { glass: 'Glass', acrylic: 'Acrylic' }),
    choice(
      'style',
      'Style',
      { rimmed: 'Rimmed, floating base', rimless: 'Rimless', braced: 'Braced' },
      'Decides whether a mat belongs under it.',
    ),
    number('labelVolumeL', 'Volume on the label', 'L', 1, 16_000, { help: 'As the maker prints it; never used as the water volume.' }),
    number('emptyMassKg', 'Empty mass', 'kg', 0.2, 4000),
  ],
  kit: [number('labelVolumeL', 'Volume on the label', 'L', 1, 16_000, { help: 'As printed on the box. The parts carry their own specs.' })],
  stand: [
    number('topLengthMm', 'Top length', 'mm', 100, 4200),
    number('topWidthMm', 'Top width', 'mm', 100, 2200),
    choice('shape', 'Shape of the top', TANK_SHAPES, 'Left out, it is rectangular.'),
    number('heightMm', 'Height', 'mm', 50, 1600, { help: 'Floor to the top surface.' }),
    number('ratedLoadKg', 'Rated load', 'kg', 5, 20_000, { help: 'As the maker states it, spread over the top.' }),
    choice('top', 'Top', { full: 'Full board', perimeter: 'Frame under the edge only' }),
    choice('base', 'On the floor', { end_panels: 'End panels', feet: 'Feet', full: 'Full base' }),
    choice('surface', 'Surface', { particle_board: 'Particle board', plywood: 'Plywood', solid_wood: 'Solid wood', metal: 'Metal' }),
    number('massKg', 'Mass', 'kg', 0.5, 1000),
  ],
  mat: [
    number('lengthMm', 'Length', 'mm', 100, 4200),
    number('widthMm', 'Width', 'mm', 100, 2200),
    number('thicknessMm', 'Thickness', 'mm', 1, 40),
  ],
  lid: [
    number('lengthMm', 'Length', 'mm', 100, 4200),
    number('widthMm', 'Width', 'mm', 50, 2200),
    choice('shape', 'Shape', TANK_SHAPES, 'Of the tank that it closes.'),
    choice('cover', 'Cover', { glass: 'Glass', plastic: 'Plastic', mesh: 'Mesh' }, 'A mesh keeps fish in and lets water out.'),
  ],
  filter: [
    choice('type', 'Type', {
      canister: 'Canister',
      hang_on: 'Hang-on',
      internal: 'Internal',
      sponge: 'Sponge',
      return_pump: 'Return pump in a sump',
    }),
    number('ratedFlowLph', 'Rated flow', 'L/h', 20, 20_000, { help: 'As printed: at no head, without media.' }),
    number('measuredFlowLph', 'Flow, measured', 'L/h', 10, 20_000, {
      help: 'What comes out of the return with media in: the litres of a minute in a bucket, times 60.',
    }),
    number('powerW', 'Power', 'W', 0.5, 500),
    number('mediaVolumeL', 'Media volume', 'L', 0.02, 100),
    number('maxHeadM', 'Highest head', 'm', 0.1, 15, { help: 'Height at which nothing flows any more.' }),
    number('midHeadM', 'Head at a point of its curve', 'm', 0.05, 14.9, {
      help: 'About half of the highest, where the maker draws a curve.',
    }),
    number('midFlowLph', 'Flow at that point', 'L/h', 10, 19_900),
    number('hoseMm', 'Hose, inside', 'mm', 4, 60),
    number('hoseLengthMm', 'Hoses, length', 'mm', 100, 20_000, {
      help: 'Both of a canister together, or all that a return pump pushes through, as they will be cut.',
    }),
    choice('fittings', 'Fittings', {
      few: 'Few: wide bends, no taps',
      usual: 'Usual: a tap on each hose, some bends',
      many: 'Many: narrow couplings, a heater or lamp in the hose',
    }),
    CORD_FIELD,
  ],
  heater: [
    number('powerW', 'Power', 'W', 5, 1000, { help: 'The largest aquarium heater on a household plug is about 1000 W.' }),
    flag('adjustable', 'Adjustable', 'The temperature can be set.'),
    flag('externalController', 'External controller', 'It comes with a controller outside the water that switches it off.'),
    number('lengthMm', 'Length', 'mm', 40, 800),
    CORD_FIELD,
  ],
  light: [
    number('lengthMm', 'Length', 'mm', 50, 4000),
    number('widthMm', 'Width', 'mm', 10, 1000),
    number('powerW', 'Power', 'W', 0.5, 1500),
    number('luminousFluxLm', 'Luminous flux', 'lm', 10, 200_000),
    number('photonFluxUmolS', 'Photon flux', null, 0.5, 4000, { unitText: 'µmol/s', help: 'Photosynthetic, where the maker states it.' }),
    choice(
      'spectrum',
      'Light',
      { white: 'White', coloured: 'Coloured, for plants' },
      'Lumens tell nothing of red and blue light: enter its photon flux.',
    ),
    flag('dimmable', 'Dimmable'),
    CORD_FIELD,
  ],
  substrate: [
    choice(
      'type',
      'Type',
      { gravel: 'Gravel', sand: 'Sand', active_soil: 'Active soil' },
      'Active soil is not rinsed and leaches ammonia.',
    ),
    number('packMassKg', 'Mass of a pack', 'kg', 0.1, 1500),
    number('packVolumeL', 'Volume of a pack', 'L', 0.1, 1500),
  ],
  conditioner: [
    number('packVolumeMl', 'Volume of a bottle', 'mL', 5, 30_000),
    number('doseMlPerL', 'Dose', null, 0.001, 5, { unitText: 'mL/L', help: 'Millilitres that treat one litre of tap water.' }),
    flag('bindsAmmonia', 'Binds ammonia', 'Needed where the tap water has chloramine.'),
  ],
  ammonia_source: [
    choice('form', 'Form', { ammonium_chloride: 'Ammonium chloride', ammonia_solution: 'Ammonia solution' }),
    number('strength', 'Strength', 'share', 0.001, 1, {
      help: 'Share of the active substance by mass: 1 for the pure salt, 0.1 for a 10 % solution.',
    }),
    number('packMassG', 'Mass of a pack', 'g', 1, 25_000),
    number('packVolumeMl', 'Volume of a bottle', 'mL', 5, 25_000),
  ],
  test_kit: [
    flag('measuresAmmonia', 'Measures ammonia'),
    flag('measuresNitrite', 'Measures nitrite'),
    flag('measuresNitrate', 'Measures nitrate'),
    flag('measuresPh', 'Measures pH'),
    flag('measuresKh', 'Measures KH'),
    number('lowestAmmoniaMgL', 'Lowest ammonia mark', 'mg/L', 0.005, 5, { help: 'The lowest step above zero on its colour card.' }),
    number('tests', 'Tests in a pack', 'count', 1, 5000, { whole: true, help: 'Of the parameter that runs out first.' }),
  ],
  thermometer: [choice('type', 'Type', { glass: 'Glass', strip: 'Strip', digital: 'Digital' }), flag('alarm', 'Alarm')],
  power: [
    number('outlets', 'Outlets', 'count', 1, 24, { whole: true }),
    number('ratedCurrentA', 'Rated current', 'A', 1, 63),
    flag('protective', 'Protective device', 'A GFCI or residual-current device is built in.'),
    CORD_FIELD,
  ],
  ...APPLIANCE_FIELDS,
  ...SUPPLY_FIELDS,
  ...LIVING_FIELDS,
} as const satisfies Record<Kind, readonly Field[]>

/** True only where the table and the contract in spec.ts describe the same object: a field missing in either is a compile error here. */
type SameSpec = {
  [K in Kind]: [FieldsObject<(typeof FIELDS)[K]>, SpecOf[K]] extends [SpecOf[K], FieldsObject<(typeof FIELDS)[K]>] ? true : K
}[Kind]
type SameKeys = {
  [K in Kind]: [keyof FieldsObject<(typeof FIELDS)[K]>, keyof SpecOf[K]] extends [keyof SpecOf[K], keyof FieldsObject<(typeof FIELDS)[K]>]
    ? true
    : K
}[Kind]
type Checked<T extends readonly [true, true]> = T extends readonly [true, true] ? Record<Kind, readonly Field[]> : never

/**
 * Every spec field of every kind, in the order a form asks for them.
 *
 * @example SPEC_FIELDS.heater[0] // { key: 'powerW', label: 'Power', type: 'number', unit: 'W', min: 5, max: 1000, … }
 */
export const SPEC_FIELDS: Checked<[SameSpec, SameKeys]> = FIELDS

/** Kinds that are counted by the piece only with a word in front of them. */
const MASS_WORDS: Partial<Record<Kind, string>> = {
  filter_media: 'a filter media',
  hardscape: 'a piece of hardscape',
  bacteria: 'a pack of bacteria',
  plumbing: 'a plumbing part',
  livestock: 'an animal',
}

/** The kind with its article, as messages say it. @example kindWords('ammonia_source') // 'an ammonia source' */
export function kindWords(kind: Kind): string {
  const name = kindInText(kind)
  return MASS_WORDS[kind] ?? `${/^[aeio]/.test(name) ? 'an' : 'a'} ${name}`
}
