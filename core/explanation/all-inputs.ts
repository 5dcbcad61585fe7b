import type { Finding } from '../sizing/finding.ts'
import type { SizingFigures, SizingSubject } from '../sizing/report.ts'
import type { ExplainedInput } from './explanation.ts'
import { figureInputs } from './explain-finding.ts'
import { gearInputs } from './gear-inputs.ts'
import { openInputsOf } from './open-words.ts'
import { groupInputs, roomAnswers } from './room-inputs.ts'
import { WHAT_GOES_IN, type GearReads } from './what-goes-in.ts'
import { workedOf } from './worked.ts'

const union = <Item>(lists: ReadonlyArray<readonly Item[]>): Item[] => [...new Set(lists.flat())]

/** Of each part, whatever any of the checks reads. */
function allReads(reads: ReadonlyArray<GearReads>): GearReads {
  const merged: Partial<Record<keyof GearReads, string[]>> = {}
  for (const each of reads)
    for (const key of Object.keys(each) as Array<keyof GearReads>) merged[key] = union([merged[key] ?? [], each[key] ?? []])
  return merged as GearReads
}

/**
 * All that went into some findings, each thing once with all of its figures: for paper, which has no room to say them under each.
 *
 * @example allInputs(report.findings, subject, report.figures).filter(({ from }) => from === 'answered').length // 6
 */
export function allInputs(findings: readonly Finding[], subject: SizingSubject, figures: SizingFigures): ExplainedInput[] {
  const reads = findings.map(({ check }) => WHAT_GOES_IN[check])
  const open = union(findings.flatMap(({ assumed, missing }) => [assumed, missing]))
  const opened = new Map(findings.flatMap((finding) => openInputsOf(finding, subject).map((input) => [input.name, input] as const)))
  return [
    ...gearInputs(subject.gear, allReads(reads.map(({ gear = {} }) => gear))),
    ...roomAnswers(subject.conditions, union(reads.map(({ room = [] }) => room)), open),
    ...groupInputs(subject.conditions, union(reads.map(({ group = [] }) => group))),
    ...opened.values(),
    ...figureInputs(figures, union(reads.map(({ figures: worked = [] }) => worked))),
    ...findings.flatMap((finding) => workedOf(finding, subject)),
  ]
}
