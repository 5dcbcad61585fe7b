/** Why what survives in a file is left alive, by path. */
export const LOOKED_AT: Record<string, string> = {}
