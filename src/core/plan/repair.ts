import type { Hold } from '../job/jobSchema.ts';
import type { Design } from '../splice/result.ts';
import { type Draft, holdId, idOf, inBay, need } from './draft.ts';
import type { StepKind } from './kinds.ts';
import { baseline } from './prepare.ts';
import type { Material, Need, PlanBrace } from './result.ts';
import type { RuleId } from './rules.ts';
import type { Opening } from './sequence.ts';
import type { WorkUnit } from './units.ts';

/** What the steps of one repair must know of the others. */
export interface Around {
  /** Steps that let its stress go before it is bent. */
  readonly freedBy: (id: string) => readonly string[];
  /** Crack checks of tubes bent back near it. */
  readonly bentNear: (unit: WorkUnit) => readonly string[];
  /** Steps after which these tubes are closed for good. */
  readonly closing: (members: readonly string[]) => readonly string[];
  readonly isEarly: (id: string) => boolean;
  readonly design: (id: string) => Design | null;
  readonly materials: (unit: WorkUnit) => readonly Material[];
}

type Make = (kind: StepKind, needs: readonly Need[], more?: Partial<Draft>) => Draft;

const maker =
  (unit: WorkUnit): Make =>
  (kind, needs, more = {}) => ({
    id: idOf(kind, unit.id),
    kind,
    scope: unit.kind,
    of: unit.id,
    bay: unit.bay,
    members: unit.kind === 'member' ? [unit.id] : unit.opens,
    needs,
    materials: [],
    ...more,
  });

const trammel = (make: Make, unit: WorkUnit, hold: Hold, rule: RuleId, after: string, suffix = ''): Draft =>
  make('trammel', need(rule, after), { id: `${holdId(hold, unit.id)}${suffix}`, hold });

/** Bent back where it is: pressed straight, rounded out, looked at again. */
export const bending = (unit: WorkUnit, around: Around): readonly Draft[] => {
  const make = maker(unit);
  const before = [...baseline, ...need('relief-before-straightening', ...around.freedBy(unit.id))];
  const bent = idOf('straighten', unit.id);
  const steps =
    unit.bend === 'roundOut'
      ? [make('roundOut', before, { id: bent })]
      : [make('straighten', before), make('roundOut', need('round-after-bend', bent))];
  return [...steps, make('inspectBend', need('crack-check-after-bend', steps.at(-1)!.id))];
};

/** Distances with the braces in: they must read as found. No braces, no step. */
const braced = (unit: WorkUnit, braces: readonly PlanBrace[]): readonly Draft[] =>
  braces.length === 0
    ? []
    : [
        maker(unit)('trammel', need('measure-after-brace', ...braces.map((b) => b.id)), {
          id: holdId('beforeCutting', unit.id),
          hold: 'beforeCutting',
        }),
      ];

export const bracing = (brace: PlanBrace, unit: WorkUnit): Draft =>
  maker(unit)('brace', need('support-first', 'support'), {
    id: brace.id,
    members: brace.holds,
    brace,
    materials: [{ what: 'brace', odIn: brace.odIn, wallIn: brace.wallIn, lengthIn: null }],
  });

/** The first cut, its braces before it and its distances after it. */
export const opening = (
  { unit, braces }: Opening,
  releases: readonly string[],
  around: Around,
): readonly Draft[] => {
  const make = maker(unit);
  const waits = around.isEarly(unit.id) ? [] : around.bentNear(unit);
  const measured = braced(unit, braces);
  const held = [...braces.map((b) => bracing(b, unit)), ...measured];
  const afterHeld = [
    ...need('brace-before-cut', ...braces.map((b) => b.id)),
    ...need('measure-after-brace', ...measured.map((m) => m.id)),
  ];
  if (unit.bolted)
    return [
      ...held,
      make('release', [...baseline, ...afterHeld, ...need('straighten-before-replace', ...waits)], {
        id: outId(unit),
      }),
      trammel(make, unit, 'afterCutting', 'measure-after-cut', outId(unit)),
    ];
  return [
    ...held,
    make('cut', [
      ...baseline,
      ...need('support-first', 'support'),
      ...afterHeld,
      ...need('release-before-saw', ...releases),
      ...need('straighten-before-replace', ...waits),
    ]),
    trammel(make, unit, 'afterCutting', 'measure-after-cut', idOf('cut', unit.id)),
  ];
};

/** The step that takes a repair's tube out. */
export const outId = (unit: WorkUnit): string =>
  unit.bolted ? idOf('release', `bolted:${unit.id}`) : idOf('cut', unit.id);
/** The step that puts a bolted tube back. */
export const backId = (unit: WorkUnit): string => idOf('refit', `bolted:${unit.id}`);

/** A bolted tube: its replacement got or made, tried, bolted in, and measured. */
const exchanging = (unit: WorkUnit, around: Around): readonly Draft[] => {
  const make = maker(unit);
  const id = (kind: StepKind): string => idOf(kind, unit.id);
  const waits = around.isEarly(unit.id) ? around.bentNear(unit) : [];
  return [
    make('section', need('measure-after-cut', holdId('afterCutting', unit.id)), {
      materials: around.materials(unit),
    }),
    make('trialFit', [
      ...need('fit-before-tack', id('section')),
      ...need('straighten-before-replace', ...waits),
    ]),
    make('refit', need('fit-before-tack', id('trialFit')), { id: backId(unit) }),
  ];
};

