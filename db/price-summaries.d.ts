import { type Kysely, type RawBuilder, type Transaction } from 'kysely';
import type { DatedPrice } from '../core/pricing/sale-spells.ts';
import type { Database } from './database.ts';
export interface Pair {
    productId: string;
    storeId: string;
}
/** What a new sighting is added to: everything accepted of its product at its store, and which change of the summary that was. Null: there is no summary yet. */
export interface PairBasis {
    version: number | null;
    accepted: DatedPrice[];
}
/** One sighting as a query packs it: a list in place of columns takes the driver a tenth of the time. */
export type PackedPrice = [
    id: string,
    storeId: string,
    condition: DatedPrice['condition'],
    priceMinor: number,
    printedRegularMinor: number | null,
    seenOn: string,
    reporterId: string,
    lastDay: string | null,
    confirmations: number
];
export declare const PACKED: RawBuilder<unknown>;
/** What the table calls accepted counts, whatever made it so. */
export declare const acceptedOf: ([id, storeId, condition, priceMinor, printed, seenOn, reporterId, lastDay, confirmations,]: PackedPrice) => DatedPrice;
/** The summary that stands once some sightings are accepted, as its row keeps it. */
export declare const factsOf: (accepted: readonly DatedPrice[]) => string;
/** In one statement, so that version and sightings are of the same moment. */
export declare function readBasis(db: Kysely<Database>, { productId, storeId }: Pair): Promise<PairBasis>;
/**
 * Makes the summaries of some pairs anew from their sightings, after a change of any of them. Must run in the transaction of that change: it locks the rows, always in the same
 * order, and reads what others had done until then. `recount` where sightings came, not where a vote or a withdrawal changed one. Returns how many were not what they should have been.
 */
export declare function refreshPairs(trx: Transaction<Database>, pairs: readonly Pair[], recount: boolean): Promise<number>;
