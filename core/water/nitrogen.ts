/** Oxygen for each gram of ammonia-N that is nitrified, 3.43 + 1.14 g: Timmons & Ebeling; the atomic weights give 4.569. */
export const OXYGEN_G_PER_N = 4.57
/** Alkalinity as calcium carbonate for each gram of ammonia-N, g: Timmons & Ebeling, from memory; the atomic weights give 7.146. */
export const ALKALINITY_G_PER_N = 7.14
/** Nitrate for each gram of nitrogen, from the atomic weights. */
export const NITRATE_G_PER_N = 4.4268

/** Share of protein in dry feed. Common practice: 45 %. */
const PROTEIN = 0.45
/** g ammonia-N for each g of protein: Timmons & Ebeling, Recirculating Aquaculture (0.16 × 0.80 × 0.80 × 0.90, from memory). */
const AMMONIA_PER_PROTEIN = 0.092

/** Ammonia-N of a day's feed, g. @example ammoniaOfFeed(5) // 0.2070 */
export const ammoniaOfFeed = (feedGrams: number, protein: number = PROTEIN): number => feedGrams * protein * AMMONIA_PER_PROTEIN
