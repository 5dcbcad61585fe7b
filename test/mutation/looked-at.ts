/** What was found when the survivors of a file were looked at, by path. */
export const LOOKED_AT: Record<string, string> = {
  'core/sizing/electrical-load.ts':
    'a strip that carries as much as the circuit, several strips and the words about other load were not asserted; tests were added after this count.',
  'core/sizing/equilibrium.ts':
    'at the ends of the search, and one halving more or less: the balance comes out the same within a millionth of a kelvin. Left alive, they change nothing.',
  'core/sizing/joist-beam.ts':
    'at the very ends of a load, where what lies before a section comes out the same by either form. Left alive.',
  'core/sizing/joist-finding.ts': 'a sag of just one, and half of the allowance to the last bit: no mass comes to them. Left alive.',
  'core/sizing/joist-floor.ts': 'shares that differ by just a part in a thousand million, which are one figure. Left alive.',
  'core/sizing/joist-load.ts': 'at two spacings both forms of the lever rule give a half. Left alive.',
  'core/sizing/span.ts': 'at equal values the one or the other is taken: the same figure. Left alive.',
  'core/sizing/stand-footprint.ts':
    'an optional chain on a stand that is there by then, sides that are the same, and a stress of just what glass bears. Left alive.',
  'core/sizing/tipping.ts':
    'which of several stands is the worst: the lightest and highest by every figure; whole newtons, which never are 44.5; and an optional chain on a stand that is there. Left alive.',
  'core/sizing/plugged-inputs.ts': 'optional chains and stand-ins that the types ask for and no build comes to. Left alive.',
  'core/sizing/room-inputs.ts': 'a default without a name: every one has its own. Left alive.',
  'core/sizing/tank-inputs.ts': 'times and over one are the same, and of two plans the second is the last. Left alive.',
}
