import { atLeast, type Role } from '../../core/people/roles.ts'

/** The places of the bar, in the order an advisor meets them. `most` hides one that its role does not need there. */
export const PLACES = [
  { to: '/quotes', name: 'Quotes', least: 'advisor' },
  { to: '/prices', name: 'Prices', least: 'member' },
  { to: '/post', name: 'Post', least: 'member' },
  { to: '/watches', name: 'Watches', least: 'member' },
  { to: '/setups', name: 'Setups', least: 'advisor' },
  { to: '/catalog', name: 'Catalog', least: 'advisor' },
  { to: '/customers', name: 'Customers', least: 'advisor' },
  { to: '/stores', name: 'Stores', least: 'manager' },
  { to: '/people', name: 'People', least: 'manager' },
  { to: '/settings', name: 'Settings', least: 'manager' },
] as const satisfies ReadonlyArray<{ to: string; name: string; least: Role }>
export type Place = (typeof PLACES)[number]

/** "Post" stands in a member's bar alone: an advisor posts from a product. @example placesOf('member').map((p) => p.name) // ['Prices', 'Post', 'Watches'] */
export const placesOf = (role: Role): Place[] =>
  PLACES.filter((place) => atLeast(role, place.least) && (place.to !== '/post' || role === 'member'))

/** Where a role starts. */
export const homeOf = (role: Role): '/quotes' | '/prices' => (atLeast(role, 'advisor') ? '/quotes' : '/prices')

const under = (path: string, place: string): boolean => path === place || path.startsWith(`${place}/`)

/** Places that need no one signed in. */
export const isPublicPath = (path: string): boolean => under(path, '/sign-in') || under(path, '/join')

/** The place an address belongs to. @example placeAt('/prices/0190')?.name // 'Prices' */
export const placeAt = (path: string): Place | undefined => PLACES.find((place) => under(path, place.to))

/** Whether a role may open an address; the server decides on its own what the role may read and change. */
export function mayOpen(path: string, role: Role): boolean {
  const place = placeAt(path)
  return !place || atLeast(role, place.least)
}

/**
 * An address to go back to after signing in: only inside this application.
 *
 * @example safeNext('//elsewhere.example') // null
 */
export function safeNext(next: string | undefined): string | null {
  if (!next || !/^\/(?![/\\])[\w\-./?=&%~+]*$/.test(next)) return null
  return isPublicPath(next.split('?')[0] ?? '') ? null : next
}
