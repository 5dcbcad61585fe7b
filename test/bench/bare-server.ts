import { createServer, type IncomingMessage } from 'node:http'
import postgres from 'postgres'

/**
 * What the whole stack is measured against: one handler over raw postgres.js without sessions, checks, headers or words.
 * Started as a process of its own with the database's address and a port.
 */
const [, , databaseUrl = '', port = '0'] = process.argv
const sql = postgres(databaseUrl, { max: 10, onnotice: () => undefined })

async function textOf(request: IncomingMessage): Promise<string> {
  let text = ''
  for await (const chunk of request) text += String(chunk)
  return text
}

async function readProduct(id: string): Promise<unknown> {
  const [row] = await sql`select id, kind, name, maker, gtin, oversize, note, spec, archived, version from product where id = ${id}`
  return { ...row, parts: [] }
}

async function insertSighting(text: string): Promise<unknown> {
  const s = JSON.parse(text) as Record<string, string & number>
  const [row] =
    await sql`insert into sighting (id, product_id, store_id, condition, price_minor, printed_regular_minor, seen_on, last_day, evidence, note, reporter_id)
    values (${s['id']!}, ${s['productId']!}, ${s['storeId']!}, ${s['condition']!}, ${s['priceMinor']!}, ${s['printedRegularMinor'] ?? null}, ${s['seenOn']!}, ${s['lastDay'] ?? null},
      ${s['evidence']!}, ${s['note'] ?? null}, ${s['reporterId']!}) returning *`
  return row
}

createServer((request, answer) => {
  void (async () => {
    const made =
      request.method === 'POST'
        ? await insertSighting(await textOf(request))
        : await readProduct((request.url ?? '').split('/').pop() ?? '')
    answer.writeHead(request.method === 'POST' ? 201 : 200, { 'content-type': 'application/json' }).end(JSON.stringify(made))
  })().catch((error: unknown) => answer.writeHead(500).end(String(error)))
}).listen(Number(port), '127.0.0.1')
