/** Cautions that stand beside a finding. Common practice; each defers to the maker, the local code and licensed practice. */
export const CAUTIONS = {
  floor:
    'Screening only, never an approval. Sagging, bouncing, notched or cut joists, a balcony, a mobile home, or any doubt: ask a licensed structural engineer before you place it.',
  mains:
    'Water and mains electricity can kill. Test the protective device first, unplug everything before hands go in; the local electrical code and a licensed electrician decide.',
  heater: 'Heater off and cooled before the level drops; never lift a running heater out. Maker’s instructions come first.',
  load: 'A full tank that falls can kill. Maker’s instructions for stand and tank come first; never move a tank with water in it.',
  lift: 'About 25 kg each, gloves on, suction lifters for bare glass; never move a tank with water in it.',
  chemicals: 'Never bleach, acid or chlorine near ammonia: toxic gas. The maker’s dose comes first.',
} as const