/** From the first cut to the tacks, and measured again. */
export const fitting = (unit: WorkUnit, around: Around): readonly Draft[] => {
  if (unit.bolted) return exchanging(unit, around);
  const make = maker(unit);
  const id = (kind: StepKind): string => idOf(kind, unit.id);
  const at = (hold: Hold): string => holdId(hold, unit.id);
  const design = around.design(unit.id);
  const materials = around.materials(unit);
  const isSection = (m: Material): boolean =>
    m.what === 'section' || m.what === 'member' || m.what === 'largerTube';
  const sleeved = unit.choice === 'splice' && design?.method !== 'largerTube';
  const waits = around.isEarly(unit.id) ? around.bentNear(unit) : [];
  const made = [id('section'), ...(sleeved ? [id('sleeves')] : [])];
  return [
    make('cutOut', [
      ...need('finish-cuts-after-opening', id('cut'), at('afterCutting')),
      ...need('straighten-before-replace', ...waits),
    ]),
    trammel(make, unit, 'afterCutting', 'measure-before-spread', id('cutOut'), ':cutOut'),
    make('spread', [
      ...need('spread-before-fitting', id('cutOut')),
      ...need('measure-before-spread', `${at('afterCutting')}:cutOut`),
    ]),
    trammel(make, unit, 'afterSpreading', 'measure-after-spread', id('spread')),
    make('opening', need('spread-before-fitting', at('afterSpreading'))),
    make('section', need('opening-before-section', id('opening')), {
      materials: materials.filter(isSection),
    }),
    ...(sleeved
      ? [
          make('sleeves', need('opening-before-section', id('opening')), {
            materials: materials.filter((m) => !isSection(m)),
          }),
        ]
      : []),
    make('drill', need('parts-before-drill', ...made)),
    make('trialFit', need('fit-before-tack', id('drill'))),
    trammel(make, unit, 'beforeTacking', 'measure-before-tack', id('trialFit')),
    make('fitUp', need('fit-before-tack', id('trialFit'))),
    make('tack', [
      ...need('fire-before-torch', idOf('fire', inBay(unit.bay))),
      ...need('measure-before-tack', at('beforeTacking')),
      ...need('fit-up-seen-before-tack', id('fitUp')),
    ]),
    trammel(make, unit, 'afterTacking', 'measure-tacks-before-weld', id('tack')),
    make('spreaderOut', need('measure-tacks-before-weld', at('afterTacking'))),
    trammel(make, unit, 'afterTacking', 'measure-tacks-before-weld', id('spreaderOut'), ':spreaderOut'),
  ];
};

/** Laid over the tube: made, fitted, tacked. */
export const covering = (unit: WorkUnit, around: Around): readonly Draft[] => {
  const make = maker(unit);
  const id = (kind: StepKind): string => idOf(kind, unit.id);
  return [
    make(
      'sleeves',
      [...baseline, ...need('straighten-before-replace', ...(unit.bend ? [id('inspectBend')] : []))],
      {
        materials: around.materials(unit),
      },
    ),
    make('trialFit', need('fit-before-tack', id('sleeves'))),
    make('fitUp', need('fit-before-tack', id('trialFit'))),
    make('tack', [
      ...need('fire-before-torch', idOf('fire', inBay(unit.bay))),
      ...need('fit-up-seen-before-tack', id('fitUp')),
    ]),
    trammel(make, unit, 'afterTacking', 'measure-tacks-before-weld', id('tack')),
  ];
};

/** Last measured before welding: with the spreader out, where there was one. */
const tacksMeasured = (unit: WorkUnit): string =>
  `${holdId('afterTacking', unit.id)}${unit.way === 'open' ? ':spreaderOut' : ''}`;

/** One end of every tube of the bay, then the other: while one cools another is welded. */
export const welding = (units: readonly WorkUnit[]): readonly Draft[] => [
  ...units.map((u) => maker(u)('weldFirst', need('measure-tacks-before-weld', tacksMeasured(u)))),
  ...units.map((u) => maker(u)('weld', need('cool-between-ends', idOf('weldFirst', u.id)))),
];

export const inspecting = (units: readonly WorkUnit[]): readonly Draft[] => [
  ...units.map((u) => maker(u)('clean', need('cool-between-ends', idOf('weld', u.id)))),
  ...units.map((u) => maker(u)('inspectWelds', need('clean-before-inspect', idOf('clean', u.id)))),
];

/** Does the repair take a torch? */
export const isWelded = (unit: WorkUnit): boolean => unit.way !== 'bend' && !unit.bolted;

/** Outside and inside protected, then its holes closed. */
export const protecting = (unit: WorkUnit): readonly Draft[] => {
  const make = maker(unit);
  const welded = isWelded(unit);
  const before = [
    ...need('as-left-before-protection', holdId('afterWelding')),
    ...(welded ? need('as-left-before-protection', idOf('inspectWelds', unit.id)) : []),
  ];
  return [
    make('protect', before),
    ...(welded ? [make('vents', need('protect-before-closing', idOf('protect', unit.id)))] : []),
  ];
};
