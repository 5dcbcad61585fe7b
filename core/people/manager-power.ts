import type { Role } from './roles.ts'

interface Standing {
  role: Role
  disabled: boolean
}

/**
 * Whether a change of a person makes or unmakes somebody a manager, or shuts a manager out or lets one in again.
 *
 * @example movesManagerPower({ role: 'advisor', disabled: false }, { role: 'manager' }) // true
 */
export function movesManagerPower(before: Standing, change: { role?: Role; disabled?: boolean }): boolean {
  const [role, disabled] = [change.role ?? before.role, change.disabled ?? before.disabled]
  return role === before.role ? role === 'manager' && disabled !== before.disabled : role === 'manager' || before.role === 'manager'
}
