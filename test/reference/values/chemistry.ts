import { gtinCheckDigit } from '../../../core/catalog/gtin.ts'
import { feedOfMedia } from '../../../core/sizing/filter-feed.ts'
import { ammoniaSolutionMl, ammoniumChlorideG, DOSE_MG_PER_L, PER_NITROGEN } from '../../../core/startup/ammonia-dose.ts'
import { unionisedShare } from '../../../core/startup/ammonia-fraction.ts'
import { ammoniaFromChloramine, HIGHEST_RESIDUAL_MG_PER_L } from '../../../core/startup/disinfectant.ts'
import { READY_MG_PER_L } from '../../../core/startup/ready-reading.ts'
import { afterWaterChanges, waterChangesNeeded } from '../../../core/startup/water-change.ts'
import { from, type ReferenceTopic } from './reference-value.ts'

const dose = 'core/startup/ammonia-dose.ts'
const fraction = { unit: '%', by: 'core/startup/ammonia-fraction.ts' }
const percent = (celsius: number, ph: number) => () => 100 * unionisedShare(celsius, ph)
const at = (celsius: number, ph: number): string => `ammonia of all, ${celsius} °C, pH ${ph}`
/** 2 mg/L by another basis, as nitrogen. */
const { ammonia, ammonium } = PER_NITROGEN
const WATER_L = 237.7

