import type { Install } from '../../core/install.ts'
import type { Role } from '../../core/people/roles.ts'
import type { CustomerFields } from '../customers.ts'
import { demoId } from './seeded.ts'

/** The club, its people and its customers. Nobody of these names is meant: club, town and region are invented. */
export const CLUB: Install = {
  name: 'Tarnwick Aquarium Club',
  mode: 'club',
  currency: 'USD',
  country: 'US',
  timeZone: 'America/New_York',
  units: { system: 'us', gallon: 'us', decimal: '.' },
  contact: 'ask the club, 555-0100, or come on a Thursday evening',
  paper: 'letter',
  energyPriceMinor: 17.5,
  circuitVoltageV: 120,
  circuitCurrentA: 15,
}

export interface DemoPerson {
  id: string
  name: string
  signInName: string
  role: Role
  /** How much of what is reported comes from this member. */
  share: number
}
const person = (name: string, role: Role, share: number): DemoPerson => ({
  id: demoId('person', name),
  name,
  signInName: name.split(' ')[0]?.toLowerCase() ?? name,
  role,
  share,
})

/** The first of each role is the one whose sign-in the demo prints. The manager invited all others. */
export const PEOPLE: readonly DemoPerson[] = [
  person('Odile Varrick', 'manager', 2),
  person('Bram Ostrey', 'advisor', 4),
  person('Ines Marlow', 'member', 8),
  person('Tilda Quenby', 'advisor', 2),
  person('Joss Pendry', 'member', 6),
  person('Mina Tavish', 'member', 5),
  person('Wes Corran', 'member', 4),
  person('Oona Brandreth', 'member', 3),
]

export const personNamed = (name: string): DemoPerson => {
  const found = PEOPLE.find((one) => one.name === name)
  if (!found) throw new Error(`Nobody in the scenario is called ${name}.`)
  return found
}

const customer = (name: string, reach: string, note: string): CustomerFields & { id: string } => ({
  id: demoId('customer', name),
  name,
  reach,
  note,
})

export const CUSTOMERS = [
  customer('Ada Lindqvare', 'ada@example.test', 'First tank. Works from home beside it.'),
  customer('Ruben Ashkell', '555-0142', 'Had a tank as a child; wants little work.'),
  customer('The Fenmoor School', 'office@fenmoor.example.test', 'Reading room of the second form. Nobody there at weekends.'),
  customer('Pia Thornquist-Vale', 'pia@example.test', 'Planted tank, looks first. Upper floor of an old house.'),
  customer('Gil Amberley', '555-0177', 'Moves his goldfish out of a bowl.'),
] as const
