import type { Coverage } from '../../core/walkRound/result.ts';
import type { MapViewName } from '../draw/project.ts';
import type { Showing } from '../tables/showing.ts';
import type { Part } from './sections.ts';

const views: readonly (readonly MapViewName[])[] = [
  ['leftSide'],
  ['rightSide'],
  ['plan', 'fromBelow'],
  ['threeQuarter'],
];

const sideOf = {
  leftSide: "Pilot's left",
  rightSide: "pilot's right",
  plan: "Top: pilot's right is up",
  fromBelow: "bottom: pilot's left is up",
  fromAhead: "From ahead: pilot's left is on the right",
  threeQuarter: "From ahead, above, pilot's left",
} as const satisfies Record<MapViewName, string>;

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** Sides of a sheet with these views, in words. */
export const viewsWords = (pair: readonly MapViewName[]): string =>
  capital(pair.map((name) => sideOf[name]).join(' · '));

/** The truss from the named views, then every station from ahead. */
export const mapParts = ({ assessment: { truss, coverage } }: Showing): readonly Part[] => [
  ...views.map(
    (pair): Part => ({
      lie: 'turned',
      side: viewsWords(pair),
      sections: [{ kind: 'map', truss, coverage, views: pair }],
    }),
  ),
  {
    lie: 'turned',
    side: "From ahead: pilot's left is on the right",
    sections: [{ kind: 'stations', truss, coverage }],
  },
];

/** A close-up of every bay with damage or a decision on it. */
export const closeUpParts = ({ assessment: { truss, coverage } }: Showing): readonly Part[] => {
  const hurt = new Set(coverage.marks.filter((m) => m.findings.length > 0 || m.choice).map((m) => m.id));
  const bays = truss.bays.filter(({ members }) => members.some((id) => hurt.has(id)));
  return bays.length === 0
    ? []
    : [
        {
          lie: 'turned',
          side: "Hurt bays, from ahead, above, pilot's left",
          sections: [{ kind: 'closeUps', truss, coverage, bays }],
        },
      ];
};

/** The coverage as the damage was found: nothing of it decided. */
export const asFound = (coverage: Coverage): Coverage => {
  const marks = coverage.marks.map((mark) => {
    const { choice, ...bare } = mark;
    return choice === undefined ? mark : { ...bare, state: 'undecided' as const };
  });
  const counted = (kind: 'member' | 'cluster'): Coverage['members'] => {
    const counts = { ...coverage[kind === 'member' ? 'members' : 'clusters'] };
    for (const mark of coverage.marks)
      if (mark.kind === kind && mark.choice !== undefined) {
        counts[mark.state]--;
        counts.undecided++;
      }
    return counts;
  };
  return { ...coverage, marks, members: counted('member'), clusters: counted('cluster') };
};

/** Everything decided whose steps of the plan are all ticked. */
export const tickedRepairs = ({ assessment: { plan, coverage } }: Showing): ReadonlySet<string> =>
  new Set(
    coverage.marks.flatMap(({ id, choice }) => {
      const steps = plan.steps.filter(({ of }) => of === id);
      return choice && steps.length > 0 && steps.every(({ done }) => done) ? [id] : [];
    }),
  );

/** Sides, then top and bottom, with the tags before and after: as found, and as it stands, with a tick by every repair that is done. */
export const beforeAfterParts = (showing: Showing): readonly Part[] => {
  const { truss, coverage } = showing.assessment;
  const ticked = tickedRepairs(showing);
  const found = asFound(coverage);
  const faces: readonly (readonly MapViewName[])[] = [
    ['leftSide', 'rightSide'],
    ['plan', 'fromBelow'],
  ];
  return faces.flatMap((pair): readonly Part[] => [
    {
      lie: 'turned',
      side: `As found, nothing decided. ${viewsWords(pair)}`,
      sections: [{ kind: 'map', truss, coverage: found, views: pair }],
    },
    {
      lie: 'turned',
      side: `As it stands; ticked: every step done. ${viewsWords(pair)}`,
      sections: [{ kind: 'map', truss, coverage, views: pair, ticked }],
    },
  ]);
};
