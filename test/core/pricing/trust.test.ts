import { describe, expect, it } from 'vitest'
import { newcomerTrust, trust, trustByReporter } from '../../../core/pricing/trust.ts'
import { aSighting } from './a-sighting.ts'

describe('trust of a reporter', () => {
  it('is 9/11 after 7 confirmed and 1 disputed, prior Beta(2, 1) (pricing reference; Beta mean)', () => {
    expect(trust(7, 1)).toBeCloseTo(9 / 11, 12)
  })

  it('begins at two thirds', () => {
    expect(newcomerTrust('anyone')).toBeCloseTo(2 / 3, 12)
  })

  it('counts a sighting once, however many confirmed it, and a withdrawn one not at all', () => {
    const ofAda = { reporterId: 'ada', priceMinor: 100, seenOn: '2026-01-01' }
    const trustOf = trustByReporter([
      aSighting({ ...ofAda, confirmations: 9 }),
      aSighting({ ...ofAda, confirmations: 1 }),
      aSighting({ ...ofAda, disputes: 2, confirmations: 1 }),
      aSighting({ ...ofAda, confirmations: 5, withdrawn: true }),
      aSighting({ ...ofAda }),
    ])
    expect(trustOf('ada')).toBeCloseTo(trust(2, 1), 12)
    expect(trustOf('wil')).toBeCloseTo(2 / 3, 12)
  })
})
