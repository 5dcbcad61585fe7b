import { HIGH_LOSS } from '../sizing/heat-ends.ts'
import { evaporationLPerDay, lossW, vapourLossW, type HeatLoss } from '../sizing/heat-loss.ts'
import { lossesOf } from '../sizing/heating.ts'
import { bottomTransmission, sideTransmission, topTransmission, type Cover } from '../sizing/heat-transmission.ts'
import type { Corner, Situation } from '../sizing/situation.ts'
import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import { latentHeatKjKg } from '../water/latent-heat.ts'
import type { ExplainedInput } from './explanation.ts'

/** Thousands of seconds in a day: kilojoules a day over it are watts. */
const KILOSECONDS_PER_DAY = 86.4

/** Decimals more of a factor, so that a large product comes out to its tenth. */
const finer = (share: number): number => Math.max(0, Math.ceil(Math.log10(share)))

interface Case {
  corner: Corner
  cover: Cover
  loss: HeatLoss
}

const plain = (value: number, digits: number) => quantity(value, 'count', digits)
const watts = (value: number) => quantity(value, 'W', 1)

/** The tank, lid and sump that lose most, of those that the stated figures allow. */
function worstCase(situation: Situation): Case | undefined {
  const { coldestRoomC, livestock } = situation.conditions
  return lossesOf(situation, situation.covers, HIGH_LOSS, coldestRoomC).toSorted(
    (a, b) => lossW(b.loss, livestock.targetC) - lossW(a.loss, livestock.targetC),
  )[0]
}

/**
 * Heat lost in the coldest room, side by side: area × transmission × difference of temperature, what evaporates, and the sum. Told so that it comes out by hand.
 * Empty where the room is no colder than the water is to be.
 *
 * Units: m², W/m²K, K, W in every reader's units: they multiply. Source: as `heatLoss`.
 *
 * @example workedHeat(situation)[0] // { name: 'Through the sides', value: '1.2413 m² × 7.1429 W/m²K × 7.000 K = 62.1 W', from: 'reckoned' }
 */
export function workedHeat(situation: Situation): ExplainedInput[] {
  const worst = worstCase(situation)
  const { coldestRoomC, livestock } = situation.conditions
  const byK = livestock.targetC - coldestRoomC
  if (worst === undefined || byK <= 0) return []
  const { corner, cover, loss } = worst
  const { material, glassMm, bottomMm } = corner.shape
  const through = (name: string, wPerK: number, transmission: number): { name: string; w: number; value: Phrase } => ({
    name,
    w: wPerK * byK,
    value: phrase`${plain(wPerK / transmission, 4)} m² × ${plain(transmission, 4)} W/m²K × ${plain(byK, 3)} K = ${watts(wPerK * byK)}`,
  })
  const sumpWPerK = loss.dryWPerK - loss.sideWPerK - loss.bottomWPerK - loss.topWPerK
  const sumpW = sumpWPerK * byK
  const sump = {
    name: 'Through the sump',
    w: sumpW,
    value: phrase`${plain(sumpWPerK, 4)} W/K × ${plain(byK, 3 + finer(sumpWPerK / 10))} K = ${watts(sumpW)}`,
  }
  const vapourW = vapourLossW(loss, livestock.targetC)
  const parts = [
    through('Through the sides', loss.sideWPerK, sideTransmission(material, glassMm, false)),
    through('Through the bottom', loss.bottomWPerK, bottomTransmission(material, bottomMm)),
    through('Through the top', loss.topWPerK, topTransmission(cover)),
    ...(situation.sump && situation.sump.boxes.length > 0 ? [sump] : []),
    {
      name: 'With what evaporates',
      w: vapourW,
      value: phrase`${plain(evaporationLPerDay(loss, livestock.targetC), 4)} L a day × ${plain(latentHeatKjKg(livestock.targetC), 1 + finer(vapourW / 1000))} kJ a litre ÷ ${plain(KILOSECONDS_PER_DAY, 1)} = ${watts(vapourW)}`,
    },
  ]
  const sum = parts.flatMap(({ w }, index) => (index === 0 ? phrase`${watts(w)}` : phrase` + ${watts(w)}`))
  const all = { name: 'Heat lost, in all', value: phrase`${sum} = ${quantity(lossW(loss, livestock.targetC), 'W', 0)}` }
  return [...parts, all].map(({ name, value }) => ({ name, value, from: 'reckoned' }))
}

/** What the heaters run of the time, of the heat and the power that are told. */
export function workedDuty(lostW: number, installedW: number): ExplainedInput[] {
  const power = quantity(installedW, 'W', 0)
  if (power.value <= 0) return []
  const share = quantity((100 * lostW) / power.value, 'percent', 0)
  return [{ name: 'Of the heaters’ power', value: phrase`${quantity(lostW, 'W', 0)} ÷ ${power} = ${share}`, from: 'reckoned' }]
}
