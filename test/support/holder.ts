import { takeFolderLock } from '../../db/lock.ts'

// A process that takes a folder and holds it until it is ended; `release` on its input gives the folder back first.
const release = await takeFolderLock(process.argv[2] ?? '')
process.stdout.write('held\n')
process.stdin.on('data', () => void release().then(() => process.exit(0)))
