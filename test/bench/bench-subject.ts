import { LIVESTOCK_GROUPS } from '../../core/catalog/livestock.ts'
import type { SizingSubject } from '../../core/sizing/report.ts'

/** A complete build in a cool room: every slot filled, one spec left out so that a range is evaluated too. */
export function benchSubject(): SizingSubject {
  const one = <S>(name: string, spec: S, quantity = 1) => ({ name, quantity, spec })
  return {
    gear: {
      tank: one('tank', { lengthMm: 914, widthMm: 457, heightMm: 457, glassMm: 8, style: 'rimless' as const, material: 'glass' as const }),
      stand: one('stand', { topLengthMm: 914, topWidthMm: 457, heightMm: 760, top: 'full' as const, surface: 'particle_board' as const }),
      mat: one('mat', { lengthMm: 914, widthMm: 457 }),
      lid: one('lid', { lengthMm: 914, widthMm: 457, cover: 'glass' as const }),
      filters: [one('filter', { type: 'canister' as const, ratedFlowLph: 1200, powerW: 18, hoseMm: 16, cordMm: 1500 })],
      heaters: [one('heater', { powerW: 100, lengthMm: 260, cordMm: 1500 }, 2)],
      lights: [one('light', { lengthMm: 850, widthMm: 80, powerW: 30, luminousFluxLm: 2600, cordMm: 1800 })],
      substrates: [one('gravel', { type: 'gravel' as const, packMassKg: 9 }, 4)],
      conditioners: [one('conditioner', { packVolumeMl: 250, doseMlPerL: 0.25, bindsAmmonia: true })],
      ammoniaSources: [one('ammonium chloride', { form: 'ammonium_chloride' as const, strength: 1, packMassG: 50 })],
      testKits: [one('tests', { measuresAmmonia: true, measuresNitrite: true, measuresNitrate: true, measuresPh: true, lowestAmmoniaMgL: 0.25 })],
      thermometers: [one('thermometer', { type: 'glass' as const })],
      power: [one('strip', { outlets: 6, ratedCurrentA: 10, protective: true, cordMm: 1800 })],
      notNeeded: {},
    },
    conditions: {
      coldestRoomC: 15, warmestRoomC: 24, waterBelowRimMm: 40, substrateDepthMm: 50, circuitVoltageV: 120, circuitCurrentA: 15, otherLoadW: 200, outletHeightMm: 300,
      outletDistanceMm: 600, circuitProtected: false, energyPriceMinor: 17, lightHoursPerDay: 8, plants: 'low', floor: 'timber_upper', livestock: LIVESTOCK_GROUPS[0]!,
      disinfectant: 'chloramine', assumed: ['otherLoadW'],
    },
  } // prettier-ignore
}
