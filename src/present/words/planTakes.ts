import type { Material, PlanBrace } from '../../core/plan/result.ts';
import { showLength, showTube, type Units } from '../show.ts';
import { listWords } from './names.ts';

/** Words of what a step takes: tools, material, braces. */

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
