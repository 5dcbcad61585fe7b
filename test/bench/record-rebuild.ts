import { execFile } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'
import { median, type Measurement } from './measurement.ts'
import { openRecord, SIZES, type Size } from './record/grown-record.ts'

const PROCESS = fileURLToPath(new URL('./record/rebuild-process.ts', import.meta.url))
/** Of twenty thousand, which is done in a moment; two million are rebuilt once. */
const ROUNDS = 3

interface Rebuild {
  pairs: number
  changed: number
  tookMs: number
  residentMb: number
}

async function rebuild(size: Size): Promise<Rebuild> {
  const connection = await openRecord(size)
  await connection.close()
  const { stdout } = await promisify(execFile)(process.execPath, [PROCESS, connection.url])
  const told = JSON.parse(stdout) as Rebuild
  if (told.changed > 0) throw new Error(`${told.changed} of ${told.pairs} summaries had not the bytes that they are rebuilt to`)
  return told
}

/** Summaries of two million sightings made anew: the most memory that the process held, which may be 400 MB, and the time a sighting against twenty thousand. */
export default async function recordRebuild(): Promise<Measurement[]> {
  const young: Rebuild[] = []
  for (let round = 0; round < ROUNDS; round += 1) young.push(await rebuild('young'))
  const grown = await rebuild('grown')
  const each = (took: number, size: Size): number => (took / SIZES[size].sightings) * 1000
  const [value, baseline] = [each(grown.tookMs, 'grown'), each(median(young.map(({ tookMs }) => tookMs)), 'young')]
  const memory = { value: grown.residentMb, baseline: median(young.map(({ residentMb }) => residentMb)) }
  return [
    { name: 'record.rebuild', value, unit: 'µs a sighting', baseline, ratio: value / baseline },
    { name: 'record.rebuild.memory', ...memory, unit: 'MB', ratio: memory.value / memory.baseline },
  ]
}
