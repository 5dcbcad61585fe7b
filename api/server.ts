import { configWarning, readConfig } from './config.ts'
import { createPdfDesk } from './pdf/pdf-desk.ts'
import { renderQuotePdf } from './pdf/render-quote-pdf.ts'
import { certificateWarning, readCertificate } from './service/certificate.ts'
import { firstManagerPath } from './service/first-link.ts'
import { createLog, sayFailure, stopOnSignal } from './service/run.ts'
import { startService } from './service/service.ts'

/** The real thing: reads the environment, starts, says where it is and, until someone has an account, how to make the first. */
async function main(): Promise<void> {
  const config = readConfig(process.env)
  const warning = configWarning(config)
  if (warning !== null) console.warn(warning)
  if (config.tls !== null && config.publicUrl !== null) {
    const doubt = certificateWarning(await readCertificate(config.tls), config.publicUrl.hostname, Date.now())
    if (doubt !== null) console.warn(doubt)
  }
  const service = await startService(config, createLog(), createPdfDesk(renderQuotePdf))
  stopOnSignal(service)
  // PostgreSQL may come later: until then everything answers 503 and says so.
  if (config.databaseUrl !== null) console.log(`Driploop answers at ${service.address} as soon as PostgreSQL does`)
  const { db, engine } = await service.database
  console.log(`Driploop answers at ${service.address}. Data is kept in ${engine === 'embedded' ? config.dataDir : 'PostgreSQL'}.`)
  const path = await firstManagerPath(db, Date.now())
  if (path !== null)
    console.log(`Nobody has an account yet. This link makes the manager, once, within 24 hours:\n\n  ${service.address}${path}\n`)
}

main().catch((error: unknown) => {
  sayFailure(error)
  process.exit(1)
})
