import { markSvg } from '../plots/mark.ts'
import { drawing, markup, type Markup } from './markup.ts'

interface PageDocument {
  title: string
  /** One class on the body, for what the stylesheet does on this page alone. */
  className: string
  /** Name beside the mark. */
  heading: string
  /** What stands at the end of the bar. */
  barEnd?: Markup | null
  main: Markup
  /** Only the API's reference may be found by search. */
  indexed?: boolean
}

/** The frame of every page without script: one stylesheet, a way past the bar, one main part. */
export function pageDocument(page: PageDocument): Markup {
  return markup`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<link rel="icon" type="image/svg+xml" href="/mark.svg">
<meta name="referrer" content="no-referrer">
${page.indexed === true ? '' : markup`<meta name="robots" content="noindex, nofollow">`}
<title>${page.title}</title>
<link rel="stylesheet" href="/pages.css">
</head>
<body class="${page.className}">
<header class="top"><p class="mark">${drawing(markSvg())}<span>${page.heading}</span></p>${page.barEnd ?? ''}</header>
<main id="main">
${page.main}
</main>
</body>
</html>`
}
