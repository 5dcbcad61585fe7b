import { expect, it } from 'vitest'
import { deviceOf } from '../../../core/people/device.ts'

// The shapes are those that browsers send (common practice: "Mobi" means a phone); the names in them are invented.
it.each([
  ['Mozilla/5.0 (Linux; Example 14; K) Engine/537.36 (KHTML, like Gecko) Reader/120.0 Mobile Engine/537.36', 'phone'],
  ['Mozilla/5.0 (Example 14; Mobile; rv:120.0) Engine/120.0 Reader/120.0', 'phone'],
  ['Mozilla/5.0 (Example 14; Tablet; rv:120.0) Engine/120.0 Reader/120.0', 'tablet'],
  ['Mozilla/5.0 (gPad; CPU OS 17_0 like Example) Engine/605.1 Mobile/15E148', 'tablet'],
  ['Mozilla/5.0 (X11; Linux x86_64; rv:120.0) Engine/20100101 Reader/120.0', 'computer'],
  ['', 'computer'],
  [undefined, 'computer'],
] as const)('%s is a %s', (userAgent, device) => expect(deviceOf(userAgent)).toBe(device))

it('reads no further than it must, however long the text', () => {
  expect(deviceOf('x'.repeat(1_000_000) + 'Mobile')).toBe('computer')
})
