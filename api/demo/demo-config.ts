import { readConfig, type Config } from '../config.ts'

export const DEMO_FOLDER = './demo-data'

/** Nothing of the real service's environment but PORT counts: all that the demo writes, its backups too, lies in a folder of its own. */
export const demoConfig = (port: string | undefined): Config => readConfig({ PORT: port, DATA_DIR: DEMO_FOLDER })
