/** Products in the quotes of the scenario: several stores have them, and their prices are recent. */
export const SHOWN: ReadonlySet<string> = new Set([
  'Wendlemere 40 breeder', 'Wendlemere Lid 36 deep', 'Wendlemere Start 40', 'Wendlemere 20 long', 'Wendlemere Lid 30', 'Wendlemere 75', 'Wendlemere Lid 48 deep', 'Wendlemere Start 20', 'Wendlemere 5.5',
  'Osmere Clear 90', 'Osmere Cover 90', 'Osmere Clear 60', 'Osmere Cover 60', 'Osmere Studio 60', 'Osmere Studio 30',
  'Thornby Frame 36', 'Thornby Frame 30', 'Thornby Frame 48 deep', 'Thornby Bench 36', 'Thornby Bench 48', 'Harrowfen Cabinet 90', 'Harrowfen Cabinet 60', 'Harrowfen Mat 90', 'Harrowfen Mat 60',
  'Pellick H-600', 'Pellick C-600', 'Pellick C-1000', 'Pellick C-1400', 'Pellick Sponge S', 'Halden Row 36', 'Halden Row 30', 'Halden Row 48', 'Lumbry Strand 90', 'Lumbry Strand 60',
  'Quarrick Twin 50 with controller', 'Quarrick Twin 100 with controller', 'Quarrick Twin 200 with controller', 'Pellick H-300', 'Torvane 25 W', 'Torvane 75 W', 'Torvane 100 W', 'Torvane 150 W', 'Torvane 300 W', 'Torvane Digital', 'Torvane Watch', 'Torvane Glass', 'Corbelle GFCI Strip 6', 'Corbelle GFCI Strip 8',
  'Millrace Gravel 20 lb', 'Millrace Gravel 50 lb', 'Millrace Sand 10 kg', 'Sedgeway Soil 9 L', 'Stillwell 250 mL', 'Stillwell 500 mL', 'Dosset Bind 250 mL', 'Dosset Chloride 50 g', 'Lockridge Five',
  'Quarrick Skim 300', 'Pellick Drift 4000', 'Stillwell Sea 10 kg', 'Lockridge Sea lens', 'Lockridge Swing arm', 'Stillwell RO 190', 'Millrace Dry reef rock 9 kg',
  'Osmere Sump 60', 'Pellick Return 3000', 'Quarrick Skim 400',
]) // prettier-ignore