export const CHEMISTRY: ReferenceTopic = {
  title: 'Startup chemistry',
  about:
    '237.7 L brought to 2 mg/L; the dose is told as nitrogen, the other two readings of "2 ppm ammonia" are the same code asked for less. Fresh water.',
  alsoIn: ['test/core/startup/chemistry.test.ts', 'test/core/startup/ammonia-steps.test.ts', 'test/core/sizing/conditioner-check.test.ts'],
  values: [
    ...from({ standing: 'own', source: 'IUPAC atomic weights', within: { relative: 1e-5 }, unit: '', by: dose }, [
      ['NH₄Cl over N', 3.81899, () => PER_NITROGEN.ammoniumChloride],
      ['NH₄Cl over NH₃', 3.14092, () => PER_NITROGEN.ammoniumChloride / PER_NITROGEN.ammonia],
      ['NH₃ over N', 1.21588, () => PER_NITROGEN.ammonia],
      ['NH₄ over N', 1.28785, () => PER_NITROGEN.ammonium],
      ['NO₂ over N', 3.28454, () => PER_NITROGEN.nitrite],
      ['NO₃ over N', 4.4268, () => PER_NITROGEN.nitrate],
    ]),
    ...from({ standing: 'own', source: 'stoichiometry', within: { relative: 1e-4 }, unit: 'g', by: dose }, [
      ['ammonium chloride for 2 mg/L as N', 1.81555, () => ammoniumChlorideG(WATER_L, 2, 1)],
      ['ammonium chloride for 2 mg/L as NH₃', 1.49319, () => ammoniumChlorideG(WATER_L, 2 / ammonia, 1)],
      ['ammonium chloride for 2 mg/L as NH₄', 1.40976, () => ammoniumChlorideG(WATER_L, 2 / ammonium, 1)],
    ]),
    ...from(
      {
        standing: 'own',
        source: 'stoichiometry; densities of CRC and Perry, from memory',
        within: { relative: 1e-4 },
        unit: 'mL',
        by: dose,
      },
      [
        ['ammonia of 10 % for 2 mg/L as N', 6.0369, () => ammoniaSolutionMl(WATER_L, 2, 0.1)],
        ['ammonia of 28 % for 2 mg/L as N', 2.2989, () => ammoniaSolutionMl(WATER_L, 2, 0.28)],
        ['ammonia of 10 % for 2 mg/L as NH₃', 4.965, () => ammoniaSolutionMl(WATER_L, 2 / ammonia, 0.1)],
        ['ammonia of 28 % for 2 mg/L as NH₃', 1.8907, () => ammoniaSolutionMl(WATER_L, 2 / ammonia, 0.28)],
      ],
    ),
    ...from({ standing: 'common practice', source: 'fishless start', within: { absolute: 0 }, unit: 'mg/L', by: dose }, [
      ['dose, as N', 2, () => DOSE_MG_PER_L],
    ]),
    ...from(
      {
        standing: 'common practice',
        source: 'a day after a dose, two days running',
        within: { absolute: 0 },
        unit: 'mg/L',
        by: 'core/startup/ready-reading.ts',
      },
      [['ready at or below', 0.25, () => READY_MG_PER_L]],
    ),
    ...from({ standing: 'published', source: '40 CFR 141.65', within: { absolute: 0 }, unit: 'mg/L', by: 'core/startup/disinfectant.ts' }, [
      ['chlorine or chloramine in a public supply, as Cl₂, at most', 4, () => HIGHEST_RESIDUAL_MG_PER_L],
    ]),
    ...from({ standing: 'own', source: '14.0067 ÷ 70.906', within: { relative: 3e-4 }, unit: 'mg/L', by: 'core/startup/disinfectant.ts' }, [
      ['nitrogen that 1 mg/L of chloramine leaves', 0.1975, () => ammoniaFromChloramine(1)],
      ['nitrogen that 4 mg/L of chloramine leave', 0.7902, () => ammoniaFromChloramine(4)],
    ]),
    ...from(
      {
        standing: 'own',
        source: 'the same with the share below',
        within: { absolute: 1e-4 },
        unit: 'mg/L',
        by: 'core/startup/ammonia-fraction.ts',
      },
      [['NH₃ of it at pH 8 and 25 °C', 0.0516, () => ammoniaFromChloramine(4) * PER_NITROGEN.ammonia * unionisedShare(25, 8)]],
    ),
    ...from(
      { standing: 'published', source: 'Trussell (1972), in a reproduced table; other constants', within: { relative: 0.03 }, ...fraction },
      [
        [at(20, 7), 0.4, percent(20, 7)],
        [at(20, 8), 3.83, percent(20, 8)],
        [at(25, 7), 0.55, percent(25, 7)],
        [at(25, 8), 5.28, percent(25, 8)],
        [at(10, 8), 1.83, percent(10, 8)],
      ],
    ),
    ...from(
      {
        standing: 'from memory',
        source: 'Emerson et al., J. Fish. Res. Board Can. 32 (1975) 2379, tabulated with t + 273.2',
        within: { relative: 6e-3 },
        ...fraction,
      },
      [
        [at(20, 7), 0.396, percent(20, 7)],
        [at(20, 8), 3.82, percent(20, 8)],
        [at(25, 7), 0.566, percent(25, 7)],
        [at(25, 8), 5.38, percent(25, 8)],
        [at(25, 9), 36.3, percent(25, 9)],
        [at(20, 9), 28.4, percent(20, 9)],
      ],
    ),
    ...from({ standing: 'own', source: 'the published equation by another program', within: { relative: 2e-4 }, ...fraction }, [
      [at(20, 7), 0.3942, percent(20, 7)],
      [at(20, 8), 3.807, percent(20, 8)],
      [at(25, 7), 0.5639, percent(25, 7)],
      [at(25, 8), 5.366, percent(25, 8)],
      [at(10, 8), 1.822, percent(10, 8)],
      [at(25, 9), 36.19, percent(25, 9)],
    ]),
    ...from({ standing: 'own', source: 'mass balance', within: { relative: 1e-4 }, unit: '', by: 'core/startup/water-change.ts' }, [
      ['40 after two changes of 30 %', 19.6, () => afterWaterChanges(40, 0.3, 2)],
      ['changes of 25 % from 40 to 10 (4.819)', 5, () => waterChangesNeeded(40, 10, 0.25)],
    ]),
    ...from(
      {
        standing: 'from memory',
        source: 'Metcalf & Eddy, table 8-14: 1.072 for a kelvin; 1 ÷ 1.072 five times over, by hand',
        within: { absolute: 5e-5 },
        unit: '',
        by: 'core/sizing/filter-feed.ts',
      },
      [['film at 15 °C over film at 20 °C', 0.7064, () => feedOfMedia(1, 15).low / feedOfMedia(1, 20).low]],
    ),
  ],
}

export const NUMBERS: ReferenceTopic = {
  title: 'Trade item numbers',
  about: 'The last digit of a GTIN by GS1 General Specifications 7.9 (clause number from memory): weights 3, 1, 3, … from the right.',
  alsoIn: ['test/core/catalog/gtin.test.ts'],
  values: [
    ...from({ standing: 'published', source: 'GS1 worked examples', within: { absolute: 0 }, unit: '', by: 'core/catalog/gtin.ts' }, [
      ['629104150021', 3, () => gtinCheckDigit('629104150021')],
      ['730001100001', 7, () => gtinCheckDigit('730001100001')],
    ]),
    ...from({ standing: 'own', source: 'by hand', within: { absolute: 0 }, unit: '', by: 'core/catalog/gtin.ts' }, [
      ['501234567890, GTIN-13 (GS1’s data)', 0, () => gtinCheckDigit('501234567890')],
      ['03600029145, GTIN-12', 2, () => gtinCheckDigit('03600029145')],
      ['9638507, GTIN-8', 4, () => gtinCheckDigit('9638507')],
      ['1061414100041, GTIN-14', 5, () => gtinCheckDigit('1061414100041')],
    ]),
  ],
}
