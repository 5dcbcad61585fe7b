import { describe, expect, it } from 'vitest'
import { homeOf, mayOpen, placeAt, placesOf, safeNext } from '../../../web/app/places.ts'

describe('the places of the bar', () => {
  it('follow the role', () => {
    const names = (role: 'member' | 'advisor' | 'manager'): string[] => placesOf(role).map(({ name }) => name)
    expect(names('member')).toEqual(['Prices', 'Post', 'Watches'])
    expect(names('advisor')).toEqual(['Quotes', 'Prices', 'Watches', 'Setups', 'Catalog', 'Customers'])
    expect(names('manager')).toEqual(['Quotes', 'Prices', 'Watches', 'Setups', 'Catalog', 'Customers', 'Stores', 'People', 'Settings'])
  })
  it('hold their own addresses and no others', () => {
    expect(placeAt('/prices/0198')?.name).toBe('Prices')
    expect(placeAt('/pricesx')).toBeUndefined()
    expect(mayOpen('/people', 'advisor')).toBe(false)
    expect(mayOpen('/stores/new', 'manager')).toBe(true)
    expect(mayOpen('/post', 'advisor')).toBe(true)
    expect([homeOf('member'), homeOf('manager')]).toEqual(['/prices', '/quotes'])
  })
})

describe('the address to go back to after signing in', () => {
  it.each(['/prices', '/quotes/0198?x=1', '/post?product=01'])('may be %s', (next) => {
    expect(safeNext(next)).toBe(next)
  })
  it.each([
    '//evil.example',
    '/\\evil.example',
    'https:evil.example',
    'https://evil.example',
    '/\t/evil.example',
    'javascript:alert(1)',
    '/sign-in',
    '/join/abc',
    '',
    undefined,
  ])('is never %s', (next) => {
    expect(safeNext(next)).toBeNull()
  })
})
