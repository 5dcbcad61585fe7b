interface Named {
  name: string
  signInName: string
}

/**
 * What a manager calls each of some people, in their order: the name, and where another has the same the sign-in name behind it.
 *
 * @example namesApart([{ name: 'Ines', signInName: 'ines' }, { name: 'ines', signInName: 'ih' }, { name: 'Odo', signInName: 'odo' }]) // ['Ines (ines)', 'ines (ih)', 'Odo']
 */
export function namesApart(people: readonly Named[]): string[] {
  const count = new Map<string, number>()
  for (const { name } of people) count.set(name.toLowerCase(), (count.get(name.toLowerCase()) ?? 0) + 1)
  return people.map(({ name, signInName }) => ((count.get(name.toLowerCase()) ?? 0) > 1 ? `${name} (${signInName})` : name))
}
