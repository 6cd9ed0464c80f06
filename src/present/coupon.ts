import { disposition } from '../core/disposition/disposition.ts';
import { jobFromModel } from '../core/job/jobFromModel.ts';
import type { Finding, Job } from '../core/job/jobSchema.ts';
import { MODEL_VERSION, type Model, type Tube } from '../core/job/modelSchema.ts';
import { standing } from '../core/job/standing.ts';
import { spliceFor } from '../core/splice/splice.ts';
import { straighten } from '../core/straighten/straighten.ts';
import { expandTruss } from '../core/truss/truss.ts';
import { VERSION } from '../core/version.ts';
import { walkRound } from '../core/walkRound/walkRound.ts';
import { contentHash } from './contentHash.ts';
import { pdfBytes } from './pdf.ts';
import { reportHead } from './record/head.ts';
import type { Part, Report, Section } from './record/sections.ts';
import type { ReportFile } from './report.ts';
import { sheets } from './sheet/layout.ts';
import { showFigure, showLength, showTube, type Units } from './show.ts';
import { templateFiles } from './templates.ts';
import { cautionsFor, pageFoot } from './words/cautions.ts';
import { areaNote, areaWords } from './words/practice.ts';

export interface CouponOptions {
  readonly tube: Tube;
  readonly paper: 'a4' | 'letter';
  readonly units: Units;
}

/** Length of the scrap, and how far it is bent before it is bent back. Starting values of ours. */
const LENGTH_IN = 30;
const BOW_IN = 0.5;
const MEMBER = 'A-B';

const couponModel = (tube: Tube): Model => ({
  format: 'tubewright-model',
  version: MODEL_VERSION,
  name: 'Bench coupon',
  source: 'Scrap tube, not of an aircraft.',
  datum: 'End A.',
  drawnIn: 'in',
  joints: 'welded',
  stations: [],
  bracing: [],
  tubes: { material: '4130N', roles: {}, overrides: [] },
  clusters: [
    { id: 'A', at: [0, 0, 0] },
    { id: 'B', at: [LENGTH_IN, 0, 0] },
  ],
  members: [{ id: MEMBER, from: 'A', to: 'B', role: 'other', tube }],
  setups: [],
  loadCases: [],
  distances: [],
});

/** The coupon as a practice job: one bent tube, to be straightened, rounded and then spliced at the bend. */
export const couponJob = (tube: Tube): Job => {
  const stamp = { by: 'exercise', at: '2000-01-01T00:00:00Z', device: 'exercise' };
  const bow: Finding = {
    kind: 'finding',
    id: 'bend',
    ...stamp,
    damage: 'bow',
    of: MEMBER,
    origin: 'unknown',
    depthIn: BOW_IN,
    shape: 'smooth',
    place: { from: 'A', atIn: LENGTH_IN / 2 },
    clock: 12,
    alongIn: 2,
  };
  return {
    ...jobFromModel(couponModel(tube), `Bench coupon ${showTube(tube, 'inFraction')}`, 'practice'),
    records: [bow],
  };
};

const line = '______________';

