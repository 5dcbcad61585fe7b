export const ROLES = ['member', 'advisor', 'manager'] as const
export type Role = (typeof ROLES)[number]

/** Each role may do what the ones before it may. @example atLeast('manager', 'advisor') // true */
export const atLeast = (role: Role, needed: Role): boolean => ROLES.indexOf(role) >= ROLES.indexOf(needed)
