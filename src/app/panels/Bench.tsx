import { useState } from 'react';
import { degToRad } from '../../core/base/units.ts';
import { benchTube } from '../../core/splice/fishmouth.ts';
import { benchPiece } from '../../core/splice/piece.ts';
import type { CopeTube, Method } from '../../core/splice/result.ts';
import { designsOf } from '../../core/splice/splice.ts';
import { materials } from '../../core/truss/stock.ts';
import { Cautions } from '../parts/Caution.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { useLengths } from '../parts/useLengths.ts';
import { setView } from '../state/view.ts';
import { benchText } from '../text/bench.ts';
import { BenchPress } from './BenchPress.tsx';
import type { BenchLength } from './benchLengths.ts';
import { ClockSelect } from './ClockSelect.tsx';
import { MethodSheet, Methods } from './SpliceMethods.tsx';
import { BenchTemplates } from './Templates.tsx';

/** Stands for a material that no stock list names. */
const NO_MATERIAL = 'not known';

/** One tube without a job: fit, cut card, sleeve, template and straightening, by the same sums as a member of a truss. */
export const BenchPanel = () => {
  const lengths = useLengths<BenchLength>({ od: '1', wall: '.035', between: '28', from: '12', to: '14' });
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
      : [benchTube(benchText.tubeAt(side === 'near' ? 'A' : 'B'), other, degToRad(angle))];
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
      <h2>{benchText.title}</h2>
      <p className="soft">{benchText.lead}</p>
      <section className="stack tight" aria-label={benchText.tube}>
        <h3>{benchText.tube}</h3>
        <div className="fields">
          <LengthField label={benchText.od} {...lengths.field('od')} />
          <LengthField label={benchText.wall} {...lengths.field('wall')} />
          <label className="field">
            <span className="caption">{benchText.material}</span>
            <select value={material} onChange={(e) => setMaterial(e.target.value)}>
              {materials.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
              <option value={NO_MATERIAL}>{benchText.notKnown}</option>
            </select>
          </label>
          <LengthField label={benchText.between} {...lengths.field('between')} />
        </div>
      </section>
      <section className="stack tight" aria-label={benchText.damage}>
        <h3>{benchText.damage}</h3>
        <div className="fields">
          <LengthField label={benchText.begins} {...lengths.field('from')} />
          <LengthField label={benchText.ends} {...lengths.field('to')} />
          <ClockSelect label={benchText.side} value={clock} onChange={setClock} />
          <LengthField label={benchText.depth} {...lengths.field('depth')} />
          <LengthField label={benchText.width} {...lengths.field('around')} />
        </div>
        <label className="check">
          <input type="checkbox" checked={cracked} onChange={(e) => setCracked(e.target.checked)} />
          {benchText.cracked}
        </label>
      </section>
      <details>
        <summary>{benchText.meets}</summary>
        <div className="fields">
          {(['near', 'far'] as const).map((side) => (
            <div key={side} className="stack tight">
              <LengthField
                label={benchText.odMet(side === 'near' ? 'A' : 'B')}
                {...lengths.field(side === 'near' ? 'odNear' : 'odFar')}
              />
              <label className="field">
                <span className="caption">{benchText.angle}</span>
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
        <section className="stack" aria-label={benchText.fitsNamed}>
          <h3>{benchText.fits}</h3>
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
        {benchText.back}
      </button>
    </div>
  );
};

const tubeFault = (od: number | undefined, wall: number | undefined): string | null =>
  !od || !wall ? benchText.tubeWanted : wall > od / 2 ? benchText.wallTooThick : null;

const placeFault = (
  between: number | undefined,
  from: number | undefined,
  to: number | undefined,
): string | null =>
  !between || from === undefined || to === undefined
    ? benchText.placesWanted
    : to < from
      ? benchText.endsFirst
      : to > between
        ? benchText.pastEnd
        : null;
