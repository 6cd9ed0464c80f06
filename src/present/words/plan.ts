import type { StepKind } from '../../core/plan/kinds.ts';
import type {
  Evidence,
  Gate,
  GateName,
  Material,
  Moved,
  NotPlanned,
  Plan,
  PlanBrace,
  SolvedState,
  Step,
} from '../../core/plan/result.ts';
import { orderRules } from '../../core/plan/rules.ts';
import { showFigure, showLength, showTube, type Units } from '../show.ts';
import { countWords, listWords } from './names.ts';
import { holdWords } from './record.ts';

/** Words of the plan: steps, hold points, what they want to see, tools, and why a step may not be moved. */

export const stepKindWords = {
  makeSafe: 'Wait for release of the wreck, keep people off',
  defuel: 'Drain fuel and oil, purge tanks and lines',
  battery: 'Take the battery out, electronics off',
  support: 'Hold the truss on sound clusters, level it',
  strip: 'Strip the finish',
  inspect: 'Look again with the finish off',
  layOut: 'Lay out station points and centre lines',
  photo: 'Photograph as found',
  trammel: 'Trammel',
  release: 'Let go without a saw',
  brace: 'Brace',
  cut: 'Cut',
  straighten: 'Straighten',
  roundOut: 'Round out',
  inspectBend: 'Look again for cracks after bending',
  cutOut: 'Cut out, dress, check the angle',
  spread: 'Spread the opening',
  opening: 'Measure the opening',
  section: 'Make the section',
  sleeves: 'Make the sleeves',
  drill: 'Drill the rosettes and deburr',
  trialFit: 'Trial fit, dry',
  fire: 'Stand the fire watch, open vents, return clamp beside the weld',
  fitUp: 'Look over the fit-up',
  tack: 'Tack',
  spreaderOut: 'Take the spreader out if it is in the way',
  weldFirst: 'Weld the first end, let it cool',
  weld: 'Weld the other end, let it cool',
  clean: 'Clean the welds',
  inspectWelds: 'Look over the welds, far side too',
  unbrace: 'Take the brace out',
  refit: 'Put back what was let go',
  protect: 'Protect inside and outside',
  vents: 'Close the vents',
  weigh: 'Decide weight and balance',
} as const satisfies Record<StepKind, string>;

const releaseParts = { weight: 'take the weight off', bolted: 'unbolt' } as const;

/** What a step is about, in words: a tube, a bay, the whole truss. */
export const stepWhere = ({
  of,
  bay,
  scope,
  members,
}: Pick<Step, 'of' | 'bay' | 'scope' | 'members'>): string =>
  scope === 'job'
    ? 'whole truss'
    : scope === 'bay'
      ? `bay ${bay ?? ''}${members.length > 0 ? `: ${members.join(', ')}` : ''}`
      : (of ?? members.join(', '));

/** The deed of a step without its place: "Trammel after cutting", "Unbolt". */
export const stepDeed = (step: Pick<Step, 'kind' | 'id' | 'hold'>): string => {
  if (step.hold) return `Trammel ${holdWords[step.hold]}`;
  if (step.kind === 'release' || step.kind === 'refit') {
    const how = step.id.split(':')[1] as keyof typeof releaseParts;
    if (Object.hasOwn(releaseParts, how)) {
      const words = releaseParts[how];
      return step.kind === 'refit'
        ? how === 'bolted'
          ? 'Bolt back in'
          : 'Put the weight back'
        : words.charAt(0).toUpperCase() + words.slice(1);
    }
  }
  return stepKindWords[step.kind];
};

/** A step in one line: "Cut · L3R-L4R". */
export const stepLine = (step: Step): string => {
  const place = step.brace ? `${step.brace.from} to ${step.brace.to}` : stepWhere(step);
  return `${stepDeed(step)} · ${place}`;
};

/** A step by its id, as issues and needs name it; the id itself when the plan has it not. */
export const stepNamed =
  (plan: Pick<Plan, 'steps'>) =>
  (id: string): string => {
    const step = plan.steps.find((s) => s.id === id);
    return step ? stepLine(step) : id;
  };

export const gateWords = {
  H1: 'Reference accepted',
  H2: 'Damage map complete',
  H3: 'Plan agreed',
  H4: 'Held, and baseline taken',
  H5: 'Fit-up seen',
  H6: 'Tacked distances',
  H7: 'Welds looked over',
  H8: 'As-left distances',
  H9: 'Protected',
  H10: 'Weight and balance decided',
} as const satisfies Record<GateName, string>;

