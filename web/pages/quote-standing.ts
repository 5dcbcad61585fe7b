import { civilDateAt, sayDate, sayWeekday, yearOf } from '../../core/dates.ts'
import type { RevisionDocument } from '../../core/quote/revision.ts'
import { apart } from './apart.ts'
import { contactLine } from './contact.ts'
import { markup, type Markup } from './markup.ts'
import type { QuotePageProps } from './quote-page.ts'

/** "A: Long and deep" of a build by its letter. */
export function sayBuild(quote: RevisionDocument, letter: string | null): Markup {
  const build = quote.builds.find((candidate) => candidate.letter === letter)
  return build === undefined ? markup`a build` : markup`${build.letter}: ${apart(build.name)}`
}

/** Where the quote stands, when it is not simply open: what happened, when, and what to do now. */
export function standing(props: QuotePageProps): Markup | '' {
  const { document: quote, state, supersededBy, answer, today, path } = props
  const year = yearOf(today)
  if (supersededBy !== null) {
    return told(
      'warn',
      `This is version ${quote.revision}. Version ${supersededBy} has taken its place.`,
      markup`<a class="btn" href="${path}">Open version ${supersededBy}</a>`,
    )
  }
  const on = answer === null ? '' : ` on ${sayDate(civilDateAt(Date.parse(answer.at), quote.inputs.install.timeZone), year)}`
  switch (state) {
    case 'accepted':
      return told('chosen', markup`<span>Accepted${on}: ${sayBuild(quote, answer?.letter ?? null)}.</span>`, afterAccepting(props))
    case 'declined':
      return told(
        '',
        `Declined${on}.`,
        markup`<p>${apart(quote.advisor)} can see your answer.${note(answer?.note)} If you change your mind, ask for a new version.</p>`,
      )
    case 'withdrawn':
      return told(
        'warn',
        'This quote was withdrawn.',
        markup`<p>It can no longer be accepted. Ask ${apart(quote.advisor)} for a new one.</p>`,
      )
    case 'draft':
      return told('warn', 'This quote is not issued.', markup`<p>It cannot be accepted yet.</p>`)
    case 'lapsed':
    case 'issued':
      return state === 'lapsed' || today > quote.standsUntil
        ? told(
            'warn',
            `This quote stood until ${sayWeekday(quote.standsUntil, year)}.`,
            markup`<p>Prices may have changed since. Ask ${apart(quote.advisor)} for a new version.</p>`,
          )
        : ''
  }
}

/** What happens next: who gets in touch, whom to ask, and where the checklist is. */
function afterAccepting({ document: quote, answer, setupPath }: QuotePageProps): Markup {
  return markup`<p>${apart(quote.advisor)} sees your answer and will get in touch about buying the parts.${note(answer?.note)}</p>
<p class="ask">${contactLine(quote.inputs.install.contact)}</p>
${setupPath === null ? '' : markup`<p>Every step from the empty stand to the first fish is on your startup checklist. Keep its address with the tank; it opens without signing in.</p><a class="btn" href="${setupPath}">Open your startup checklist</a>`}`
}

const note = (text: string | undefined): Markup | '' => (text === undefined || text === '' ? '' : markup` With your note: “${apart(text)}”`)

const told = (kind: string, heading: string | Markup, body: Markup): Markup =>
  markup`<div class="told ${kind}" role="status"><p class="told-head">${heading}</p>${body}</div>`
