import type { Source } from './finding.ts'

/**
 * What each rule rests on, by the name that its findings carry. Apart from the rules, since nobody reads it until a report is open: the engine weighs less for it
 * on every screen that reckons. No figure that a reader would want in other units.
 */
export const SOURCES = {
  circulation: {
    tag: 'common_practice',
    text: 'Salt water is moved ten to twenty times an hour and more, by pumps beside the filter; stony corals and open-water fish want more than mushrooms and gobies.',
  },
  conditioner_dose: {
    tag: 'published',
    text: 'Dosed for the water in use, not for the volume on the tank’s label. Breaking 4 mg/L of chloramine leaves 0.79 mg/L of ammonia-N (stoichiometry; 40 CFR 141.65).',
  },
  cord_length: {
    tag: 'own',
    text: 'The cord hangs in a loop below the lower of its ends, with slack left over; how low and how much slack is common practice.',
  },
  drain_down: {
    tag: 'own',
    text: 'Area of the water × how far the siphon reaches below its line, and what stands in the pipes (geometry). Where nobody measured them, both are what is common practice, as is a fifth of the room in reserve.',
  },
  electrical_load: {
    tag: 'published',
    text: 'The circuit is rated for 125 % of what runs for three hours or more, so that such a load is at most 80 % of it (NEC 210.19(A)(1), 210.20(A); sections seen, wording from memory); a strip’s own rating where it is less. All appliances at once.',
  },
  electrical_load_230: {
    tag: 'common_practice',
    text: 'Four fifths of the circuit’s rating for what runs for hours: plugs and sockets warm up. Codes of 230 V countries have no such rule; a strip’s or a fused plug’s own rating counts where it is less. All appliances at once.',
  },
  empty_lift: {
    tag: 'common_practice',
    text: 'How many lift goes by the mass and the length; the mass is that of the panels (EN 572-1).',
  },
  filter_feed: {
    tag: 'from_memory',
    text: 'Timmons & Ebeling, Recirculating Aquaculture, for the ammonia that feed makes and the film that takes it up; how much film media offer is common practice.',
  },
  filter_flow: {
    tag: 'common_practice',
    text: 'How often the water in use goes through the filter, by the animals; media and hoses leave 0.5 to 0.7 of the printed flow.',
  },
  pump_curve: {
    tag: 'from_memory',
    text: 'Where the pump’s curve meets what hoses, fittings and media take: Darcy & Weisbach, Haaland; what media take is our own, and how often the water should go through is common practice.',
  },
  floor_load: {
    tag: 'common_practice',
    text: 'Screening by total mass. Where the floor’s bearing is not known, the limit is half of what a plain wooden floor of a bedroom is designed for (IRC table R301.5; statics, our own).',
  },
  glass_pane: {
    tag: 'own',
    text: 'Thin plate under still water, held at its edges (Timoshenko & Woinowsky-Krieger); lasting strength of float glass by EN 16612, from memory; the factor of 3.8 is common practice.',
  },
  heater_holds: {
    tag: 'from_memory',
    text: 'Heat balance: conduction by ISO 6946, evaporation by the ASHRAE form at 25 % humidity and F 0.74, nothing taken from pump or lamp. A quarter in reserve is common practice.',
  },
  heater_spare: {
    tag: 'own',
    text: 'Heat balance at its high-loss end (ISO 6946 and the ASHRAE form, quoted from memory); that one heater may fail is common practice.',
  },
  heater_stuck: {
    tag: 'from_memory',
    text: 'Heat balance at its low-loss end: 70 % humidity, F 0.5, a lid on whether or not the build has one, back and bottom insulated, pump and lamp on (ISO 6946, ASHRAE form). The danger mark is common practice.',
  },
  joists: {
    tag: 'own',
    text: 'Statics of one joist at its worst, held against the load dwellings are designed for (IRC table R301.5), with 0.90 for a load that stays (NDS table 2.3.2).',
  },
  light_level: {
    tag: 'common_practice',
    text: 'Marks by the kind of plants. What arrives is our own reckoning: configuration factors (Howell, quoted from memory), clear to tinted water (Beer–Lambert), white light.',
  },
  no_tank: {
    tag: 'own',
    text: 'Nothing is guessed for a tank that is not stated.',
  },
  outlet_protection: {
    tag: 'common_practice',
    text: 'A ground-fault circuit interrupter (trips at 4 to 6 mA: class A of UL 943, whose name is from memory) is good practice at a tank. NEC 210.8 lists places that must have one and names no aquarium; whether the place of this tank is among them is for the local code.',
  },
  outlet_protection_230: {
    tag: 'common_practice',
    text: 'A residual-current device of at most 30 mA is good practice at a tank (IEC 60364-4-41, 411.3.3 and 415.1, has it for general sockets). What the national rules ask of an older circuit is for them to say.',
  },
  outlets: {
    tag: 'common_practice',
    text: 'An outlet for each appliance; no strip behind a strip; a strip hangs above the water line.',
  },
  surface_oxygen: {
    tag: 'from_memory',
    text: 'Benson & Krause for what water holds, Cole & Caraco and Lamont & Scott for what a surface takes up, Timmons & Ebeling for what feed costs; how much of the return’s power reaches the surface is our own reckoning.',
  },
  salinity_drift: {
    tag: 'own',
    text: 'The salt stays while water goes (mass balance); evaporation as in the heat balance, how far salinity may move in a day is common practice.',
  },
  skimmer_size: {
    tag: 'common_practice',
    text: 'The tank size on a skimmer’s box is for a light stock: half as much again and more is chosen for a usual one.',
  },
  stand_bedding: {
    tag: 'common_practice',
    text: 'A flat bottom lies on a full board with a closed-cell mat; a rimmed tank stands on its frame without one. The maker’s word comes first.',
  },
  stand_footprint: {
    tag: 'common_practice',
    text: 'No tank overhangs its stand: a rimmed one bears along its whole frame, flat glass and acrylic on all of their bottom.',
  },
  stand_load: {
    tag: 'own',
    text: 'Mass of glass, substrate and water filled to the rim (EN 572-1, EOS-80); a tenth in reserve for rim, lid, light and decor is common practice.',
  },
  stand_wet: {
    tag: 'common_practice',
    text: 'Particle board swells where water gets into a cut edge; plywood, solid wood and metal bear a splash.',
  },
  substrate_depth: {
    tag: 'common_practice',
    text: 'A bed is the volume of the packs over the floor inside. A pack that states its weight alone is taken by the usual density of its kind.',
  },
  tipping: {
    tag: 'from_memory',
    text: 'Moments about the edge of the base (statics). The push of a fifth of the weight and the lean of 10° are those of IEC 60950-1 for standing equipment, a child’s pull that of ASTM F2057: neither was written for tanks.',
  },
  warm_room: {
    tag: 'own',
    text: 'Heat balance at usual losses, 50 % humidity (ISO 6946 and the ASHRAE form, quoted from memory). The animals’ marks are common practice.',
  },
  weekly_change: {
    tag: 'from_memory',
    text: 'Timmons & Ebeling, Recirculating Aquaculture, for the nitrogen of feed and the alkalinity it costs; how much nitrate is borne is common practice.',
  },
  light_coverage: {
    tag: 'common_practice',
    text: 'A light is three quarters as long as the tank to as long as it, with a second row over a deep one. How ends and front compare is our own reckoning: configuration factors (Howell, quoted from memory), the rest of the light spread evenly by the panes.',
  },
  ammonia_tests: {
    tag: 'common_practice',
    text: 'Ready when ammonia and nitrite both read 0.25 mg/L or less a day after a dose, on two days running.',
  },
} as const satisfies Record<string, Source>

export type SourceName = keyof typeof SOURCES