export const gateLine = ({ name, of }: Pick<Gate, 'name' | 'of'>): string =>
  `${name} ${gateWords[name]}${of === undefined ? '' : ` · ${of}`}`;

/** A hold point by its id: `H4:U3R-U4R`. */
export const gateNamed = (id: string): string => {
  const [name = id, of] = [
    id.replace(/:.*$/s, ''),
    id.includes(':') ? id.slice(id.indexOf(':') + 1) : undefined,
  ];
  return Object.hasOwn(gateWords, name)
    ? gateLine({ name: name as GateName, ...(of === undefined ? {} : { of }) })
    : id;
};

/** Hold points by their name, each with what it stands open at: "H4 Held, and baseline taken: U3R-U4R, L3R-L4R". */
export const gatesTogether = (ids: readonly string[]): readonly string[] => {
  const at = new Map<string, string[]>();
  for (const id of ids) {
    const [name = id] = id.split(':');
    const of = at.get(name) ?? [];
    if (id.includes(':')) of.push(id.slice(name.length + 1));
    at.set(name, of);
  }
  return [...at].map(([name, of]) => `${gateNamed(name)}${of.length > 0 ? `: ${of.join(', ')}` : ''}`);
};

export const evidenceWords: Readonly<Record<string, string>> = {
  baseline: 'baseline distances taken, as found',
  residuals: 'the readings fit one another',
  allLookedAt: 'every tube and cluster looked at',
  allDecided: 'nothing undecided, nothing to look at again',
  frozenPlan: 'a plan frozen, and no change since',
  reasonsWritten: 'a reason written beside every decision that needs one',
  secondPerson: 'a second person named, not the doer',
  photo: 'a photo of it',
  restraint: 'said how the truss is held',
  brace: 'its brace ticked as in place',
  noNeighbourOpen: 'no neighbour open at its clusters',
  fitUp: 'gap, overlap and marks written down, seen by a second person',
  slideOn: 'trial fit ticked, sleeves on their tubes',
  proof: 'proof of size and material',
  tackedDistances: 'distances after tacking taken and not outside',
  weldInspected: 'welds looked over, method and result written down',
  asLeftDistances: 'as-left distances of the whole truss taken and not outside',
  protect: 'protection ticked',
  vents: 'vents closed, ticked',
  ledger: 'a person has read the weight ledger',
  weighed: 'weight and balance decided, ticked',
};

const evidenceSigns = { yes: '✓', no: '–', person: '?' } as const;
export const evidenceSign = ({ there }: Evidence): string =>
  there === null ? evidenceSigns.person : there ? evidenceSigns.yes : evidenceSigns.no;

/** One thing a hold point wants to see, and how it stands. */
export const evidenceLine = ({ what, there, ids }: Evidence): string => {
  const words = evidenceWords[what] ?? what;
  const named =
    ids.length === 0 || there === true
      ? ''
      : ids.length > 6
        ? ` (${ids.length} missing)`
        : ` (${ids.join(', ')})`;
  return `${words}: ${there === null ? 'a person has to see to it' : there ? 'there' : 'missing'}${named}`;
};

export const secondWords = {
  yes: 'second person',
  advised: 'second person advised',
  qualified: 'second person, qualified for the method',
  inspector: 'inspector',
  entitled: 'person entitled to',
} as const satisfies Record<Gate['secondPerson'], string>;

export const gateStateWords = {
  waits: 'waits',
  ready: 'ready to be ticked',
  done: 'done',
  openedByName: 'opened by name',
} as const satisfies Record<Gate['state'], string>;

export const toolWords: Readonly<Record<string, string>> = {
  barrier: 'barrier tape',
  gloves: 'gloves',
  'drain-can': 'drain can',
  'ground-lead': 'earthing lead',
  extinguisher: 'extinguisher',
  spanners: 'spanners',
  trestles: 'trestles or jig',
  level: 'level',
  stripper: 'paint stripper',
  scraper: 'scraper',
  rags: 'rags',
  lamp: 'lamp',
  magnifier: 'magnifier',
  mirror: 'mirror',
  'straight-edge': 'straight edge',
  scriber: 'scriber (ink on tube that stays)',
  ink: 'ink',
  square: 'square',
  camera: 'camera',
  'scale-bar': 'scale bar',
  trammel: 'trammel',
  caliper: 'caliper',
  hoist: 'hoist',
  'brace-tube': 'brace tube',
  clamps: 'clamps',
  hacksaw: 'hacksaw, fine blade',
  'press-frame': 'press frame',
  'grooved-blocks': 'grooved blocks',
  'round-blocks': 'bored half blocks',
  'penetrant-kit': 'penetrant kit',
  file: 'file',
  protractor: 'protractor',
  spreader: 'spreader',
  'wrap-template': 'wrap template',
  drill: 'drill',
  'deburring-tool': 'deburring tool',
  'scribed-marks': 'marks on tube and sleeve',
  'wet-cloth': 'wet cloth',
  'return-clamp': 'return clamp',
  'feeler-gauge': 'feeler gauge',
  torch: 'torch',
  'wire-brush': 'wire brush',
  inhibitor: 'inhibiting oil',
  primer: 'primer',
  brush: 'brush',
  'drive-screws': 'drive screws',
  ledger: 'weight ledger',
};
export const toolsLine = (tools: readonly string[]): string =>
  tools.map((tool) => toolWords[tool] ?? tool).join(', ');

