import type { RevisionDocument } from '../../core/quote/revision.ts'
import { apart } from './apart.ts'
import { markup, type Markup } from './markup.ts'

/** What is otherwise than in the version that the customer read before, build by build. */
export function sinceSection({ since }: RevisionDocument): Markup | '' {
  if (!since) return ''
  const builds = since.builds.map(
    ({ letter, name, changes }) =>
      markup`<div><h3><span class="letter">${letter}</span> ${apart(name)}</h3><ul class="plain">${changes.map((words) => markup`<li>${apart(words)}</li>`)}</ul></div>`,
  )
  return markup`<section class="since" aria-labelledby="h-since"><h2 id="h-since">What changed since ${since.version}</h2>
<p class="lead">${since.inShort}</p>${builds.length === 0 ? '' : markup`<div class="since-builds">${builds}</div>`}</section>`
}
