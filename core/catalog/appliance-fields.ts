import { choice, flag, number } from '../fields.ts'
import { CORD_FIELD } from './cord-field.ts'

const LPH = 'L/h'
const ratedVolumeL = number('ratedVolumeL', 'Tank size on the box', 'L', 5, 20_000, { help: 'As printed. No check leans on it.' })

/** Spec fields of what runs on mains, and of the sump. Limits are wide: they refuse what cannot be such a thing. */
export const APPLIANCE_FIELDS = {
  sump: [
    number('lengthMm', 'Length', 'mm', 100, 4000, { help: 'Outside, along the front of the stand.' }),
    number('widthMm', 'Width', 'mm', 80, 2000, { help: 'Outside, front to back.' }),
    number('heightMm', 'Height', 'mm', 80, 1500, { help: 'Outside, bottom to upper rim.' }),
    number('wallMm', 'Wall thickness', 'mm', 2, 40),
    choice('material', 'Material', { glass: 'Glass', acrylic: 'Acrylic' }),
    number('totalVolumeL', 'Volume to the rim', 'L', 2, 4000, { help: 'Everything it holds before it runs over.' }),
    number('operatingVolumeL', 'Water while the pump runs', 'L', 1, 4000, {
      help: 'Up to the maker’s line, or the level it will be kept at. The room above it takes what runs back.',
    }),
  ],
  chiller: [
    number('powerW', 'Electrical power', 'W', 5, 3000, { help: 'What it draws from the outlet.' }),
    number('coolingW', 'Cooling power', 'W', 5, 10_000, { help: 'Heat it takes out of the water, not what it draws.' }),
    ratedVolumeL,
    number('leastFlowLph', 'Least flow', LPH, 20, 20_000),
    number('mostFlowLph', 'Most flow', LPH, 20, 30_000),
    number('hoseMm', 'Hose, inside', 'mm', 4, 60),
    CORD_FIELD,
  ],
  air_pump: [
    number('powerW', 'Power', 'W', 0.5, 200),
    number('airFlowLph', 'Air', LPH, 10, 20_000),
    number('airOutlets', 'Air outlets', 'count', 1, 24, { whole: true }),
    number('mostDepthMm', 'Deepest water', 'mm', 100, 3000, { help: 'Depth that it still blows air into.' }),
    flag('checkValve', 'Check valve included', 'Keeps water from running back into a pump that stands below it.'),
    CORD_FIELD,
  ],
  circulation_pump: [
    number('ratedFlowLph', 'Rated flow', LPH, 50, 50_000, { help: 'As printed: in free water.' }),
    number('powerW', 'Power', 'W', 0.5, 300),
    flag('controllable', 'Controllable', 'Its flow can be set.'),
    CORD_FIELD,
  ],
  skimmer: [
    choice('place', 'Place', { hang_on: 'Hangs on the rim', in_tank: 'In the tank', in_sump: 'In a sump' }),
    ratedVolumeL,
    number('airFlowLph', 'Air', LPH, 20, 10_000),
    number('powerW', 'Power', 'W', 0.5, 300),
    CORD_FIELD,
  ],
  co2: [
    choice('type', 'Type', { pressurised: 'Bottle under pressure', fermenting: 'Fermenting mix', acid: 'Acid and soda' }),
    number('gasMassG', 'Gas in a full bottle', 'g', 5, 20_000),
    flag('solenoid', 'Closes by itself', 'A valve that shuts when its power is off.'),
    number('powerW', 'Power', 'W', 0.5, 50, { help: 'Of the valve.' }),
    CORD_FIELD,
  ],
  uv: [
    number('powerW', 'Power', 'W', 1, 500),
    number('mostFlowLph', 'Most flow', LPH, 20, 30_000, { help: 'Beyond it the lamp does little.' }),
    ratedVolumeL,
    number('lampHours', 'Lamp life', 'h', 100, 30_000),
    CORD_FIELD,
  ],
  ro_unit: [
    number('outputLPerDay', 'Makes a day', 'L/day', 5, 5000),
    number('wasteRatio', 'Waste for a litre made', null, 0.2, 12, { unitText: 'L/L', help: 'Litres down the drain for one litre made.' }),
    number('stages', 'Stages', 'count', 1, 12, { whole: true }),
    flag('deionising', 'Deionising stage', 'Resin behind the membrane: what salt water is mixed from.'),
  ],
  timer: [
    choice('type', 'Type', { mechanical: 'Mechanical', digital: 'Digital' }),
    number('outlets', 'Outlets', 'count', 1, 16, { whole: true }),
    number('ratedPowerW', 'Rated power', 'W', 10, 5000),
    flag('motorRated', 'For motors and drivers', 'Stated to switch pumps and light drivers, not heating loads alone.'),
  ],
  battery_backup: [
    choice('type', 'Type', { air_pump: 'Air pump with a battery', mains: 'Battery with outlets' }),
    number('energyWh', 'Energy', null, 1, 20_000, { unitText: 'Wh' }),
    number('outputW', 'Output', 'W', 0.5, 5000),
    CORD_FIELD,
  ],
} as const