export const materialWords = {
  section: 'section',
  sleeve: 'sleeve',
  splitSleeve: 'split sleeve',
  largerTube: 'larger tube',
  patch: 'patch',
  member: 'whole tube',
  brace: 'brace',
} as const satisfies Record<Material['what'], string>;

export const materialLine = ({ what, odIn, wallIn, lengthIn }: Material, units: Units): string =>
  `${materialWords[what]} ${showTube({ odIn, wallIn }, units)}${lengthIn === null ? ', length not worked yet' : `, ${showLength(lengthIn, units)}`}`;

export const braceWhyWords = {
  ownEnds: 'along the cut tube, end to end',
  sag: 'because the truss would sag over the limit',
  mechanism: 'because the truss would move freely',
  neighbourOpen: 'because a neighbour is open at the same cluster',
} as const satisfies Record<PlanBrace['why'], string>;

export const braceLine = (brace: PlanBrace, units: Units): string =>
  `Brace ${showTube(brace, units)} from ${brace.from} to ${brace.to}, holds ${listWords(brace.holds)}: ${braceWhyWords[brace.why]}`;

export const notPlannedWords = {
  movesFreely: 'the truss moves freely as held',
  noBraceHolds: 'no brace that was tried holds it',
  noFixtureForCluster: 'the cluster needs a fixture that is not planned here',
  refer: 'referred to the maker: nothing is planned until data come',
  undecided: 'undecided',
  clusterNotBent: 'a cluster is not bent back; decide again',
} as const satisfies Record<NotPlanned['why'], string>;

export const solvedWords = {
  stands: 'stands under the sag limit',
  sags: 'sags more than the limit',
  notJudged: 'stands; sag not judged, nobody has said how it is held',
  mechanism: 'would move freely',
} as const satisfies Record<SolvedState['says'], string>;

/** The truss as solved after a step, in one line. */
export const solvedLine = (solved: SolvedState, units: Units): string =>
  [
    solved.open.length > 0 ? `open: ${listWords(solved.open)}` : 'nothing open',
    ...(solved.braces.length > 0 ? [`${countWords(solved.braces.length, 'brace')} in place`] : []),
    solvedWords[solved.says],
    ...(solved.sagIn
      ? [
          Math.abs(solved.sagIn.value) < 0.0005
            ? 'sag grows by less than 0.001 in'
            : `sag grows by ${showFigure(solved.sagIn, units)}${solved.clusters[0] ? ` at ${solved.clusters[0]}` : ''}`,
        ]
      : []),
  ].join('; ');

/** A rule of the order as the plan states it. */
export const orderRuleWords = (rule: string): string =>
  orderRules.find(({ id }) => id === rule)?.says ?? 'This step is not in the plan.';

export const orderRuleSource = (rule: string): string =>
  orderRules.find(({ id }) => id === rule)?.source ?? '';

/** Why a step was not moved: the rule, and which two steps it parts. */
export const refusedMoveLine = (moved: Extract<Moved, { ok: false }>, plan: Pick<Plan, 'steps'>): string => {
  const named = stepNamed(plan);
  if (moved.rule === 'state-stands')
    return `Not moved. ${orderRuleWords(moved.rule)} At "${named(moved.step)}" it would not${moved.by ? `; ${named(moved.by)} moves most` : ''}.`;
  return `Not moved. ${orderRuleWords(moved.rule)} "${named(moved.step)}" comes after "${named(moved.by)}".`;
};

/** How far the plan is. */
export const planShare = ({ steps, gates }: Plan): string => {
  const done = steps.filter((s) => s.done).length;
  const open = gates.filter((g) => g.state === 'waits' || g.state === 'ready').length;
  return `${done} of ${countWords(steps.length, 'step')} ticked, ${countWords(open, 'hold point')} open`;
};
