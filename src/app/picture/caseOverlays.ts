import type { Assessment } from '../../core/assessment.ts';
import { add, length, scale, unit, type Vec3 } from '../../core/base/vec3.ts';
import type { Model } from '../../core/job/modelSchema.ts';
import type { SolvedCase } from '../../core/statics/result.ts';
import { fixed, lengthUnit, showShare, whole } from '../../present/show.ts';
import type { SceneArrow } from '../scene/sceneProps.ts';
import type { Overlay } from '../state/overlay.ts';
import { caseText, signedEnds } from '../text/picture.ts';
import { signed, upward } from './classes.ts';
import {
  coloured,
  type Given,
  type Laid,
  largestOf,
  moveNumbers,
  ranked,
  says,
  shapeOf,
  signedText,
} from './laid.ts';

/**
 * Loads at clusters of a case as arrows, moments with two heads along their axis; several at one cluster are one.
 * Own weight of the tubes is not drawn.
 */
const arrowsOf = (model: Model, caseId: string): readonly SceneArrow[] => {
  const loadCase = model.loadCases.find(({ id }) => id === caseId);
  if (!loadCase) return [];
  const weights = (loadCase.weights ?? []).map(
    ({ cluster, weightLbf }) => [cluster, scale(loadCase.gravity, weightLbf)] as const,
  );
  const forces = loadCase.loads.flatMap((l) => (l.forceLbf ? [[l.cluster, l.forceLbf] as const] : []));
  const moments = loadCase.loads.flatMap((l) => (l.momentInLbf ? [[l.cluster, l.momentInLbf] as const] : []));
  return [
    ...summed([...forces, ...weights], 'lbf'),
    ...summed(moments, 'in-lbf').map((arrow) => ({ ...arrow, turns: true })),
  ];
};

const summed = (loads: readonly (readonly [string, Vec3])[], unitWord: string): readonly SceneArrow[] => {
  const at = new Map<string, Vec3>();
  for (const [cluster, load] of loads) at.set(cluster, add(at.get(cluster) ?? [0, 0, 0], load));
  const most = Math.max(...[...at.values()].map(length));
  return [...at]
    .filter(([, load]) => length(load) > 1e-6)
    .map(([cluster, load]) => ({
      cluster,
      towards: unit(load),
      share: length(load) / most,
      label: `${whole(length(load))} ${unitWord}`,
    }));
};

const caseName = (model: Model, id: string): string => model.loadCases.find((c) => c.id === id)?.name ?? id;

/** The chosen load case, else the first one that was worked. */
export const chosenCase = (all: Assessment, overlay: Overlay): SolvedCase | undefined =>
  all.statics.kind !== 'stands'
    ? undefined
    : (all.statics.cases.find(({ id }) => id === overlay.caseId) ?? all.statics.cases[0]);

const ofCase = (given: Given, lay: (solved: SolvedCase) => Laid): Laid => {
  const solved = chosenCase(given.all, given.overlay);
  if (!solved) return says(caseText.title, caseText.none);
  const laid = lay(solved);
  return given.overlay.arrows ? { ...laid, arrows: arrowsOf(given.model, solved.id) } : laid;
};

export const forces = (given: Given): Laid =>
  ofCase(given, (solved) => {
    const values = new Map(solved.members.map((m) => [m.id, m.axialLbf]));
    const classes = signed(largestOf(values), given.light);
    return {
      colours: coloured(values, classes),
      ...(given.overlay.numbers
        ? { numbers: ranked(values, (v) => `${signedText(v)} lbf`, classes.borders[3]!) }
        : {}),
      strip: {
        title: caseText.forces(caseName(given.model, solved.id)),
        unit: 'lbf',
        classes,
        write: signedText,
        ...signedEnds,
        notes: [caseText.forcesNote],
      },
    };
  });

export const stress = (given: Given): Laid =>
  ofCase(given, (solved) => {
    const yields = new Map(given.all.truss.members.map((m) => [m.id, m.section.yieldPsi]));
    const values = new Map(
      solved.members.flatMap((m) => {
        const yieldPsi = yields.get(m.id);
        return yieldPsi === undefined ? [] : [[m.id, m.stressPsi / yieldPsi] as const];
      }),
    );
    const classes = upward([0.05, 0.1, 0.25, 0.5, 1], given.light);
    return {
      colours: coloured(values, classes),
      ...(given.overlay.numbers ? { numbers: ranked(values, showShare, 0.02) } : {}),
      strip: {
        title: caseText.stress(caseName(given.model, solved.id)),
        unit: caseText.stressUnit,
        classes,
        write: (border) => fixed(100 * border, 0),
        notes: [caseText.stressNote],
      },
    };
  });

export const deflected = (given: Given): Laid =>
  ofCase(given, (solved) => ({
    shape: shapeOf(given.all, caseName(given.model, solved.id), solved.clusters),
    ...(given.overlay.numbers ? { numbers: moveNumbers(solved.clusters, given.units, 40) } : {}),
    strip: {
      title: caseText.deflected(caseName(given.model, solved.id)),
      unit: lengthUnit(given.units),
      notes: [caseText.deflectedNote],
    },
  }));
