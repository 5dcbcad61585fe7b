import { markup, type Markup } from './markup.ts'
import { pageDocument } from './page-document.ts'

interface MailPageProps {
  installName: string
  /** What the link is about, and what is to be done or was. */
  state:
    | { what: 'ask_confirm'; address: string; path: string }
    | { what: 'confirmed'; address: string }
    | { what: 'ask_stop'; path: string }
    | { what: 'stopped' }
    | { what: 'renewed' }
    | { what: 'over' }
}

const button = (path: string, words: string): Markup =>
  markup`<form method="post" action="${path}"><button class="btn main">${words}</button></form>`

/** What stands on the page: heading, sentence, and the one button where something is to be done. */
function said(state: MailPageProps['state']): { heading: string; body: Markup } {
  switch (state.what) {
    case 'ask_confirm':
      return {
        heading: 'Hear of deals by e-mail',
        body: markup`<p class="lead">Deals on what you watch come to <b>${state.address}</b>: at most one mail an hour, and none while there is nothing to tell.</p>${button(state.path, 'Yes, send them here')}`,
      }
    case 'confirmed':
      return {
        heading: 'Your address is confirmed',
        body: markup`<p class="lead">Deals on what you watch now come to <b>${state.address}</b>. Every mail has a link that ends it; so has your account.</p><p><a href="/account">Your account</a></p>`,
      }
    case 'ask_stop':
      return {
        heading: 'No more mail',
        body: markup`<p class="lead">Your address is deleted here and nothing more is sent to it. Your watches stay.</p>${button(state.path, 'Stop the mail')}`,
      }
    case 'stopped':
      return {
        heading: 'No more mail is sent to you',
        body: markup`<p class="lead">Your address is not kept here any more. Your watches stay; you can give an address again under <a href="/account">your account</a>.</p>`,
      }
    case 'renewed':
      return {
        heading: 'This link is of an earlier address',
        body: markup`<p class="lead">The address in that mail was changed, or given anew more than 60 days ago; no mail goes to an address of before. To end the mail that you get now, open the link in the newest one, or take the address away under <a href="/account">your account</a>.</p>`,
      }
    case 'over':
      return {
        heading: 'This link does not work',
        body: markup`<p class="lead">It was used already, has expired after two days, or is not whole. Ask for another mail under <a href="/account">your account</a>.</p>`,
      }
  }
}

/** What a link in a mail opens: a question with one button, since programs that look through mail open every link, or what was done. */
export function mailPage({ installName, state }: MailPageProps): Markup {
  const { heading, body } = said(state)
  return pageDocument({
    title: heading,
    className: 'short',
    heading: installName,
    main: markup`<article class="step"><h1>${heading}</h1>${body}</article>`,
  })
}
