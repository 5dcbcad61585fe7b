import { describe, expect, it } from 'vitest'
import { sayPhrase } from '../../../core/units/say.ts'
import { documentUnits } from '../../../core/quote/document-units.ts'
import { checksPage } from '../../../web/pages/checks-page.ts'
import { quotePage } from '../../../web/pages/quote-page.ts'
import { quoteProps } from './sample-pages.ts'
import { sampleQuote } from './sample-quote.ts'

const quote = sampleQuote()
const [first] = quote.builds
const html = String(checksPage(quote, first!, '/q/token'))

describe('the page of a build’s checks', () => {
  it('tells every finding with its reason, its formula, what went in and the source', () => {
    for (const { check, title, reason } of first!.report.findings) {
      const [, section = ''] = new RegExp(`<section class="reckoned" id="${check}"([^]*?)</section>`).exec(html) ?? []
      expect([check, section.includes(`>${title}<`)]).toEqual([check, true])
      expect(section).toContain('How it was reckoned:')
      expect(section).toMatch(/Source \(.+\): .+\.<\/p>/)
      expect(section.replaceAll(/&#39;|&quot;/g, "'")).toContain(sayPhrase(reason, documentUnits(quote.inputs)).slice(0, 20))
    }
  })
  it('says what a check comes to with all assumptions at their worst, and nothing where that is not known', () => {
    const [checked] = first!.report.findings
    const withWorst = (worst?: 'does_not_fit') => {
      const { worst: _, ...bare } = checked!
      const findings = [{ ...bare, ...(worst ? { worst } : {}), turns: [] }]
      return String(checksPage(quote, { ...first!, report: { ...first!.report, findings } }, '/q/token'))
    }
    expect(withWorst('does_not_fit')).toContain('<p class="note">All at their worst: does not fit.</p>')
    expect(withWorst()).not.toContain('All at their worst')
  })
  it('says of each input where it comes from', () => {
    const [, outlet = ''] = /<section class="reckoned" id="cord_length"([^]*?)<\/section>/.exec(html) ?? []
    expect(outlet).toMatch(
      /<dt>Height of the outlet<\/dt><dd>[^<]+<span class="note">(answered, or set for this place|assumed: what is usual)/,
    )
  })
  it('is led to from every finding of the quote that is shown, and holds what the links name', () => {
    const links = [...String(quotePage(quoteProps())).matchAll(/href="\/q\/token\/checks\/A(?:#(\w+))?"/g)].map(([, id]) => id)
    expect(links.length).toBeGreaterThan(1)
    for (const id of links) if (id !== undefined) expect(html).toContain(`id="${id}"`)
  })
  it('has every id once, no script and no inline style', () => {
    const ids = [...html.matchAll(/\sid="([^"]+)"/g)].map((match) => match[1])
    expect(new Set(ids).size).toBe(ids.length)
    expect(html).not.toMatch(/<script|\son\w+=|style="|javascript:/i)
  })
  it('escapes hostile words wherever a person can write them', () => {
    const hostile = '"><img src=x onerror=alert(1)>'
    const products = quote.inputs.products.map((product) => ({ ...product, name: hostile }))
    const nasty = { ...quote, inputs: { ...quote.inputs, products } }
    const out = String(checksPage(nasty, { ...first!, name: hostile }, '/q/token'))
    expect(out).not.toContain('<img')
    expect(out).toContain('&lt;img')
  })
})
