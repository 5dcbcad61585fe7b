import { type CivilDate } from '../dates.ts';
import type { PriceView } from './price-view.ts';
import { type DatedPrice, type SaleSpell } from './sale-spells.ts';
/** Nothing older than a year and a half before the newest sighting moves any figure. */
export declare const SUMMARY_DAYS = 550;
/** A price that stood on one day, and what says so. */
interface KnownPrice {
    priceMinor: number;
    seenOn: CivilDate;
    reporters: number;
    sightingIds: string[];
}
type KnownSpell = Pick<SaleSpell, 'condition' | 'priceMinor' | 'lastSeenOn' | 'endsOn' | 'lastDayStated'> & Pick<KnownPrice, 'reporters' | 'sightingIds'>;
type Low = NonNullable<PriceView['best']>;
/** What the sightings up to a day say of new goods, whatever day is asked about from then on. */
export interface PairState {
    /** The day from which this holds, until that of the next state. */
    from: CivilDate;
    shelf: KnownPrice | null;
    printed: KnownPrice | null;
    /** The newest sale or clearance, running or over. */
    spell: KnownSpell | null;
    /** Lowest first, each newer than the one before: whatever year is asked about, its lowest is among them. */
    lows: Low[];
}
/** States of one product at one store, oldest first: as many as the days of its newest sightings that a clock elsewhere may not have reached. */
export type PairSummary = PairState[];
/**
 * The time-free facts of one product at one store, from all of its sightings: what `priceViewOf` needs of them for today and any later day. However many sightings there are, they
 * stay about as short. The order of the sightings does not matter.
 *
 * Units: minor units as the store prints them.
 */
export declare function summarisePair(sightings: readonly DatedPrice[]): PairSummary;
/** Whether a summary can tell of a day: not of one before its first state, when some of its sightings had not been made. */
export declare const tellsOf: (summary: PairSummary, asOf: CivilDate) => boolean;
/**
 * What `priceViewOf` says of the sightings that were summarised; undefined where nothing is known any more. `asOf` is a day that the summary tells of.
 */
export declare function viewOfSummary(summary: PairSummary, pair: Pick<PriceView, 'productId' | 'storeId'>, asOf: CivilDate): PriceView | undefined;
/** The same bytes for the same sightings: keys in the order in which they are made here, ids in theirs. */
export declare const encodeSummary: (summary: PairSummary) => string;
export declare const decodeSummary: (text: string) => PairSummary;
export {};
