export const DEVICES = ['phone', 'tablet', 'computer'] as const
export type DeviceWord = (typeof DEVICES)[number]

/** What stands in a user agent in front of anything that could say more than the kind of device. */
const LONGEST_READ = 512

/**
 * What kind of device a user agent says it runs on: one word, so that a list of sessions can be told apart and says nothing else.
 * By the words that browsers are agreed to use ("Mobi" on phones, "Tablet" or "Pad" on tablets); whatever says neither is a computer.
 *
 * @example deviceOf('Mozilla/5.0 (Example; Mobile) Engine/1.0') // 'phone'
 */
export function deviceOf(userAgent: string | undefined): DeviceWord {
  const said = (userAgent ?? '').slice(0, LONGEST_READ)
  if (/Tablet|\w+Pad\b/i.test(said)) return 'tablet'
  return /Mobi/i.test(said) ? 'phone' : 'computer'
}
