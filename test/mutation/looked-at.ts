/** What was found when the survivors of a file were looked at, by path. */
export const LOOKED_AT: Record<string, string> = {
  'core/sizing/canister-flow.ts':
    'half a point of a curve is on none, asked or not; where all is stated the worst and the best are one. Left alive.',
  'core/sizing/electrical-load.ts': 'a strip without a rating is not below the circuit, whether one asks for it or not. Left alive.',
  'core/sizing/equilibrium.ts':
    'at just the heat of freezing or boiling water the balance is that end by either way; from a hotter start it comes to the same balance; a step of just the smallest size. Left alive.',
  'core/sizing/filter-flow.ts': 'a filter without a flow is there wherever one is looked for. Left alive.',
  'core/sizing/glass-pane.ts':
    'a situation has a tank; every tank that the figures allow is curved or none is; no pane bows by just half its thickness. Left alive.',
  'core/sizing/glass-plate.ts': 'at a row of the table itself both rows beside it give its own figure. Left alive.',
  'core/sizing/heater-choice.ts': 'a loss of just fifty watts to the last bit: no room comes to it. Left alive.',
  'core/sizing/heater-stuck.ts':
    'a heater that settles past the mark also passes it in some hours; of two equal heaters either is named. Left alive.',
  'core/sizing/heater-year.ts': 'the same rooms of a year in the other order. Left alive.',
  'core/sizing/heating.ts': 'a situation has at least one tank. Left alive.',
  'core/sizing/joist-beam.ts':
    'at the very ends of a load, where what lies before a section comes out the same by either form. Left alive.',
  'core/sizing/joist-finding.ts': 'a sag of just one, and half of the allowance to the last bit: no mass comes to them. Left alive.',
  'core/sizing/joist-floor.ts': 'shares that differ by just a part in a thousand million, which are one figure. Left alive.',
  'core/sizing/joist-load.ts': 'at two spacings both forms of the lever rule give a half. Left alive.',
  'core/sizing/span.ts': 'at equal values the one or the other is taken: the same figure. Left alive.',
  'core/sizing/stand-footprint.ts':
    'an optional chain on a stand that is there by then, sides that are the same, and a stress of just what glass bears. Left alive.',
  'core/sizing/tipping.ts':
    'which of several stands is the worst: the lightest and highest by every figure; whole newtons, which never are 44.5; and an optional chain on a stand that is there. Left alive.',
  'core/sizing/plugged-inputs.ts': 'optional chains and stand-ins that the types ask for and no build comes to. Left alive.',
  'core/sizing/room-inputs.ts': 'a default without a name: every one has its own. Left alive.',
  'core/sizing/tank-inputs.ts': 'times and over one are the same, and of two plans the second is the last. Left alive.',
  'core/water/dissolved-oxygen.ts': 'at one atmosphere the short way and the long one give the same figure. Left alive.',
  'core/sizing/lid-check.ts': 'of what is off a lid never differs by nought. Left alive.',
  'core/sizing/light-along.ts': 'a tank always has a corner, and a row its share. Left alive.',
  'core/sizing/light-at-bed.ts': 'one micromole a joule: times and over are the same. Left alive.',
  'core/sizing/light-level.ts': 'at the upper mark a share of one is no dimming; the others are asserted since this count.',
  'core/sizing/warm-room.ts': 'a chiller that takes out nothing leaves the water as it is by either way. Left alive.',
  'core/sizing/drain-down.ts': 'tanks that the figures allow all reach their last water or none does, and none just so. Left alive.',
  'core/sizing/laden-bed.ts':
    'a bag without a weight makes the sum no number, which is no weight either; bags as heavy as the stated bed weigh the same. Left alive.',
  'core/sizing/mains.ts': 'no country has mains of just 180 V. Left alive.',
  'core/sizing/narrow.ts': 'one step and a hundredth is no difference of rounded figures. Left alive.',
  'core/sizing/operating-point.ts':
    'a flow or a difference of just nought, a step of just the smallest size, and steps that never come to an end, since some thirty are the most: the same flow. Left alive.',
  'core/sizing/pump-curve.ts': 'no whole step of the drawing meets the highest head to the last bit. Left alive.',
  'core/sizing/range-words.ts': 'a unit stands once, at the end, and no space is left before it; a list that no answer is in. Left alive.',
  'core/sizing/reads.ts': 'short ways round a comparison that finds nothing. Left alive.',
  'core/sizing/reinspection.ts': 'short ways: rules that are run again though nothing moved them find the same. Left alive.',
  'core/sizing/sump.ts':
    'volumes are there where a sump is; the mass of its walls does not hang on the water in them; a wall of the usual range by its length. Left alive.',
  'core/sizing/tank-geometry.ts':
    'what the panes fill of the length leaves no inside either, and is refused with the same words. Left alive.',
  'core/sizing/tank-plan.ts':
    'a plain box has the same figures by its corners; sides that are there; nobody stated is not more than the most. Left alive.',
  'core/sizing/cord-length.ts':
    'the worst of cords is among all of them, and of equal ones either; optional chains that the types ask for; reserves of just a told step. Left alive.',
  'core/sizing/evaporation-words.ts':
    'the least fall of the level is told nowhere; just 4 L and just 1.3 mm: no room comes to them. Left alive.',
  'core/sizing/filter-delivery.ts': 'whatever was measured is told before the curve. Left alive.',
  'core/sizing/filter-feed.ts': 'the best media of several filters: the poor ones decide the verdict. Left alive.',
  'core/sizing/floor-plan.ts': 'mid-span told as its own middle. Left alive.',
  'core/sizing/heat-figures.ts': 'of two equal heaters either is the strongest. Left alive.',
  'core/sizing/light-utilisation.ts': 'a step beyond the last of the points adds nothing. Left alive.',
  'core/sizing/pipe-friction.ts': 'the root is squared, and at both marks the forms join. Left alive.',
  'core/sizing/plan-outline.ts': 'a side along the wall, whose ends are at nought. Left alive.',
  'core/sizing/tank-forms.ts': 'a form that nobody stated is a box. Left alive.',
  'core/sizing/schema.ts': 'what is not stated is neither more nor less than another figure, whether one asks for it or not. Left alive.',
  'core/sizing/flow-inputs.ts':
    'optional chains and figures that are there; a second filter of which nothing is open; the others are asserted since this count.',
  'core/sizing/sump-inputs.ts': 'the least and most litres of a sump that is there; short ways round what is null or false.',
  'core/sizing/energy-use.ts': 'the list of nothing that is drawn. Left alive.',
  'core/sizing/heater-ratings.ts': 'a rating of just the highest power lies in the range, which is told before. Left alive.',
  'core/sizing/told-report.ts': 'a finding without a caution is told with none by either way. Left alive.',
  'core/sizing/figures.ts': 'a situation has at least one tank. Left alive.',
  'core/sizing/sensitivity.ts':
    'corners gathered or tried once more give the same ends, as do equal values; the order of answers, worst first, is held by properties over drawn builds, which this count leaves out, and only in part by values: under the aim.',
  'core/sizing/open-questions.ts': 'places of questions that have an input of their own; a list that no answer is in. Left alive.',
  'core/sizing/cords.ts':
    'the first corner is always as tight as any, the order of equals tells the same; a strip too low is worse than the wall in any case; a list for the paper alone, whose tests are others. Left alive.',
  'core/sizing/change-share.ts': 'shares of just the usual or of just the stated percentage: either way the same words. Left alive.',
  'core/sizing/count-words.ts': 'a count of what does not fit has nothing that is assumed. Left alive.',
  'core/sizing/hurt-rank.ts': 'the last that can hurt, with or without itself: no other has its rank. Left alive.',
  'core/sizing/light-coverage.ts': 'no share is off the mark by just 0.15; names that nobody assumes are not told. Left alive.',
  'core/sizing/protecting-strips.ts': 'where all strips protect, those that do are all. Left alive.',
  'core/sizing/smallest-volume.ts': 'a label of just the litres of the outside, to the last bit. Left alive.',
  'core/sizing/stand-load.ts': 'a situation has at least one tank. Left alive.',
  'core/sizing/told-figures.ts': 'a situation has at least one tank; of two equal heaters either is the strongest. Left alive.',
  'core/sizing/warm-up.ts':
    'at just five thousandths of a degree, and at a distance that stays just as it was: no room comes to them. Left alive.',
  'core/sizing/water-change-warmth.ts': 'water that is just as warm as wanted takes no time by either way. Left alive.',
  'core/sizing/situation.ts': 'the low ends of both shares are one: times and over are the same. Left alive.',
  'core/sizing/heater-spare.ts': 'a balance of just the target is told as it is by either way. Left alive.',
  'core/sizing/outlets.ts': 'strips that are there; one strip of two pieces is told as strips. Left alive.',
}
