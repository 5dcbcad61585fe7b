/** @example sayStrays(['members_2019']) // 'Not in any backup, since this program did not make it: the table members_2019. …' */
export const sayStrays = (tables: readonly string[]): string =>
  tables.length === 1
    ? `Not in any backup, since this program did not make it: the table ${tables[0]}. Keep a copy of it by yourself, or give this program a database of its own.`
    : `Not in any backup, since this program did not make them: the tables ${tables.join(', ')}. Keep a copy of them by yourself, or give this program a database of its own.`
