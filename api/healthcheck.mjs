/* Health of the container, without a shell or a tool: exits 0 when the service is ready. */
import { request as plain } from 'node:http'
import { request as secure } from 'node:https'

const port = process.env.PORT || '8080'
const [request, scheme] = process.env.TLS_CERT ? [secure, 'https'] : [plain, 'http']
// The certificate is for the public name and not for this address; nothing is told or believed here but a status.
const asked = request(`${scheme}://127.0.0.1:${port}/health/ready`, { timeout: 3000, rejectUnauthorized: false }, (answer) =>
  process.exit(answer.statusCode === 200 ? 0 : 1),
)
asked.on('timeout', () => asked.destroy())
asked.on('error', () => process.exit(1))
asked.end()
