import { markup, type Markup } from './markup.ts'

/** A mail as its reader's program shows it, with and without HTML. */
export interface LetterText {
  subject: string
  text: string
  html: string
}

/** A link that is a line of its own, so that no program breaks it. */
export const letterLink = (url: string, words: string): Markup => markup`<p><a href="${url}">${words}</a></p>`

/** HTML that every mail program shows: no picture, no style sheet, nothing that is fetched. */
export const letterHtml = (title: string, body: Markup): string =>
  String(
    markup`<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="color-scheme" content="light dark"><title>${title}</title></head><body>${body}</body></html>`,
  )
