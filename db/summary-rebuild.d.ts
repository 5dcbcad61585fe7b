import { type Kysely } from 'kysely';
import type { Database } from './database.ts';
export interface Rebuilt {
    pairs: number;
    /** Summaries that were not what their sightings say: 0 where they had been kept as they should. */
    changed: number;
}
/** Whether every summary was made by this release's method. */
export declare function areSummariesCurrent(db: Kysely<Database>): Promise<boolean>;
/**
 * Makes every summary anew from the sightings, some products at a time, while others go on posting. The same sightings give the same bytes as were kept with each of them.
 */
export declare function rebuildSummaries(db: Kysely<Database>): Promise<Rebuilt>;
