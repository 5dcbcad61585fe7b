import type { Ctx } from '../context.ts'
import { attachment } from '../http/attachment.ts'
import { loggable } from '../http/log.ts'

/** A file as its parts are made, each when the reader has taken the one before. Breaks off where that fails: half a file must not look whole. */
export function streamFile(c: Ctx, parts: AsyncGenerator<string>, file: { name: string; format: 'csv' | 'json' }): Response {
  const { log } = c.get('deps')
  const bytes = new TextEncoder()
  const body = new ReadableStream<Uint8Array>({
    async pull(stream) {
      try {
        const { done, value } = await parts.next()
        if (done === true) stream.close()
        else stream.enqueue(bytes.encode(value))
      } catch (error) {
        log.warn({ requestId: c.get('requestId'), err: loggable(error) }, 'an export broke off')
        stream.error(error)
      }
    },
    cancel: () => void parts.return(undefined),
  })
  c.header('Content-Type', file.format === 'csv' ? 'text/csv; charset=utf-8' : 'application/json')
  c.header('Content-Disposition', attachment(`${file.name}.${file.format}`))
  return c.body(body, 200)
}
