import { type Draft, holdId, idOf, inBay, need } from './draft.ts';
import type { ReliefFirst } from './reliefFirst.ts';

const job = (id: Draft['kind'], needs: Draft['needs']): Draft => ({
  id,
  kind: id,
  scope: 'job',
  members: [],
  needs,
  materials: [],
});

/** From the wreck as it comes to the baseline: the whole job, then bay by bay. */
export const preparing = (
  bays: readonly { readonly bay: string; readonly members: readonly string[] }[],
): readonly Draft[] => {
  const inEach = (kind: Draft['kind'], needs: (bay: string) => Draft['needs']): readonly Draft[] =>
    bays.map(({ bay, members }) => ({
      id: idOf(kind, inBay(bay)),
      kind,
      scope: 'bay',
      bay,
      members,
      needs: needs(bay),
      materials: [],
    }));
  const every = (kind: Draft['kind']): readonly string[] => bays.map(({ bay }) => idOf(kind, inBay(bay)));
  const stripped = inEach('strip', () => need('support-first', 'support'));
  const looked = inEach('inspect', (bay) => need('strip-before-inspect', idOf('strip', inBay(bay))));
  const marked = inEach('layOut', (bay) => need('inspect-before-marks', idOf('inspect', inBay(bay))));
  return [
    job('makeSafe', []),
    job('defuel', need('make-safe-first', 'makeSafe')),
    job('battery', need('make-safe-first', 'makeSafe')),
    job('support', need('make-safe-first', 'makeSafe', 'defuel', 'battery')),
    ...stripped,
    ...looked,
    ...marked,
    {
      ...job('trammel', need('marks-before-baseline', ...every('layOut'))),
      id: holdId('beforeCutting'),
      hold: 'beforeCutting',
    },
    job('photo', need('support-first', 'support')),
  ];
};

/** What nothing is cut, let go or bent before. */
export const baseline = need('baseline-first', holdId('beforeCutting'), 'photo');

export const releaseId = (release: ReliefFirst['releases'][number]['release']): string =>
  idOf('release', `${release.kind}:${release.id}`);

/** Bolted tubes and weights that are let go first. */
export const releasing = (
  releases: ReliefFirst['releases'],
  bayOf: (id: string) => string,
): readonly Draft[] =>
  releases.map(({ release }) => ({
    id: releaseId(release),
    kind: 'release',
    scope: release.kind === 'bolted' ? 'member' : 'cluster',
    of: release.id,
    bay: bayOf(release.id),
    members: release.kind === 'bolted' ? [release.id] : [],
    needs: baseline,
    materials: [],
  }));
