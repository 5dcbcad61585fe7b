import { expect, it } from 'vitest'
import { sayStepDay } from '../../../core/startup/step-day.ts'

it.each([
  [0, 'day 1'],
  [1, 'day 2 at the earliest'],
  [3, 'day 4 at the earliest'],
  [null, 'by the readings'],
])('counts the day you start as day 1: %s days after it is %s', (days, words) => expect(sayStepDay(days)).toBe(words))
