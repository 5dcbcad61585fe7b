import { passwordAgain } from './password-again.ts'
import { ProblemError, readProblem } from './problem.ts'

/** A thing with the version it was read at: what `If-Match` sends back. */
export interface Versioned<Value> {
  value: Value
  etag: string
}

interface Options {
  body?: unknown
  /** A file as the body, under its own content type. */
  file?: Blob
  etag?: string
  signal?: AbortSignal
}

async function readBody(response: Response): Promise<unknown> {
  if (response.status === 204) return null
  const type = response.headers.get('content-type') ?? ''
  if (!type.includes('json')) return response.text()
  return response.json() as Promise<unknown>
}

/** One call to the server; one that needs the password once more is repeated when it was given. Throws ProblemError for every refusal and for an unreachable server. */
async function call(method: string, path: string, options: Options): Promise<{ body: unknown; etag: string; status: number }> {
  const headers: Record<string, string> = { accept: 'application/json' }
  if (options.body !== undefined) headers['content-type'] = 'application/json'
  if (options.etag !== undefined) headers['if-match'] = options.etag
  const init: RequestInit = { method, headers, credentials: 'same-origin' }
  if (options.body !== undefined) init.body = JSON.stringify(options.body)
  if (options.file !== undefined) {
    init.headers = { ...headers, 'content-type': options.file.type }
    init.body = options.file
  }
  if (options.signal) init.signal = options.signal
  const response = await fetch(path, init).catch((error: unknown) => {
    if (error instanceof DOMException && error.name === 'AbortError') throw error
    throw new ProblemError(readProblem(0, null))
  })
  const body = await readBody(response).catch(() => null)
  if (!response.ok) {
    const problem = readProblem(response.status, body)
    if (problem.code === 'password_needed' && (await passwordAgain())) return call(method, path, options)
    throw new ProblemError(problem)
  }
  return { body, etag: response.headers.get('etag') ?? '', status: response.status }
}

/** The server's answer, trusted to be what the contract says: both sides compile against the same types of core. */
export async function request<Value>(method: string, path: string, options: Options = {}): Promise<Value> {
  return (await call(method, path, options)).body as Value
}

/** As `request`, with the version it was answered at. */
export async function requestVersioned<Value>(method: string, path: string, options: Options = {}): Promise<Versioned<Value>> {
  const { body, etag } = await call(method, path, options)
  return { value: body as Value, etag }
}

/**
 * A query string of what is stated.
 *
 * @example queryOf({ kind: 'tank', q: '', limit: 20 }) // '?kind=tank&limit=20'
 */
export function queryOf(parts: Record<string, string | number | boolean | null | undefined>): string {
  const query = new URLSearchParams()
  for (const [key, value] of Object.entries(parts)) {
    if (value !== undefined && value !== null && value !== '') query.set(key, String(value))
  }
  const text = query.toString()
  return text === '' ? '' : `?${text}`
}
