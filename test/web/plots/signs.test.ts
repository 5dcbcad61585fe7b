import { describe, expect, it } from 'vitest'
import { VERDICTS } from '../../../core/sizing/finding.ts'
import { dip } from '../../../web/plots/dip.ts'
import { escapeText } from '../../../web/plots/escape-text.ts'
import { fitText, label, px, textWidth } from '../../../web/plots/frame.ts'
import { markSvg } from '../../../web/plots/mark.ts'
import { LIGHT } from '../../../web/plots/palette.ts'
import { tierMark } from '../../../web/plots/tier-marks.ts'
import { vial } from '../../../web/plots/vial.ts'
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'

const withoutColour = (svg: string): string => svg.replace(/(fill|stroke)="(#[0-9a-f]+|currentColor)"/g, '$1')

describe('escaping', () => {
  it('keeps hostile text as text', () => {
    expect(escapeText(`<script>alert("1")</script>&'`)).toBe('&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt;&amp;&#39;')
  })
  it('drops what XML cannot hold and mends half a surrogate pair', () => {
    expect(escapeText('a\u0000b\u000bc\ufffe')).toBe('abc')
    expect(escapeText('\ud83d')).toBe('\ufffd')
  })
  it('is used by every line of text', () => {
    expect(label({ x: 1, y: 2, text: '</text><a>', fill: 'red' })).toContain('&lt;/text&gt;&lt;a&gt;</text>')
  })
})

describe('coordinates and widths', () => {
  it('rounds to a tenth and never writes minus zero', () => {
    expect([px(3.14159), px(-0.04), px(12)]).toEqual(['3.1', '0', '12'])
  })
  it('refuses a coordinate that is no number instead of drawing it', () => {
    expect(() => px(NaN)).toThrow(RangeError)
  })
  it('cuts a long name to its room and shows that it did', () => {
    const cut = fitText('Wendlemere Road Aquatics', 60, 12)
    expect(cut.endsWith('…')).toBe(true)
    expect(textWidth(cut, 12)).toBeLessThanOrEqual(60)
    expect(fitText('Saltcote', 200, 12)).toBe('Saltcote')
  })
})

describe('signs', () => {
  it('tells the four verdicts apart without colour', () => {
    expect(new Set(VERDICTS.map((verdict) => withoutColour(vial(verdict, { paper: true })))).size).toBe(4)
  })
  it('tells the three tiers apart without colour', () => {
    expect(new Set((['full', 'today', 'bestSeen'] as const).map((tier) => withoutColour(tierMark(tier, { paper: true })))).size).toBe(3)
  })
  it('is silent beside its word, and says its word where it stands alone', () => {
    expect(vial('fits')).toContain('aria-hidden="true"')
    expect(dip({ label: 'on "sale"' })).toContain('role="img" aria-label="on &quot;sale&quot;"')
  })
  it('writes literal colours on paper and follows the words around it on a screen', () => {
    expect(markSvg({ paper: true })).toContain(LIGHT.glass)
    expect(markSvg({ paper: true })).not.toContain('currentColor')
    expect(markSvg()).toContain('currentColor')
  })
})

it('prints the light values of the tokens', () => {
  const tokens = readFileSync(resolve(import.meta.dirname, '../../../web/tokens.css'), 'utf8')
  const light = Object.fromEntries(
    [...tokens.matchAll(/--([a-z0-9-]+): light-dark\((#[0-9a-f]{6}),/g)].map((match) => [match[1], match[2]]),
  )
  for (const [name, value] of Object.entries(LIGHT)) expect(light[name], name).toBe(value)
})
