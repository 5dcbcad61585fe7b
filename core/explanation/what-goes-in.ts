import type { SpecOf } from '../catalog/spec.ts'
import type { Conditions, LivestockGroup } from '../sizing/conditions.ts'
import type { Check } from '../sizing/finding.ts'
import type { ApplianceSpec, Gear } from '../sizing/gear.ts'
import type { SizingFigures } from '../sizing/report.ts'

/** What is read of each part of a build. */
export interface GearReads {
  tank?: ReadonlyArray<keyof SpecOf['tank']>
  stand?: ReadonlyArray<keyof SpecOf['stand']>
  mat?: ReadonlyArray<keyof SpecOf['mat']>
  lid?: ReadonlyArray<keyof SpecOf['lid']>
  filters?: ReadonlyArray<keyof SpecOf['filter']>
  heaters?: ReadonlyArray<keyof SpecOf['heater']>
  lights?: ReadonlyArray<keyof SpecOf['light']>
  substrates?: ReadonlyArray<keyof SpecOf['substrate']>
  conditioners?: ReadonlyArray<keyof SpecOf['conditioner']>
  testKits?: ReadonlyArray<keyof SpecOf['test_kit']>
  power?: ReadonlyArray<keyof SpecOf['power']>
  appliances?: ReadonlyArray<keyof ApplianceSpec>
  animals?: ReadonlyArray<keyof SpecOf['livestock']>
  sump?: ReadonlyArray<keyof SpecOf['sump']>
}

export type RoomField = Exclude<keyof Conditions, 'assumed' | 'livestock'>
export type GroupField = 'targetC' | 'lowestC' | 'highestC' | 'dangerC' | 'flowFloorPerHour' | 'flowCeilingPerHour' | 'smallestVolumeL' | 'lidNeeded' | 'water' // prettier-ignore
export type FigureField = 'waterVolumeL' | 'tankWaterL' | 'emptyMassKg' | 'runningMassKg' | 'coldLossW' | 'flowLph' | 'peakLoadW'

/** What one check reads. */
export interface Reads {
  gear?: GearReads
  room?: readonly RoomField[]
  group?: readonly GroupField[]
  figures?: readonly FigureField[]
}

type Same<T extends true> = T
/** A compile error here means that a mark or a figure was renamed. */
export type Known = Same<
  [GroupField, FigureField, keyof GearReads] extends [keyof LivestockGroup, keyof SizingFigures, keyof Gear] ? true : false
>

const BOX = ['lengthMm', 'widthMm', 'heightMm', 'shape', 'bowMm', 'endMm'] as const
const TANK = [...BOX, 'glassMm', 'bottomMm', 'material'] as const
const WEIGHED = [...TANK, 'emptyMassKg'] as const
/** What weighs on stand and floor. */
const BAGS = ['type', 'packMassKg'] as const
const FILL = ['waterBelowRimMm', 'substrateDepthMm'] as const
const FLOW = ['type', 'ratedFlowLph', 'maxHeadM', 'midHeadM', 'midFlowLph', 'hoseMm', 'hoseLengthMm', 'fittings'] as const
const WARMS = { filters: ['type', 'powerW'], lights: ['powerW'], appliances: ['powerW'] } as const
const PLUGGED = { heaters: ['powerW'], ...WARMS } as const
const HEAT = {
  tank: TANK,
  lid: ['cover'],
  sump: ['lengthMm', 'widthMm', 'heightMm', 'wallMm', 'material', 'totalVolumeL', 'operatingVolumeL'],
} as const
const STAND_ON_FLOOR = ['heightMm', 'massKg', 'topLengthMm', 'topWidthMm', 'shape'] as const
const SUMP = ['lengthMm', 'widthMm', 'heightMm', 'wallMm', 'totalVolumeL', 'operatingVolumeL'] as const
/** The tank's water and its sump's. */
const HELD = { tank: TANK, sump: SUMP } as const
const EATEN = { animals: ['adultLengthMm'] } as const
const WATER = ['targetC', 'water'] as const

