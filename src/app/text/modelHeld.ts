import type { Freedom } from '../../core/job/modelSchema.ts';
import type { HeldTemplate, LoadTemplate } from '../../core/truss/startingLoads.ts';

/** Captions of ways to be held and of load cases of a model. */
export const waysText = {
  title: 'Ways to be held',
  templates: { onItsGear: 'On its gear', inJig: 'Hung in a jig', trestles: 'On trestles' },
  held: (way: string) => `held: ${way.toLowerCase()}`,
  own: 'One of my own',
  ownName: 'A way of my own',
  found:
    'Clusters are found by what sits at them, else by their place: gear a quarter of the way aft, tail at the end. Check them.',
} as const satisfies {
  readonly templates: Record<HeldTemplate, string>;
  readonly [caption: string]: unknown;
};

export const loadsText = {
  title: 'Load cases',
  templates: {
    ownWeight: 'Own weight',
    tailDown: 'Tail down-load',
    landing: 'Landing',
    twist: 'Twist',
  },
  added: (load: string) => `load case ${load.toLowerCase()}`,
  own: 'One of my own',
  ownName: 'A case of my own',
  ownAdded: 'load case of my own',
  invented: 'Their numbers are invented starting values: put in your own.',
} as const satisfies {
  readonly templates: Record<LoadTemplate, string>;
  readonly [caption: string]: unknown;
};

export const setupText = {
  freedoms: { x: 'fore-aft', y: 'sideways', z: 'up-down', rx: 'roll', ry: 'pitch', rz: 'yaw' },
  changed: (name: string) => `how it is held: ${name}`,
  line: (name: string, clusters: string) => `${name} · ${clusters} held`,
  called: 'Called',
  nameOf: (name: string) => `Name of ${name}`,
  heldAt: (cluster: string) => `${cluster} held`,
  cluster: (name: string, no: number) => `${name}: cluster ${no}`,
  heldIn: (cluster: string, freedom: string) => `${cluster} held ${freedom}`,
  takeOut: 'Take out',
  takeOutNamed: (name: string, cluster: string) => `${name}: take out ${cluster}`,
  more: (name: string) => `${name}: hold one more cluster`,
  moreHint: 'hold one more: U4R',
  remove: 'Take out this set-up',
  removed: (name: string) => `${name} taken out`,
} as const satisfies { readonly freedoms: Record<Freedom, string>; readonly [caption: string]: unknown };

export const loadText = {
  changed: (name: string) => `load case ${name}`,
  noLoad: 'no load of its own',
  called: 'Called',
  nameOf: (name: string) => `Name of load case ${name}`,
  carriedBy: 'Carried by',
  asHeld: 'as it is held now',
  free: 'its own inertia, in flight',
  gravity: (way: string) => `Gravity, g ${way}`,
  gravityOf: (name: string, way: string) => `${name}: gravity, g ${way}`,
  forceAt: (cluster: string) => `Force at ${cluster}`,
  forceOf: (name: string, way: string, cluster: string) => `${name}: lbf ${way} at ${cluster}`,
  force: (way: string) => `lbf ${way}`,
  moment: 'Moment',
  momentOf: (name: string, axis: string, cluster: string) =>
    `${name}: in-lbf about the ${axis} axis at ${cluster}`,
  momentAbout: (axis: string) => `in-lbf about ${axis}`,
  takeOut: 'Take out',
  takeOutLoad: (name: string, cluster: string) => `${name}: take out the load at ${cluster}`,
  weightAt: (cluster: string) => `Weight at ${cluster}`,
  weightOf: (name: string, cluster: string) => `${name}: weight at ${cluster}, lb`,
  weight: 'lb carried',
  takeOutWeight: (name: string, cluster: string) => `${name}: take out the weight at ${cluster}`,
  moreLoad: (name: string) => `${name}: load one more cluster`,
  moreLoadHint: 'a force at: U4R',
  moreWeight: (name: string) => `${name}: hang a weight on a cluster`,
  moreWeightHint: 'a weight at: U1L',
  source: 'Where the numbers come from',
  sourceOf: (name: string) => `${name}: source of the numbers`,
  remove: 'Take out this load case',
  removed: (name: string) => `${name} taken out`,
} as const;
