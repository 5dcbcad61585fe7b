import type { QuotePageProps } from '../../../web/pages/quote-page.ts'
import type { SetupPageProps } from '../../../web/pages/setup-page.ts'
import { sampleQuote } from './sample-quote.ts'

export const quoteProps = (change: Partial<QuotePageProps> = {}): QuotePageProps => ({
  document: sampleQuote(),
  customerName: 'Ines Tillish',
  state: 'issued',
  supersededBy: null,
  answer: null,
  today: '2026-10-21',
  path: '/q/token',
  setupPath: '/s/token',
  faults: [],
  typed: {},
  ...change,
})

/** The setup of the sample quote's first build, with its first steps ticked. */
export function setupProps(doneCount: number, change: Partial<SetupPageProps> = {}): SetupPageProps {
  const { builds, inputs } = sampleQuote()
  const [build] = builds
  if (build === undefined) throw new Error('the sample quote has builds')
  return {
    quoteWithdrawn: false,
    plan: build.plan,
    units: inputs.install.units,
    contact: inputs.install.contact,
    startedOn: '2026-10-31',
    ticks: build.plan.steps.slice(0, doneCount).map((step) => ({ stepId: step.id, on: '2026-11-01' })),
    readings: [
      {
        id: 'r1',
        takenOn: '2026-11-06',
        ammoniaMgL: 2,
        nitriteMgL: 0,
        nitrateMgL: null,
        ph: 7.4,
        khDegrees: null,
        temperatureC: 25,
        note: '',
      },
      {
        id: 'r2',
        takenOn: '2026-11-08',
        ammoniaMgL: 1.5,
        nitriteMgL: 0.25,
        nitrateMgL: 5,
        ph: 7.4,
        khDegrees: 4,
        temperatureC: 25.2,
        note: 'water a little cloudy',
      },
    ],
    dripLoop: build.report.figures.dripLoop ?? null,
    tank: build.drawing,
    today: '2026-11-03',
    path: '/s/token',
    readingId: '0198c0de-2222-7000-8000-000000000001',
    faults: [],
    typed: {},
    ...change,
  }
}
