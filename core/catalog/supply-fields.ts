import { choice, flag, number } from '../fields.ts'

/** Spec fields of what is used up, laid in, held in the hand, or done by somebody. */
export const SUPPLY_FIELDS = {
  filter_media: [
    choice('type', 'Type', { sponge: 'Sponge', floss: 'Floss', ceramic: 'Ceramic', carbon: 'Carbon', resin: 'Resin' }),
    number('packVolumeL', 'Volume of a pack', 'L', 0.02, 200),
    number('packMassKg', 'Mass of a pack', 'kg', 0.01, 200),
    number('lifeDays', 'Replaced after', 'days', 1, 3650, { whole: true }),
  ],
  hardscape: [
    choice('type', 'Type', { rock: 'Rock', dry_rock: 'Dry reef rock', wood: 'Wood', ornament: 'Ornament' }),
    number('packMassKg', 'Mass of a pack', 'kg', 0.05, 1000),
    number('lengthMm', 'Longest piece', 'mm', 10, 3000),
    flag('raisesHardness', 'Raises hardness', 'Gives off lime: a drop of vinegar fizzes on it.'),
  ],
  background: [
    choice('type', 'Type', { film: 'Film', relief: 'Relief' }, 'A film goes outside the glass, a relief inside.'),
    number('lengthMm', 'Length', 'mm', 100, 30_000),
    number('heightMm', 'Height', 'mm', 100, 2000),
    number('thicknessMm', 'Thickness', 'mm', 0.1, 200),
  ],
  bacteria: [
    choice('form', 'Form', { liquid: 'Liquid', powder: 'Powder' }),
    number('packVolumeMl', 'Volume of a bottle', 'mL', 1, 25_000),
    number('treatsL', 'Treats', 'L', 5, 100_000, { help: 'Water that one pack is meant for.' }),
    flag('keptCold', 'Kept cold', 'Must stay in a fridge until it is used.'),
  ],
  salt_mix: [
    number('packMassKg', 'Mass of a pack', 'kg', 0.1, 1500),
    number('gramsPerL', 'Grams for a litre', null, 30, 45, {
      unitText: 'g/L',
      help: 'For water of salinity 35, as on the label. Without it the usual range is taken.',
    }),
  ],
  refractometer: [
    choice('type', 'Type', { optical: 'Optical', digital: 'Digital', swing_arm: 'Swing arm' }),
    flag('seaWaterScale', 'Sea water scale', 'A scale for table salt reads sea water wrong.'),
    flag('temperatureCompensated', 'Temperature compensated'),
  ],
  plumbing: [
    choice('type', 'Type', {
      hose: 'Hose', valve: 'Valve', check_valve: 'Check valve', bulkhead: 'Bulkhead', overflow: 'Overflow', fitting: 'Fitting',
    }), // prettier-ignore
    number('insideMm', 'Inside diameter', 'mm', 2, 150),
    number('lengthMm', 'Length', 'mm', 5, 100_000),
  ],
  tool: [
    choice('type', 'Type', {
      siphon: 'Siphon', net: 'Net', scraper: 'Scraper', tweezers: 'Tweezers', scissors: 'Scissors', bucket: 'Bucket', other: 'Other',
    }), // prettier-ignore
    number('lengthMm', 'Length', 'mm', 20, 5000),
    number('volumeL', 'Volume', 'L', 0.1, 200),
  ],
  food: [
    choice('form', 'Form', { flakes: 'Flakes', pellets: 'Pellets', tablets: 'Tablets', frozen: 'Frozen', powder: 'Powder' }),
    number('packMassG', 'Mass of a pack', 'g', 1, 50_000),
    number('protein', 'Protein', 'share', 0.05, 0.9, { help: 'Share by mass: 0.45 for 45 %.' }),
  ],
  service: [
    choice('type', 'Type', { delivery: 'Delivery', installation: 'Installation', drilling: 'Drilling', other: 'Other' }),
    number('durationMin', 'Takes', 'min', 5, 6000),
    flag('atHome', 'At the customer’s home'),
  ],
} as const
