import type { CautionId } from './cautionIds.ts';

/** Every kind of step, in the order in which they come about one tube. */
export const stepKinds = [
  'makeSafe',
  'defuel',
  'battery',
  'support',
  'strip',
  'inspect',
  'layOut',
  'photo',
  'trammel',
  'release',
  'brace',
  'cut',
  'straighten',
  'roundOut',
  'inspectBend',
  'cutOut',
  'spread',
  'opening',
  'section',
  'sleeves',
  'drill',
  'trialFit',
  'fire',
  'fitUp',
  'tack',
  'spreaderOut',
  'weldFirst',
  'weld',
  'clean',
  'inspectWelds',
  'unbrace',
  'refit',
  'protect',
  'vents',
  'weigh',
] as const;
export type StepKind = (typeof stepKinds)[number];

/** What a kind of step takes, and what to beware of at it. Ids, worded in `present`. Common practice, no source. */
export interface KindRow {
  readonly tools: readonly string[];
  readonly cautions: readonly CautionId[];
}

export const kindRows = {
  makeSafe: { tools: ['barrier', 'gloves'], cautions: ['wreck-untouched'] },
  defuel: { tools: ['drain-can', 'ground-lead', 'extinguisher'], cautions: ['fuel-vapour'] },
  battery: { tools: ['spanners'], cautions: ['electrics-off'] },
  support: { tools: ['trestles', 'level'], cautions: ['support-sound-clusters'] },
  strip: {
    tools: ['stripper', 'scraper', 'rags'],
    cautions: ['no-blast-before-penetrant', 'old-finish-dust', 'old-asbestos'],
  },
  inspect: { tools: ['lamp', 'magnifier', 'mirror', 'straight-edge'], cautions: [] },
  layOut: { tools: ['scriber', 'ink', 'square'], cautions: ['marks-start-again'] },
  photo: { tools: ['camera', 'scale-bar'], cautions: [] },
  trammel: { tools: ['trammel', 'caliper'], cautions: ['cannot-tell', 'end-distance-hides-bow'] },
  release: { tools: ['spanners', 'hoist'], cautions: ['stored-strain'] },
  brace: { tools: ['brace-tube', 'clamps'], cautions: ['no-brace-on-finished-weld'] },
  cut: {
    tools: ['hacksaw', 'clamps', 'caliper'],
    cautions: ['stored-strain', 'baseline-first', 'one-opening', 'measure-the-kerf', 'eyes-cutting'],
  },
  straighten: {
    tools: ['press-frame', 'grooved-blocks', 'straight-edge'],
    cautions: ['cold-straightening', 'no-heat'],
  },
  roundOut: { tools: ['round-blocks', 'caliper'], cautions: ['cold-straightening'] },
  inspectBend: { tools: ['penetrant-kit', 'magnifier'], cautions: [] },
  cutOut: { tools: ['hacksaw', 'file', 'protractor'], cautions: ['one-opening', 'eyes-cutting'] },
  spread: { tools: ['spreader', 'trammel'], cautions: ['spread-slowly', 'spread-spreads-elsewhere'] },
  opening: { tools: ['trammel', 'caliper'], cautions: [] },
  section: { tools: ['hacksaw', 'file', 'wrap-template'], cautions: ['eyes-cutting'] },
  sleeves: { tools: ['hacksaw', 'file'], cautions: ['eyes-cutting'] },
  drill: { tools: ['drill', 'deburring-tool'], cautions: ['eyes-cutting'] },
  trialFit: { tools: ['clamps', 'scribed-marks'], cautions: [] },
  fire: {
    tools: ['extinguisher', 'wet-cloth', 'return-clamp'],
    cautions: [
      'fire-watch',
      'fire-watch-after',
      'vent-sealed-tubes',
      'return-clamp',
      'fumes',
      'old-asbestos',
      'electrics-off',
    ],
  },
  fitUp: { tools: ['feeler-gauge', 'caliper'], cautions: [] },
  tack: {
    tools: ['torch', 'return-clamp', 'extinguisher'],
    cautions: ['eyes-welding', 'fire-watch', 'fumes', 'return-clamp'],
  },
  spreaderOut: { tools: ['spanners'], cautions: ['spread-slowly'] },
  weldFirst: {
    tools: ['torch', 'return-clamp', 'extinguisher'],
    cautions: [
      'eyes-welding',
      'fire-watch',
      'fumes',
      'vent-sealed-tubes',
      'return-clamp',
      'cool-between-ends',
    ],
  },
  weld: {
    tools: ['torch', 'return-clamp', 'extinguisher'],
    cautions: [
      'eyes-welding',
      'fire-watch',
      'fire-watch-after',
      'fumes',
      'vent-sealed-tubes',
      'return-clamp',
      'cool-between-ends',
    ],
  },
  clean: { tools: ['wire-brush'], cautions: ['no-dressed-welds'] },
  inspectWelds: { tools: ['magnifier', 'penetrant-kit'], cautions: ['far-side-of-weld'] },
  unbrace: { tools: ['spanners'], cautions: ['stored-strain'] },
  refit: { tools: ['spanners', 'hoist'], cautions: [] },
  protect: {
    tools: ['inhibitor', 'primer', 'brush'],
    cautions: ['inside-oil-after-welds', 'old-finish-dust'],
  },
  vents: { tools: ['drive-screws'], cautions: ['dry-before-closing'] },
  weigh: { tools: ['ledger'], cautions: [] },
} as const satisfies Readonly<Record<StepKind, KindRow>>;