/** Every part, answer and mark that a check's figure or limit moves with; a test moves each of them. */
export const WHAT_GOES_IN: Record<Check, Reads> = {
  heater_stuck: {
    gear: { heaters: ['powerW', 'externalController'], ...WARMS, ...HEAT },
    room: ['warmestRoomC', ...FILL],
    group: ['targetC', 'highestC', 'dangerC'],
  },
  heater_holds: {
    gear: { heaters: ['powerW'], ...HEAT },
    room: ['coldestRoomC', ...FILL],
    group: ['targetC', 'lowestC'],
    figures: ['coldLossW'],
  },
  heater_spare: { gear: { heaters: ['powerW'], ...HEAT }, room: ['coldestRoomC', ...FILL], group: ['targetC', 'lowestC'] },
  warm_room: {
    gear: { ...WARMS, appliances: ['powerW', 'coolingW'], ...HEAT },
    room: ['warmestRoomC', ...FILL],
    group: ['highestC', 'dangerC', 'targetC'],
  },
  stand_load: { gear: { stand: ['ratedLoadKg'], tank: WEIGHED, substrates: BAGS }, room: FILL, group: WATER },
  stand_footprint: { gear: { stand: ['topLengthMm', 'topWidthMm', 'top', 'shape'], tank: ['lengthMm', 'widthMm', 'shape', 'style'] } },
  stand_bedding: { gear: { tank: ['style', 'lengthMm', 'widthMm', 'shape'], stand: ['top'], mat: ['lengthMm', 'widthMm'] } },
  stand_wet: { gear: { stand: ['surface'] } },
  tipping: {
    gear: { stand: STAND_ON_FLOOR, tank: WEIGHED, substrates: BAGS },
    room: FILL,
    group: WATER,
    figures: ['runningMassKg'],
  },
  floor_load: {
    gear: { stand: [...STAND_ON_FLOOR, 'base'], tank: WEIGHED, sump: [...SUMP, 'material'], substrates: BAGS },
    room: ['floor', 'joistSpanMm', 'joistSpacingMm', 'joistLie', 'floorUse', ...FILL],
    group: WATER,
  },
  glass_pane: { gear: { tank: [...TANK, 'style'] }, group: WATER },
  electrical_load: {
    gear: { ...PLUGGED, power: ['ratedCurrentA'] },
    room: ['circuitVoltageV', 'circuitCurrentA', 'otherLoadW'],
    figures: ['peakLoadW'],
  },
  outlet_protection: { gear: { power: ['protective'] }, room: ['circuitProtected'] },
  outlets: { gear: { power: ['outlets'] } },
  cord_length: {
    gear: {
      heaters: ['cordMm'],
      filters: ['type', 'cordMm'],
      lights: ['cordMm'],
      appliances: ['cordMm', 'place'],
      power: ['cordMm'],
      sump: ['heightMm'],
      stand: ['heightMm'],
      tank: ['heightMm', 'lengthMm'],
    },
    room: ['outletHeightMm', 'outletDistanceMm'],
  },
  smallest_volume: { gear: { tank: [...BOX, 'labelVolumeL'] }, group: ['smallestVolumeL'] },
  lid: { gear: { lid: ['lengthMm', 'widthMm', 'shape'], tank: ['lengthMm', 'widthMm', 'shape', 'style'] }, group: ['lidNeeded'] },
  filter_flow: {
    gear: { filters: FLOW, ...HELD, stand: ['heightMm'] },
    room: FILL,
    group: ['flowFloorPerHour', 'targetC', 'water'],
    figures: ['waterVolumeL', 'flowLph'],
  },
  flow_ceiling: {
    gear: { filters: FLOW, ...HELD, stand: ['heightMm'] },
    room: FILL,
    group: ['flowCeilingPerHour', 'targetC', 'water'],
    figures: ['tankWaterL', 'flowLph'],
  },
  filter_feed: { gear: { filters: ['type', 'mediaVolumeL', 'ratedFlowLph'], ...EATEN }, group: ['targetC'] },
  surface_oxygen: {
    gear: { filters: FLOW, ...HELD, stand: ['heightMm'], ...EATEN },
    room: [...FILL, 'altitudeM'],
    group: ['highestC', 'targetC', 'water'],
  },
  weekly_change: { gear: { ...HELD, ...EATEN }, room: FILL, group: ['water'], figures: ['waterVolumeL'] },
  salinity_drift: { gear: HEAT, room: ['coldestRoomC', 'warmestRoomC', ...FILL], group: WATER, figures: ['waterVolumeL'] },
  circulation: {
    gear: { appliances: ['ratedFlowLph'], filters: FLOW, ...HELD, stand: ['heightMm'] },
    room: FILL,
    group: WATER,
    figures: ['tankWaterL'],
  },
  skimmer_size: { gear: { appliances: ['ratedVolumeL'], ...HELD }, room: FILL, group: ['water'], figures: ['waterVolumeL'] },
  drain_down: { gear: { ...HELD }, room: [...FILL, 'siphonBelowMm', 'pipeVolumeL'] },
  light_coverage: {
    gear: { lights: ['lengthMm', 'widthMm'], tank: TANK },
    room: ['plants', ...FILL],
  },
  light_level: {
    gear: {
      lights: ['photonFluxUmolS', 'luminousFluxLm', 'spectrum', 'powerW', 'lengthMm', 'widthMm', 'dimmable'],
      tank: TANK,
      lid: ['cover'],
    },
    room: ['plants', 'lightHoursPerDay', ...FILL],
  },
  substrate_depth: { gear: { substrates: ['type', 'packVolumeL', 'packMassKg'], tank: TANK }, room: ['substrateDepthMm'] },
  conditioner_dose: {
    gear: { conditioners: ['packVolumeMl', 'doseMlPerL', 'bindsAmmonia'], ...HELD },
    room: ['disinfectant', ...FILL],
    figures: ['waterVolumeL'],
  },
  ammonia_tests: { gear: { testKits: ['measuresAmmonia', 'measuresNitrite', 'lowestAmmoniaMgL'] } },
  empty_lift: { gear: { tank: WEIGHED }, figures: ['emptyMassKg'] },
}
