import { mkdir } from 'node:fs/promises'
import { civilDateAt } from '../core/dates.ts'
import { CLUB } from '../db/demo/club.ts'
import { DEMO_SEED, seedDemo } from '../db/demo/seed-demo.ts'
import { hashPassword } from './auth/password-hash.ts'
import type { Config } from './config.ts'
import { DEMO_FOLDER as FOLDER, demoConfig } from './demo/demo-config.ts'
import { drawDemoPictures } from './demo/demo-pictures.ts'
import { noteShowcase, showcasePdf } from './demo/showcase.ts'
import { demoPasswords, readSignIns, writeSignIns } from './demo/sign-ins.ts'
import { createPdfDesk } from './pdf/pdf-desk.ts'
import { renderQuotePdf } from './pdf/render-quote-pdf.ts'
import { PortInUse } from './service/listen.ts'
import type { Fill } from './service/open-database.ts'
import { createLog, sayFailure, stopOnSignal } from './service/run.ts'
import type { Service } from './service/service.ts'
import { startService } from './service/service.ts'

/** Whoever has more programs than this on neighbouring ports names one with PORT. */
const PORTS_TRIED = 20

/** Fills the fresh demo folder. The passwords are written first: were the seeding broken off, the next run begins anew with others. */
const fillDemo: Fill = async (db) => {
  console.log('Making the demo scenario (some seconds, the first time only) …')
  const passwords = demoPasswords()
  const seeded = await seedDemo(db, {
    seed: DEMO_SEED,
    today: civilDateAt(Date.now(), CLUB.timeZone),
    passwords,
    hash: hashPassword,
    now: new Date(),
  })
  await drawDemoPictures(db)
  const lines = seeded.signIns.map(
    ({ role, name, signInName, password }) => `  ${role.padEnd(8)} ${signInName.padEnd(8)} ${password}   (${name})`,
  )
  await writeSignIns(FOLDER, `${lines.join('\n')}\n`)
  await noteShowcase(FOLDER, seeded.showcase.quoteId)
}

async function startOnFreePort(config: Config, asked: boolean): Promise<Service> {
  for (let port = config.port; ; port += 1) {
    try {
      return await startService({ ...config, port }, createLog(), createPdfDesk(renderQuotePdf), fillDemo)
    } catch (error) {
      if (!(error instanceof PortInUse) || asked || port >= config.port + PORTS_TRIED) throw error
    }
  }
}

/** The demo: a club of our invention in a folder of its own, kept between runs. Nothing of the real service's environment but PORT counts. */
async function main(): Promise<void> {
  const port = process.env['PORT']
  const config = demoConfig(port)
  await mkdir(FOLDER, { recursive: true, mode: 0o700 })
  const service = await startOnFreePort(config, port !== undefined && port !== '')
  stopOnSignal(service)
  const connection = await service.database
  const pdf = await showcasePdf(FOLDER, connection, service, (paper) => renderQuotePdf(paper))
  const signIns = (await readSignIns(FOLDER)) ?? '  The file sign-ins.txt was deleted: delete demo-data to begin afresh.\n'
  console.log(
    `\nDriploop demo: ${service.address}\n\nSign in as\n${signIns}\n${pdf === undefined ? '' : `An issued quote on paper: ${pdf}\n`}Kept in ${FOLDER}; delete it to begin afresh. Ctrl+C stops.`,
  )
}

main().catch((error: unknown) => {
  sayFailure(error)
  process.exit(1)
})