const cardSections = (job: Job, { tube, units }: CouponOptions): readonly Section[] => {
  const live = standing(job.records);
  const truss = expandTruss(job.model);
  const coverage = walkRound(truss, live.looks, live.findings, live.decisions, live.areas, live.clashes);
  const [row] = straighten(truss, coverage, live.manual, live.progress).members;
  const splice = spliceFor(truss, coverage, disposition(truss, coverage, live.manual), live.manual, MEMBER);
  const press = row?.setups[0];
  const design = splice?.designs.find((one) => one.method === 'innerSleeve');
  const sleeve = design?.plan?.parts.find((part) => part.kind === 'sleeve');
  const section = design?.plan?.parts.find((part) => part.kind === 'section');
  const size = (name: string, value: string): readonly [string, string] => [name, value];
  const blank = (...names: readonly string[]): Section => ({
    kind: 'facts',
    rows: names.map((name) => size(name, line)),
  });
  return [
    {
      kind: 'title',
      text: 'Bench coupon',
      under: `Scrap tube ${showTube(tube, units)}, ${showLength(LENGTH_IN, units)} long. For the bench, never for an aircraft.`,
    },
    {
      kind: 'facts',
      rows: [
        size('Trainee', line),
        size('Instructor', line),
        size('Tube marking read off', line),
        size('Subject areas', `${areaWords('coupon')}. ${areaNote}`),
      ],
    },
    { kind: 'heading', text: '1. Straighten' },
    { kind: 'cautions', cautions: cautionsFor('straightening') },
    {
      kind: 'lines',
      lines: [
        `Bend the scrap until its middle stands ${showLength(BOW_IN, units, 64)} off a straight edge, then bring it back in short pushes. Measure after each one, let go.`,
      ],
    },
    {
      kind: 'facts',
      rows: press
        ? [
            size(
              'Blocks apart',
              showFigure(
                { value: press.press.spanIn, unit: 'in', basis: press.press.setIn.basis, assumed: [] },
                units,
              ),
            ),
            size('First push, travel of the ram', showFigure(press.press.pressIn, units)),
            size('Springs back, by the sums', showFigure(press.press.springBackIn, units)),
            size('Force', showFigure(press.press.clampLbf, units)),
          ]
        : [size('First push', 'no set-up fits this tube')],
    },
    blank(
      'Push 1: pressed, left',
      'Push 2: pressed, left',
      'Push 3: pressed, left',
      'Straight edge at the end',
    ),
    { kind: 'heading', text: '2. Round' },
    {
      kind: 'lines',
      lines: [
        'Flatten a little in a vice, measure two diameters, round out between formed blocks, measure again.',
      ],
    },
    blank('Largest, smallest, flattened', 'Largest, smallest, rounded'),
    { kind: 'heading', text: '3. Splice over an inner sleeve' },
    { kind: 'cautions', cautions: cautionsFor('welding') },
    {
      kind: 'facts',
      rows:
        design?.plan && sleeve && section
          ? [
              size('Sleeve tube', showTube(sleeve.tube, units)),
              size('Sleeve length', showFigure(sleeve.longIn, units)),
              size('Section, longest line', showFigure(section.longIn, units)),
              size('Gap for the weld', showFigure(design.plan.gapIn, units)),
              size('Cuts', '30° on reverse angles, wrap templates on the sheets beside'),
            ]
          : [size('Sleeve', 'no stock sleeve goes into this tube; take another scrap')],
    },
    blank('Gap at joint 1, joint 2', 'Sleeve centred by its marks', 'Seen by a second person before tacking'),
    { kind: 'heading', text: '4. Saw open and mark' },
    {
      kind: 'lines',
      lines: [
        'Saw the splice lengthwise through both joints. No limit is loaded for a coupon: write down what is there and judge it with the instructor.',
      ],
    },
    blank(
      'Sleeve beyond the cut, each side',
      'Weld through to the sleeve, all round',
      'Burnt through, undercut, cold lap',
      'Rosettes fused to the sleeve',
      'Straight after welding, straight edge',
    ),
  ];
};

/** The card as plain sections. */
export const couponCard = (options: CouponOptions): Report => {
  const job = couponJob(options.tube);
  const { paper, units } = options;
  const head = {
    ...reportHead(job, { paper, units, version: VERSION, hash: contentHash(job) }),
    title: 'Bench coupon card',
  };
  const part: Part = { lie: 'upright', side: 'none', sections: cardSections(job, options) };
  return { head: { ...head, aircraft: 'none: scrap tube', date: 'not dated' }, parts: [part] };
};

/** The card, and the full-size templates of its splice, as files to print. Same tube, same bytes. */
export const couponFiles = async (options: CouponOptions): Promise<readonly ReportFile[]> => {
  const report = couponCard(options);
  const { paper, units } = options;
  const bytes = await pdfBytes(sheets(report), {
    title: report.head.job,
    subject: pageFoot,
    version: VERSION,
    at: '2000-01-01T00:00:00Z',
  });
  const templates = await templateFiles(couponJob(options.tube), MEMBER, {
    paper,
    units,
    methods: ['innerSleeve'],
  });
  return [
    { name: 'bench-coupon-card.pdf', bytes },
    ...templates
      .filter(({ name }) => name.endsWith('.pdf'))
      .map((file) => ({ ...file, name: 'bench-coupon-templates.pdf' })),
  ];
};
