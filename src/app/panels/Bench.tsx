import { useMemo, useState } from 'react';
import { degToRad } from '../../core/base/units.ts';
import { benchTube } from '../../core/splice/fishmouth.ts';
import { benchPiece } from '../../core/splice/piece.ts';
import type { CopeTube, Method } from '../../core/splice/result.ts';
import { designsOf } from '../../core/splice/splice.ts';
import { benchStraighten } from '../../core/straighten/benchStraighten.ts';
import { materials } from '../../core/truss/stock.ts';
import { showFigure, showLength } from '../../present/show.ts';
import { clockText } from '../../present/tables/straighten.ts';
import { shapeWords } from '../../present/words/straighten.ts';
import { Cautions } from '../parts/Caution.tsx';
import { FigureLine, PlainLine } from '../parts/FigureLine.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { useLengths } from '../parts/useLengths.ts';
import { usePrefs } from '../state/prefs.ts';
import { setView } from '../state/view.ts';
import { ClockSelect } from './ClockSelect.tsx';
import { SetUpCard } from './SetUpCard.tsx';
import { MethodSheet, Methods } from './SpliceMethods.tsx';
import { BenchTemplates } from './Templates.tsx';

const keys = [
  'od',
  'wall',
  'between',
  'from',
  'to',
  'depth',
  'around',
  'bow',
  'bowAt',
  'span',
  'odNear',
  'odFar',
] as const;
type Key = (typeof keys)[number];

