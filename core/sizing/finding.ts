import type { Slot } from '../catalog/kinds.ts'
import type { Phrase, Quantity } from '../units/quantity.ts'
import type { SourceName } from './sources.ts'

/** Worst first. */
export const VERDICTS = ['does_not_fit', 'not_known', 'marginal', 'fits'] as const
export type Verdict = (typeof VERDICTS)[number]

export const CHECKS = [
  'heater_stuck',
  'heater_holds',
  'heater_spare',
  'warm_room',
  'stand_load',
  'stand_footprint',
  'stand_bedding',
  'stand_wet',
  'tipping',
  'floor_load',
  'glass_pane',
  'electrical_load',
  'outlet_protection',
  'outlets',
  'cord_length',
  'smallest_volume',
  'lid',
  'filter_flow',
  'flow_ceiling',
  'filter_feed',
  'surface_oxygen',
  'weekly_change',
  'salinity_drift',
  'circulation',
  'skimmer_size',
  'drain_down',
  'light_coverage',
  'light_level',
  'substrate_depth',
  'conditioner_dose',
  'ammonia_tests',
  'empty_lift',
] as const
export type Check = (typeof CHECKS)[number]

/** Where a rule comes from; printed beside the finding. The text stands for itself: it repeats no tag, and has no figure that a reader would want in other units. */
export interface Source {
  tag: 'published' | 'common_practice' | 'from_memory' | 'own'
  text: string
}

export type Limit =
  { kind: 'at_most'; high: Quantity } | { kind: 'at_least'; low: Quantity } | { kind: 'between'; low: Quantity; high: Quantity }

/** What would settle it. `want` lets a screen offer products that do. */
export interface Action {
  text: Phrase
  want?: {
    slot: Slot
    quantity: number
    minimum: Partial<
      Record<
        'powerW' | 'ratedFlowLph' | 'ratedLoadKg' | 'luminousFluxLm' | 'cordMm' | 'lengthMm' | 'widthMm' | 'outlets' | 'totalVolumeL',
        number
      >
    >
    maximum?: Partial<Record<'powerW', number>>
    /** Of a stand: a board under all of it, where an open frame would not do. */
    top?: 'full'
  }
}

/** One answer to one open input that would change a verdict, everything else as it stands. */
export interface Turn {
  /** As `assumed` and `missing` name it: "glass thickness". */
  input: string
  /** "8 mm" */
  at: Phrase
  verdict: Verdict
  wording?: Finding['wording']
}

/** One check of one build in one room. */
export interface Finding {
  check: Check
  verdict: Verdict
  /** The floor's own words in place of the verdict's: it is a screening and never "fits". */
  wording?: 'within the usual allowance' | 'ask before you place it' | 'do not place it before an engineer has looked'
  /** Undefined where nothing can be computed. */
  value?: Quantity
  limit?: Limit
  /** Distance to the limit in the value's unit; negative is beyond it. */
  margin?: Quantity
  reason: Phrase
  action: Action | null
  /** Inputs that nobody entered and that a typical range or a default stands for: "room temperature", "glass thickness". */
  assumed: string[]
  /** For a not known: what input would settle it. */
  missing: string[]
  /** By its name in sources.ts, or itself where it is a livestock group's own; told by `toldReport`. */
  source: SourceName | Source
  /** Ends of the value over everything that is assumed, its own included. Only where somebody asked for it (`withRanges`), and where it varies. */
  range?: { low: Quantity; high: Quantity }
  /** The same of the limit that the value is held against. */
  limitRange?: { low: Quantity; high: Quantity }
  /** The worst verdict over the same, where it is worse than the verdict. */
  worst?: Verdict
  /** What would change the verdict, by effect; empty where no single answer would. Absent where nobody asked. */
  turns?: Turn[]
  /** A caution that must stand beside it: its name in finding-cautions.ts, its text once told. */
  caution?: string
  /** Smaller can hurt sooner: people, then animals, then things, then money. */
  hurtRank: number
}

/** A finding with the words of what it rests on and of its caution: as it is read, printed and kept. */
export interface ToldFinding extends Finding {
  /** "Heater stuck on" */
  title: string
  source: Source
}

export const VERDICT_WORDS: Record<Verdict, string> = {
  does_not_fit: 'does not fit',
  not_known: 'not known',
  marginal: 'marginal',
  fits: 'fits',
}

export const SOURCE_WORDS: Record<Source['tag'], string> = {
  published: 'published',
  common_practice: 'common practice',
  from_memory: 'quoted from memory, unchecked',
  own: 'our own reckoning',
}
