import type { Design, Method, Piece, SleeveOffer } from '../../core/splice/result.ts';
import { spliceRule } from '../../core/splice/rules.ts';
import { spliceDrawing } from '../../present/draw/templateSplice.ts';
import { showFigure, showTube } from '../../present/show.ts';
import { sizesOf } from '../../present/tables/splices.ts';
import {
  missingWords,
  scopeWayOut,
  scopeWords,
  sentence,
  sourceOf,
} from '../../present/words/disposition.ts';
import {
  failingLine,
  fitsSigns,
  fitsWords,
  heldLine,
  insertionWords,
  methodLines,
  methodNames,
  partWords,
  sleeveSays,
  spliceCautions,
} from '../../present/words/splice.ts';
import { Drawing } from '../parts/Drawing.tsx';
import { FigureLine, PlainLine } from '../parts/FigureLine.tsx';
import { usePrefs } from '../state/prefs.ts';
import { methodSheetText, methodsText, sleeveText } from '../text/methods.ts';

const endsOf = (piece: Piece): readonly [string, string] => [piece.ends[0].cluster, piece.ends[1].cluster];

/** Every method, in the order of the rules, each with its answer and the number that decides. */
export const Methods = ({
  piece,
  designs,
  open,
  onOpen,
}: {
  readonly piece: Piece;
  readonly designs: readonly Design[];
  readonly open: Method | null;
  readonly onOpen: (method: Method | null) => void;
}) => (
  <div className="stack tight">
    {piece.scope.length > 0 && (
      <div className="notice blocking" role="note">
        <strong>{methodsText.closed(piece.scope.map((s) => scopeWords[s]))}</strong>
        <p className="small">{scopeWayOut}</p>
      </div>
    )}
    <ul className="method-list" aria-label={methodsText.named}>
      {designs.map((design) => (
        <li key={design.method}>
          <button
            type="button"
            className={`method answer-${design.fits}`}
            aria-expanded={open === design.method}
            aria-pressed={open === design.method}
            onClick={() => onOpen(open === design.method ? null : design.method)}
          >
            <span className="sign" aria-hidden="true">
              {fitsSigns[design.fits]}
            </span>
            <span className="method-words">
              <span className="option-name">{methodNames[design.method]}</span>
              <span className="small soft">{methodLines[design.method]}</span>
              <Why piece={piece} design={design} />
            </span>
            <span className="small option-answer">{fitsWords[design.fits]}</span>
          </button>
        </li>
      ))}
    </ul>
  </div>
);

const Why = ({ piece, design }: { readonly piece: Piece; readonly design: Design }) => {
  const units = usePrefs((prefs) => prefs.units);
  const [first] = design.failing;
  const broken = design.rules.find((r) => r.held === false);
  const words =
    design.fits === 'fits'
      ? ''
      : design.closed.length > 0
        ? methodsText.weldClosed(design.closed.map((s) => scopeWords[s]))
        : first
          ? failingLine(first, endsOf(piece), units)
          : broken
            ? sentence(spliceRule(broken.rule).says)
            : design.missing.length > 0
              ? methodsText.missing(design.missing.map((name) => missingWords({ name })))
              : '';
  return words === '' ? null : <span className="small">{words}.</span>;
};

