/** One lie told to the weighing: in a file, the text that is right and what a fault would put in its place. */
export type Mutant = { name: string; file: string; find: string; replace: string };

/** Faults made by hand in what is told from the sums. The tests named in `evidenceTests` must see every one. */
export const evidenceMutants: readonly Mutant[] = [
  {
    name: 'a reading is firm from 80 of 100 trials on',
    file: 'src/weighing/firmness.ts',
    find: 'const leadsIn = 0.95;',
    replace: 'const leadsIn = 0.8;',
  },
  {
    name: 'a reading is firm though more probably wrong than right',
    file: 'src/weighing/firmness.ts',
    find: 'const lowAtLeast = 0.8;',
    replace: 'const lowAtLeast = 0.4;',
  },
  {
    name: 'what is 1 in 8 probable jars',
    file: 'src/weighing/contradictionBelow.ts',
    find: 'const contradictionBelow = 0.1;',
    replace: 'const contradictionBelow = 0.125;',
  },
  {
    name: 'twice as probable explains',
    file: 'src/weighing/contradictions.ts',
    find: 'const eased = 3;',
    replace: 'const eased = 2;',
  },
  {
    name: 'nothing would change the reading',
    file: 'src/weighing/wouldChange.ts',
    find: '  if (turning.length > 0)',
    replace: '  if (turning.length >= 0) return [];\n  if (turning.length > 0)',
  },
  {
    name: 'a measured finding is never turned',
    file: 'src/weighing/turnedLooks.ts',
    find: 'measured: { ifThere: ifNot, ifNot: ifThere }',
    replace: 'measured: { ifThere, ifNot }',
  },
  {
    name: 'a measurement of the cause is never turned',
    file: 'src/weighing/turnedLooks.ts',
    find: '[state]: share(best), [best]: share(state)',
    replace: '[state]: share(state), [best]: share(best)',
  },
  {
    name: 'figures are moved to their highest value only',
    file: 'src/weighing/sensitivity.ts',
    find: 'at(figure, low), at(figure, high)',
    replace: 'at(figure, high), at(figure, high)',
  },
  {
    name: 'the ends that findings bind are turned round',
    file: 'src/weighing/bindingLooks.ts',
    find: "end: 'from' as const, by: first - from",
    replace: "end: 'from' as const, by: to - last",
  },
  {
    name: 'the middle half of the trials is told for the middle nine tenths',
    file: 'src/weighing/redraws.ts',
    find: 'quantile(sorted, 0.05), quantile(sorted, 0.95)',
    replace: 'quantile(sorted, 0.25), quantile(sorted, 0.75)',
  },
  {
    name: 'a reading leads in every trial',
    file: 'src/weighing/redraws.ts',
    find: 'if (leadingOf(posterior) === leading) led++;',
    replace: 'led++;',
  },
  {
    name: 'weights have the other sign',
    file: 'src/weighing/logOdds.ts',
    find: 'logOdds(withThem) - logOdds(without)',
    replace: 'logOdds(without) - logOdds(withThem)',
  },
  {
    name: 'weights are told against the rival only',
    file: 'src/weighing/weights.ts',
    find: 'const withinWhole = weightBetween(posterior, without, againstRest(leading));',
    replace: 'const withinWhole = weightBetween(posterior, without, { one: [leading], other: [rival] });',
  },
  {
    name: 'the rival is the least probable reading',
    file: 'src/weighing/logOdds.ts',
    find: 'posterior.readings[id] > posterior.readings[best] ? id : best',
    replace: 'posterior.readings[id] < posterior.readings[best] ? id : best',
  },
  {
    name: 'only the first finding of a group is taken out',
    file: 'src/summation/posteriorAfter.ts',
    find: 'evaluation.looks.filter((each) => !out.includes(each))',
    replace: 'evaluation.looks.filter((each) => out[0] !== each)',
  },
  {
    name: 'a number stands in for a hard limit',
    file: 'src/weighing/logOdds.ts',
    find: 'Number.isFinite(decibans) ? decibans : null',
    replace: 'Number.isFinite(decibans) ? decibans : 120',
  },
  {
    name: 'a trait with no known end fades in five years',
    file: 'src/evidence/signShares.ts',
    find: 'const end = to ?? from + 50;',
    replace: 'const end = to ?? from + 5;',
  },
  {
    name: 'a hard floor is none',
    file: 'src/evidence/signShares.ts',
    find: 'if (span.hardFloor && year < span.earliest) return 0;',
    replace: '',
  },
  {
    name: 'listed shops take all the period work',
    file: 'src/evidence/worlds.ts',
    find: 'const scale = listed > 0.9 ? 0.9 / listed : 1;',
    replace: 'const scale = listed > 1 ? 1 / listed : 1;',
  },
  {
    name: 'probabilities are shown beyond 999 in 1000',
    file: 'src/weighing/shown.ts',
    find: 'return Math.min(0.999, Math.max(0.001, probability));',
    replace: 'return Math.min(0.9999, Math.max(0.0001, probability));',
  },
  {
    name: 'moderate support begins at 5 decibans',
    file: 'src/weighing/verbalScale.ts',
    find: '{ fromRatio: 10, toRatio: 100,',
    replace: '{ fromRatio: 3, toRatio: 100,',
  },
];

/** The tests that must see them. */
export const evidenceTests = [
  'src/weighing/figuresByHand.test.ts',
  'src/weighing/firmness.test.ts',
  'src/weighing/weights.test.ts',
  'src/weighing/sharedCauses.test.ts',
  'src/weighing/reasonsByHand.test.ts',
  'src/weighing/verbalScale.test.ts',
];
