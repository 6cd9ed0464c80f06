import type { Evidence, Gate, GateName } from '../../core/plan/result.ts';

/** Words of the hold points of the work: what each wants to see, and who looks too. */

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
  marksStand: 'marks not laid out again since the baseline',
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