/** One method in full: drawing, dimensions, sleeve by table and by rule, where sleeves wait, every rule held. */
export const MethodSheet = ({ piece, design }: { readonly piece: Piece; readonly design: Design }) => {
  const units = usePrefs((prefs) => prefs.units);
  const ends = endsOf(piece);
  const drawing = spliceDrawing(piece, design, units, 110);
  const sizes = sizesOf({ piece }, design, { units });
  return (
    <section className="stack" aria-label={methodNames[design.method]}>
      <h3>{methodSheetText.title(methodNames[design.method], fitsWords[design.fits])}</h3>
      {design.failing.length > 0 && (
        <ul className="reasons small">
          {design.failing.map((f, k) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: one rule may fail at both ends
            <li key={`${f.rule} ${f.at} ${k}`}>
              {failingLine(f, ends, units)}. <span className="soft">{sourceOf(spliceRule(f.rule))}</span>
            </li>
          ))}
        </ul>
      )}
      {design.missing.length > 0 && (
        <p className="small">
          {methodSheetText.missing(design.missing.map((name) => missingWords({ name })))}
        </p>
      )}
      {design.cautions.map((code) => (
        <p key={code} className="notice caution small" role="note">
          <strong>{methodSheetText.caution}</strong> {spliceCautions[code] ?? code}
        </p>
      ))}
      {drawing && (
        <Drawing drawing={drawing} title={methodSheetText.drawing(methodNames[design.method], piece.id)} />
      )}
      {sizes.length > 0 && (
        <section className="stack tight" aria-label={methodSheetText.dimensions}>
          <h3>{methodSheetText.cutCard}</h3>
          <div className="figures">
            {sizes.map(({ what, figure, tube }) => (
              <FigureLine
                key={what}
                name={tube === undefined ? what : methodSheetText.cutOf(what, tube)}
                figure={figure}
              />
            ))}
          </div>
        </section>
      )}
      <Sleeve piece={piece} design={design} />
      {(design.plan?.insertion.length ?? 0) > 0 && (
        <section className="stack tight" aria-label={methodSheetText.waitNamed}>
          <h3>{methodSheetText.wait}</h3>
          <div className="figures small">
            {design.plan?.insertion.map((one) => (
              <FigureLine
                key={one.part}
                name={methodSheetText.waitOf(partWords(one.part, ends), insertionWords(one, ends))}
                figure={one.needIn}
                text={methodSheetText.needs(showFigure(one.needIn, units))}
              />
            ))}
          </div>
        </section>
      )}
      <details>
        <summary>{methodSheetText.rules(design.rules.length)}</summary>
        <ul className="reasons small">
          {design.rules.map((held, k) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: one rule is held at both ends
            <li key={`${held.rule} ${k}`}>
              {heldLine(held, ends, units)}. <span className="soft">{sourceOf(spliceRule(held.rule))}</span>
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
};

const Offer = ({ offer, name }: { readonly offer: SleeveOffer; readonly name: string }) => {
  const units = usePrefs((prefs) => prefs.units);
  return (
    <li>
      <PlainLine name={name}>{showTube(offer.tube, units)}</PlainLine>
      <FigureLine name={sleeveText.slack} figure={offer.slackIn} />
      {offer.lengthIn && <FigureLine name={sleeveText.length} figure={offer.lengthIn} />}
      {offer.says.length > 0 && (
        <p className="small">{sentence(offer.says.map((s) => sleeveSays[s] ?? s).join('; '))}.</p>
      )}
    </li>
  );
};

const Sleeve = ({ piece, design }: { readonly piece: Piece; readonly design: Design }) => {
  const units = usePrefs((prefs) => prefs.units);
  const { sleeve } = design;
  if (!sleeve) return null;
  const others = sleeve.others.filter((o) => o !== sleeve.chosen && o !== sleeve.byRule).slice(0, 4);
  return (
    <section className="stack tight" aria-label={sleeveText.named}>
      <h3>{sleeveText.title(showTube(piece.tube, units))}</h3>
      <ul className="entries">
        {sleeve.chosen ? (
          <Offer
            offer={sleeve.chosen}
            name={sleeve.chosen.by === 'manual' ? sleeveText.byTableTaken : sleeveText.byRuleTaken}
          />
        ) : (
          <li>{sleeveText.none}</li>
        )}
        {sleeve.byRule && sleeve.chosen !== sleeve.byRule && sleeve.chosen?.by === 'manual' && (
          <Offer offer={sleeve.byRule} name={sleeveText.byRule} />
        )}
      </ul>
      {(others.length > 0 || sleeve.refused.length > 0) && (
        <details>
          <summary>{sleeveText.others}</summary>
          <ul className="reasons small">
            {[...others, ...sleeve.refused].map((o) => (
              <li key={`${o.tube.odIn} ${o.tube.wallIn}`}>
                {sleeveText.other(
                  showTube(o.tube, units),
                  showFigure(o.slackIn, units),
                  o.says.map((s) => sleeveSays[s] ?? s),
                )}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
};
