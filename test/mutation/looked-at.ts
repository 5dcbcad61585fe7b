/** What was found when the survivors of a file were looked at, by path. */
export const LOOKED_AT: Record<string, string> = {
  'core/sizing/electrical-load.ts':
    'a strip that carries as much as the circuit, several strips and the words about other load were not asserted; tests were added after this count.',
  'core/sizing/equilibrium.ts':
    'at the ends of the search, and one halving more or less: the balance comes out the same within a millionth of a kelvin. Left alive, they change nothing.',
  'core/sizing/livestock-marks.ts': 'its tests stand with the livestock groups, outside the folders that are run here.',
  'core/sizing/span.ts': 'at equal values the one or the other is taken: the same figure. Left alive.',
}