/** One tube without a job: fit, cut card, sleeve, template and straightening, by the same sums as a member of a truss. */
export const BenchPanel = () => {
  const lengths = useLengths<Key>({ od: '1', wall: '.035', between: '28', from: '12', to: '14' });
  const [material, setMaterial] = useState('4130N');
  const [clock, setClock] = useState('');
  const [cracked, setCracked] = useState(false);
  const [angles, setAngles] = useState({ near: '90', far: '90' });
  const [method, setMethod] = useState<Method | null>(null);
  const [od, wall, between, from, to] = (['od', 'wall', 'between', 'from', 'to'] as const).map((k) =>
    lengths.value(k),
  );
  const wrong = tubeFault(od, wall) ?? placeFault(between, from, to);
  const clockNo = clock === '' ? undefined : Number(clock);
  const meets = (side: 'near' | 'far'): readonly CopeTube[] => {
    const other = lengths.value(side === 'near' ? 'odNear' : 'odFar');
    const angle = Number(angles[side].replace(',', '.'));
    return other === undefined || !(angle > 0 && angle < 180)
      ? []
      : [benchTube(side === 'near' ? 'tube at A' : 'tube at B', other, degToRad(angle))];
  };
  const depth = lengths.value('depth');
  const around = lengths.value('around');
  const piece = wrong
    ? null
    : benchPiece({
        tube: { odIn: od!, wallIn: wall! },
        material,
        betweenClustersIn: between!,
        damageFromIn: from!,
        damageToIn: to!,
        cracked,
        meets: [meets('near'), meets('far')],
        ...(clockNo === undefined ? {} : { clock: clockNo }),
        dent: {
          ...(depth === undefined ? {} : { depthIn: depth }),
          ...(around === undefined ? {} : { aroundIn: around }),
        },
      });
  const designs = piece ? designsOf(piece) : [];
  const design = designs.find((d) => d.method === method);
  return (
    <div className="stack">
      <h2>Bench sums</h2>
      <p className="soft">
        One tube, no job: what fits, where to cut, sleeve, template, straightening. Nothing here is kept in a
        record.
      </p>
      <section className="stack tight" aria-label="The tube">
        <h3>The tube</h3>
        <div className="fields">
          <LengthField label="Outside diameter" {...lengths.field('od')} />
          <LengthField label="Wall" {...lengths.field('wall')} />
          <label className="field">
            <span className="caption">Material</span>
            <select value={material} onChange={(e) => setMaterial(e.target.value)}>
              {materials.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
              <option value="not known">not known</option>
            </select>
          </label>
          <LengthField label="Between the welds" {...lengths.field('between')} />
        </div>
      </section>
      <section className="stack tight" aria-label="The damage">
        <h3>The damage</h3>
        <div className="fields">
          <LengthField label="Begins at, from end A" {...lengths.field('from')} />
          <LengthField label="Ends at, from end A" {...lengths.field('to')} />
          <ClockSelect label="On the side at" value={clock} onChange={setClock} />
          <LengthField label="Depth of a dent" {...lengths.field('depth')} />
          <LengthField label="Width round the tube" {...lengths.field('around')} />
        </div>
        <label className="check">
          <input type="checkbox" checked={cracked} onChange={(e) => setCracked(e.target.checked)} />
          Cracked
        </label>
      </section>
      <details>
        <summary>What the ends meet, for copes</summary>
        <div className="fields">
          {(['near', 'far'] as const).map((side) => (
            <div key={side} className="stack tight">
              <LengthField
                label={`OD met at end ${side === 'near' ? 'A' : 'B'}`}
                {...lengths.field(side === 'near' ? 'odNear' : 'odFar')}
              />
              <label className="field">
                <span className="caption">Angle there, degrees</span>
                <input
                  type="text"
                  inputMode="decimal"
                  value={angles[side]}
                  onChange={(e) => setAngles({ ...angles, [side]: e.target.value })}
                />
              </label>
            </div>
          ))}
        </div>
      </details>
      {wrong && (
        <p className="notice" role="status">
          {wrong}
        </p>
      )}
      {piece && (
        <section className="stack" aria-label="What fits">
          <h3>What fits here</h3>
          <Cautions step="generalRules" />
          <Methods piece={piece} designs={designs} open={method} onOpen={setMethod} />
          {design && <MethodSheet piece={piece} design={design} />}
          {design?.plan && <BenchTemplates piece={piece} design={design} />}
        </section>
      )}
      {!wrong && (
        <BenchPress
          od={od!}
          wall={wall!}
          between={between!}
          material={material}
          clock={clockNo}
          lengths={lengths}
        />
      )}
      <button type="button" className="link back" onClick={() => setView({ route: 'start' })}>
        ‹ Start
      </button>
    </div>
  );
};

const tubeFault = (od: number | undefined, wall: number | undefined): string | null =>
  !od || !wall
    ? 'Enter the outside diameter and the wall.'
    : wall > od / 2
      ? 'The wall is more than half the diameter.'
      : null;

const placeFault = (
  between: number | undefined,
  from: number | undefined,
  to: number | undefined,
): string | null =>
  !between || from === undefined || to === undefined
    ? 'Enter the length between the welds, and where the damage begins and ends.'
    : to < from
      ? 'The damage ends before it begins.'
      : to > between
        ? 'The damage goes past end B.'
        : null;

const BenchPress = ({
  od,
  wall,
  between,
  material,
  clock,
  lengths,
}: {
  readonly od: number;
  readonly wall: number;
  readonly between: number;
  readonly material: string;
  readonly clock: number | undefined;
  readonly lengths: ReturnType<typeof useLengths<Key>>;
}) => {
  const units = usePrefs((prefs) => prefs.units);
  const [shape, setShape] = useState<'' | 'smooth' | 'kinked'>('');
  const bow = lengths.value('bow');
  const at = lengths.value('bowAt') ?? between / 2;
  const span = lengths.value('span');
  const pressed = useMemo(
    () =>
      bow === undefined || bow <= 0 || at > between
        ? null
        : benchStraighten({
            tube: { odIn: od, wallIn: wall },
            material,
            betweenClustersIn: between,
            bowIn: bow,
            atIn: at,
            ...(shape === '' ? {} : { shape }),
            ...(clock === undefined ? {} : { clock }),
            ...(span === undefined || span <= 0 ? {} : { spanIn: span }),
          }),
    [od, wall, between, material, clock, bow, at, span, shape],
  );
  return (
    <section className="stack tight" aria-label="Straightening">
      <h3>Straightening</h3>
      <div className="fields">
        <LengthField label="Bow" hint="depth over the whole length" {...lengths.field('bow')} />
        <LengthField label="Greatest at, from end A" hint="empty: the middle" {...lengths.field('bowAt')} />
        <LengthField label="Blocks apart" hint="empty: two thirds" {...lengths.field('span')} />
        <label className="field">
          <span className="caption">Shape</span>
          <select value={shape} onChange={(e) => setShape(e.target.value as typeof shape)}>
            <option value="">by its place</option>
            <option value="smooth">{shapeWords.smooth}</option>
            <option value="kinked">{shapeWords.kinked}</option>
          </select>
        </label>
      </div>
      {bow !== undefined && bow > 0 && !pressed && (
        <p className="notice">
          {at > between
            ? 'The bow lies past end B.'
            : 'The strength of this material is not known: no press is worked.'}
        </p>
      )}
      {pressed && (
        <>
          <Cautions step="straightening" />
          <Cautions step="heating" />
          <div className="figures">
            <FigureLine name="Yield strength taken" figure={pressed.yieldPsi} />
            <PlainLine name="Shape">{shapeWords[pressed.fit.shape]}</PlainLine>
            <PlainLine name="Ram’s side: on the crown">{clockText(pressed.fit.clock)}</PlainLine>
          </div>
          {pressed.setups.length === 0 && (
            <p className="notice">
              {pressed.fit.bowIn.value <= 1 / 64
                ? 'Nothing left to press.'
                : 'No set-up takes this bow out without a hinge: it wants another way.'}
            </p>
          )}
          {pressed.setups.map((setup) => (
            <details key={setup.no} open={setup.no === 1}>
              <summary>
                <strong>{setup.no}.</strong> ram at {showLength(setup.atIn, units)}, press{' '}
                {showFigure(setup.press.pressIn, units)}
              </summary>
              <SetUpCard
                fit={pressed.fit}
                setup={setup}
                lengthIn={between}
                ends={['A', 'B']}
                name={`Set-up ${setup.no}`}
              />
            </details>
          ))}
        </>
      )}
    </section>
  );
};
