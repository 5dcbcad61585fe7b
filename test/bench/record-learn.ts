import { execFile } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'
import type { Measurement } from './measurement.ts'
import { openRecord, SIZES, type Size } from './record/grown-record.ts'

const PROCESS = fileURLToPath(new URL('./record/learn-process.ts', import.meta.url))

interface Night {
  tookMs: number
  residentMb: number
}

async function night(size: Size): Promise<Night> {
  const connection = await openRecord(size)
  await connection.close()
  const { stdout } = await promisify(execFile)(process.execPath, [PROCESS, connection.url])
  return JSON.parse(stdout) as Night
}

/** A night's learning from two million sightings with two sales a year: the most memory that the process held, which may be 400 MB, and the time a sighting against twenty thousand. */
export default async function recordLearn(): Promise<Measurement[]> {
  const [young, grown] = [await night('young'), await night('grown')]
  const each = ({ tookMs }: Night, size: Size): number => (tookMs / SIZES[size].sightings) * 1000
  const [value, baseline] = [each(grown, 'grown'), each(young, 'young')]
  const memory = { value: grown.residentMb, baseline: young.residentMb }
  return [
    { name: 'record.learn', value, unit: 'µs a sighting', baseline, ratio: value / baseline },
    { name: 'record.learn.memory', ...memory, unit: 'MB', ratio: memory.value / memory.baseline },
  ]
}
