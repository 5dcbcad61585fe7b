import { contactLine } from './contact.ts'
import { markup, type Markup } from './markup.ts'
import { pageDocument } from './page-document.ts'

export interface LinkGonePageProps {
  what: 'quote' | 'setup'
  /** Null where even the install is not known. */
  installName: string | null
  contact: string | null
}

const WORDS = {
  quote: {
    heading: 'This quote link does not work',
    body: 'It was mistyped, has expired, or was replaced by a newer one. A quote link ends 30 days after the quote does.',
  },
  setup: {
    heading: 'This setup link does not work',
    body: 'It was mistyped, has expired, or was replaced by a newer one. Nothing you ticked is lost: it opens again with a new link.',
  },
} as const

/** A link that was mistyped, revoked or has expired: one page for all three, so that it tells nobody which. */
export const linkGonePage = (props: LinkGonePageProps): Markup =>
  pageDocument({
    title: WORDS[props.what].heading,
    className: 'short',
    heading: props.installName ?? 'Driploop',
    main: markup`<article class="step"><h1>${WORDS[props.what].heading}</h1><p class="lead">${WORDS[props.what].body}</p><p>Type the address again as it stands on your paper, or ask for a new link.</p>${props.contact === null ? '' : markup`<p class="ask">${contactLine(props.contact)}</p>`}</article>`,
  })
