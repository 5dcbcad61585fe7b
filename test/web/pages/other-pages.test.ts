import { describe, expect, it } from 'vitest'
import { apiReferencePage } from '../../../web/pages/api-reference-page.ts'
import { sayType } from '../../../web/pages/api-reference-schema.ts'
import { contactLine } from '../../../web/pages/contact.ts'
import { linkGonePage } from '../../../web/pages/link-gone-page.ts'
import { markup } from '../../../web/pages/markup.ts'
import { problemPage } from '../../../web/pages/problem-page.ts'
import { sampleOpenApi } from './sample-openapi.ts'

describe('the API as a person reads it', () => {
  const html = String(apiReferencePage(sampleOpenApi))
  it('lists every operation once in the index and once in full', () => {
    expect(html.match(/href="#post-api-sightings"/g)).toHaveLength(1)
    expect(html.match(/id="get-api-board"/g)).toHaveLength(1)
  })
  it('says kinds, limits and what may be left out', () => {
    expect(html).toContain('integer, at least 1, at most 100')
    expect(html).toMatch(/<code>note<\/code> <span class="type">string, at most 500 characters<\/span><span class="type">, optional/)
    expect(html).toMatch(/<code>priceMinor<\/code> <span class="type">integer, at least 1<\/span>/)
    expect(html).toContain('<code>productId</code>')
    expect(html).not.toContain('9007199254740991')
  })
  it('writes a named shape out once and leads to it from where it is used', () => {
    expect(html.match(/id="shape-Sighting"/g)).toHaveLength(1)
    expect(html).toContain('<a href="#shape-Sighting">Sighting</a>')
    expect(html.match(/<code>priceMinor<\/code>/g)).toHaveLength(1)
  })
  it('says a choice and a list in words', () => {
    expect(sayType({ anyOf: [{ type: 'string' }, { type: 'null' }] })).toBe('string or null')
    expect(sayType({ type: 'array', items: { type: 'number' }, maxItems: 4 })).toBe('list of number, at most 4 items')
    expect(sayType({ enum: ['a4', 'letter'] })).toBe('"a4" or "letter"')
  })
  it('escapes and ends, even for a shape that holds itself', () => {
    expect(html).toContain('Refused &lt;b&gt;')
    const tree = {
      ...sampleOpenApi,
      paths: {
        '/api/tree': {
          get: { responses: { 200: { content: { 'application/json': { schema: { $ref: '#/components/schemas/Tree' } } } } } },
        },
      },
    }
    expect(String(apiReferencePage(tree)).length).toBeLessThan(10_000)
    expect(String(apiReferencePage({}))).toContain('Driploop API')
  })
})

describe('pages for what is not there', () => {
  it('does not tell a revoked link from a mistyped one', () => {
    const html = String(linkGonePage({ what: 'setup', installName: null, contact: null }))
    expect(html).toContain('mistyped, has expired, or was replaced')
    expect(html).toContain('Nothing you ticked is lost')
  })
  it('says what happened and what to do, escaped', () => {
    const html = String(
      problemPage({
        status: 503,
        title: 'The database <is> away',
        detail: 'Nothing was changed.',
        contact: 'ask the club',
        backPath: '/s/x"y',
      }),
    )
    expect(html).toContain('The database &lt;is&gt; away')
    expect(html).toContain('href="/s/x&quot;y"')
    expect(html).toContain('Ask the club')
    expect(html).not.toContain('asks again')
  })
  it('says that it asks again by itself, where it does, with the way for a browser that does not', () => {
    const again = { inS: 5, path: '/q/token/pdf?paper=a4&x="y' }
    const html = String(
      problemPage({ status: 503, title: 'Not available right now', detail: 'Many ask.', contact: null, backPath: '/q/token', again }),
    )
    expect(html).toContain('This page asks again by itself in 5 seconds.')
    expect(html).toContain('href="/q/token/pdf?paper=a4&amp;x=&quot;y"')
  })
})

describe('markup', () => {
  it('escapes text, keeps markup, leaves out nothing-values, flattens lists', () => {
    expect(String(markup`<p>${'<'}${markup`<b>${1}</b>`}${null}${false}${['a', ['b']]}</p>`)).toBe('<p>&lt;<b>1</b>ab</p>')
  })
  it('makes a number in a contact line one that can be called', () => {
    expect(String(contactLine('ask the club, +1 555-0100 22'))).toBe('<a href="tel:+1555010022">Ask the club, +1 555-0100 22</a>')
    expect(String(contactLine('room 12'))).toBe('Room 12')
    expect(String(contactLine(' '))).toBe('')
  })
})
