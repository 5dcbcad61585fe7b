import { schemaOutline, shapeAnchor } from './api-reference-schema.ts'
import { markup, type Markup } from './markup.ts'
import { operationsOf, shapesOf, type Answer, type ListedOperation, type OpenApiDocument, type Parameter } from './openapi-document.ts'
import { pageDocument } from './page-document.ts'

export type { OpenApiDocument } from './openapi-document.ts'

/** Operations of one resource: the path's first part after /api. */
const resourceOf = (path: string): string => path.replace(/^\/api\//, '').split('/')[0] ?? ''
const anchorOf = ({ method, path }: ListedOperation): string => `${method}-${path.replace(/[^A-Za-z0-9]+/g, '-').replace(/^-|-$/g, '')}`

/** A kind of refusal: `code` is the last part of a problem's type, which leads here. */
export interface RefusalKind {
  code: string
  title: string
}

/** Every operation of the API as a person reads it: parameters, body, answers. Made from the same document that machines read. */
export function apiReferencePage(openapi: OpenApiDocument, refusals: readonly RefusalKind[] = []): Markup {
  const operations = operationsOf(openapi)
  const resources = [...new Set(operations.map(({ path }) => resourceOf(path)))]
  const title = openapi.info?.title ?? 'Driploop API'
  return pageDocument({
    title: `${title}, reference`,
    className: 'reference',
    heading: 'Driploop',
    indexed: true,
    main: markup`<h1>${title}</h1><p class="quiet">Version ${openapi.info?.version ?? 'not stated'}. For machines: <a href="/api/openapi.json">openapi.json</a></p>
${openapi.info?.description === undefined ? '' : markup`<p>${openapi.info.description}</p>`}
<p>Refusals are problem details (RFC 9457): <code>type</code>, <code>title</code>, <code>status</code>, <code>detail</code>, and <code>errors</code> with <code>field</code>, <code>limit</code> and <code>message</code>. A versioned thing is changed with <code>If-Match</code> and its <code>ETag</code>.</p>
<nav aria-label="Operations"><ul class="plain index">${operations.map((entry) => markup`<li><a href="#${anchorOf(entry)}"><b class="method">${entry.method.toUpperCase()}</b> ${entry.path}</a></li>`)}</ul></nav>
${resources.map((resource) => markup`<section><h2>${resource}</h2>${operations.filter(({ path }) => resourceOf(path) === resource).map((entry) => one(entry, openapi))}</section>`)}
${kinds(refusals)}
${shapes(openapi)}`,
  })
}

function kinds(refusals: readonly RefusalKind[]): Markup | '' {
  if (refusals.length === 0) return ''
  return markup`<section><h2>Refusals</h2><dl class="answers">${refusals.map(({ code, title }) => markup`<div id="${code}"><dt><code>${code}</code></dt><dd>${title}</dd></div>`)}</dl></section>`
}

/** Every named shape once; operations lead here. */
function shapes(openapi: OpenApiDocument): Markup | '' {
  const found = shapesOf(openapi)
  if (found.length === 0) return ''
  return markup`<section><h2>Shapes</h2>${found.map(({ name, schema }) => markup`<article class="operation" id="${shapeAnchor(name)}"><h3>${name}</h3><div>${schemaOutline(schema, openapi)}</div></article>`)}</section>`
}

function one(entry: ListedOperation, openapi: OpenApiDocument): Markup {
  const { operation } = entry
  const body = Object.entries(operation.requestBody?.content ?? {})
  return markup`<article class="operation" id="${anchorOf(entry)}"><h3><b class="method">${entry.method.toUpperCase()}</b> <code>${entry.path}</code></h3>
${operation.summary === undefined ? '' : markup`<p>${operation.summary}</p>`}${operation.description === undefined ? '' : markup`<p class="quiet">${operation.description}</p>`}
${operation['x-role'] === undefined ? '' : markup`<p class="quiet">${whoMay(operation['x-role'])}</p>`}${parameters(operation.parameters ?? [], openapi)}
${body.map(([type, media]) => markup`<h4>Body, ${type}</h4>${schemaOutline(media?.schema, openapi)}`)}
<h4>Answers</h4>${answers(operation.responses ?? {}, openapi)}</article>`
}

const WHO: Record<string, string> = {
  public: 'Needs no session.',
  member: 'Needs a session.',
  advisor: 'Advisors and managers.',
  manager: 'Managers.',
}
const whoMay = (role: string): string => WHO[role] ?? role

function parameters(list: readonly Parameter[], openapi: OpenApiDocument): Markup | '' {
  if (list.length === 0) return ''
  return markup`<h4>Parameters</h4><dl class="answers">${list.map((parameter) => markup`<div><dt><code>${parameter.name ?? ''}</code></dt><dd>in ${parameter.in ?? 'query'}${parameter.required === true ? ', required' : ''}${parameter.description === undefined ? '' : markup`. ${parameter.description}`} ${schemaOutline(parameter.schema, openapi)}</dd></div>`)}</dl>`
}

const isRefusal = (answer: Answer): boolean => answer.content?.['application/problem+json'] !== undefined

/** What is answered where it works, each with its shape; then what may be refused, in one row. */
function answers(responses: Readonly<Record<string, Answer | undefined>>, openapi: OpenApiDocument): Markup {
  const all = Object.entries(responses).map(([status, answer]) => ({ status, answer: answer ?? {} }))
  const refusals = all.filter(({ answer }) => isRefusal(answer))
  const works = all.filter(({ answer }) => !isRefusal(answer))
  return markup`<dl class="answers">${works.map(({ status, answer }) => answerRow(status, answer, openapi))}${refusals.length === 0 ? '' : markup`<div><dt>refusals</dt><dd>${refusals.map(({ status, answer }) => `${status} ${answer.description ?? ''}`.trim()).join('; ')}</dd></div>`}</dl>`
}

function answerRow(status: string, answer: Answer, openapi: OpenApiDocument): Markup {
  const bodies = Object.entries(answer.content ?? {})
  const typeOf = (type: string): Markup | '' => (type === 'application/json' ? '' : markup`<span class="type">${type}</span> `)
  return markup`<div><dt>${status}</dt><dd>${answer.description ?? ''} ${bodies.map(([type, media]) => markup`${typeOf(type)}${schemaOutline(media?.schema, openapi)}`)}</dd></div>`
}
