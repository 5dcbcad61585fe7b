import { contactLine } from './contact.ts'
import { markup, type Markup } from './markup.ts'
import { pageDocument } from './page-document.ts'

export interface ProblemPageProps {
  status: number
  /** What happened, in words for a person. */
  title: string
  /** What is safe and what to do. */
  detail: string
  contact: string | null
  /** Where to go on; null where there is no such place. */
  backPath: string | null
  /** The same address is asked for again by the browser itself after so many seconds, as its answer's head says. */
  again?: { inS: number; path: string } | undefined
}

/** Said in words, since nothing moves while it waits; and the way on for a browser that does not ask by itself. */
const againLine = ({ inS, path }: NonNullable<ProblemPageProps['again']>): Markup =>
  markup`<p>This page asks again by itself in ${inS} seconds. A document that was asked for is then downloaded. <a href="${path}">Ask again now</a></p>`

/** An answer that is not the page that was asked for: what happened, what is safe, what to do. */
export const problemPage = (props: ProblemPageProps): Markup =>
  pageDocument({
    title: props.title,
    className: 'short',
    heading: 'Driploop',
    main: markup`<article class="step"><p class="label">Answer ${props.status}</p><h1>${props.title}</h1><p class="lead">${props.detail}</p>${props.again === undefined ? '' : againLine(props.again)}${props.backPath === null ? '' : markup`<p><a class="btn" href="${props.backPath}">Go back</a></p>`}${props.contact === null ? '' : markup`<p class="ask">${contactLine(props.contact)}</p>`}</article>`,
  })
