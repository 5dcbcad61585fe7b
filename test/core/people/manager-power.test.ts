import { describe, expect, it } from 'vitest'
import { movesManagerPower } from '../../../core/people/manager-power.ts'
import { ROLES, type Role } from '../../../core/people/roles.ts'

describe('the power of a manager', () => {
  it.each(ROLES.flatMap((from) => ROLES.map((to) => [from, to] as [Role, Role])))(
    'from %s to %s moves where one end is manager',
    (from, to) => {
      const moves = from !== to && (from === 'manager' || to === 'manager')
      for (const disabled of [true, false]) expect(movesManagerPower({ role: from, disabled }, { role: to })).toBe(moves)
    },
  )

  it.each([
    ['manager', false, true, true],
    ['manager', true, false, true],
    ['manager', true, true, false],
    ['advisor', false, true, false],
    ['member', true, false, false],
  ] as const)('of a %s whose account goes from disabled %s to %s: %s', (role, before, disabled, moves) => {
    expect(movesManagerPower({ role, disabled: before }, { disabled })).toBe(moves)
  })

  it('does not move with nothing', () => expect(movesManagerPower({ role: 'manager', disabled: false }, {})).toBe(false))
})
