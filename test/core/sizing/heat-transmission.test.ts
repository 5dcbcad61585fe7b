import { it } from 'vitest'
import { bottomTransmission, sideTransmission, topTransmission } from '../../../core/sizing/heat-transmission.ts'
import { isNear } from './reference-tanks.ts'

/** Own arithmetic from the resistances of ISO 6946 and the conductivities of EN 572-1 and EN ISO 10456; tolerance 1e-4. */
it.each([
  ['a side of 10 mm glass', sideTransmission('glass', 10, false), 7.1429],
  ['a side of 6 mm glass', sideTransmission('glass', 6, false), 7.3529],
  ['a side of 10 mm acrylic', sideTransmission('acrylic', 10, false), 5.5556],
  ['a side of 6 mm acrylic', sideTransmission('acrylic', 6, false), 6.25],
  ['a bottom of 10 mm glass on an 18 mm board', bottomTransmission('glass', 10), 3.1401],
  ['an open surface', topTransmission('open'), 10],
  // 1 ÷ (0.13 + 0.010 + 0.005): the film of water at rest counted.
  ['a side of 10 mm glass with its film of water', sideTransmission('glass', 10, true), 6.8966],
  // 1 ÷ (0.17 + 0.010 ÷ 0.20 + 0.018 ÷ 0.13)
  ['a bottom of 10 mm acrylic on an 18 mm board', bottomTransmission('acrylic', 10), 2.7897],
  ['a mesh', topTransmission('mesh'), 10],
  // 1 ÷ (0.10 + 0.004 ÷ 0.20)
  ['a 4 mm plastic lid', topTransmission('plastic'), 8.3333],
  ['a 4 mm glass lid', topTransmission('glass'), 9.6154],
])('passes heat through %s', (_what, actual, expected) => isNear(actual, expected, 1e-4))
