import type { EndWord, Model } from '../../core/job/modelSchema.ts';
import type { Member } from '../../core/truss/result.ts';
import { materials } from '../../core/truss/stock.ts';
import { memberLine } from '../../present/words/names.ts';
import { tubeInHandText as text } from '../text/modelHand.ts';
import { changeModel, setDraft, useDraft } from './draft.ts';
import { asDrawn } from './drawn.ts';
import { ChoiceCell, NumberCell, TextCell, TubeField } from './fields.tsx';

type Row = Model['members'][number];

const endWords = [
  ['welded', text.ends.welded],
  ['ball', text.ends.ball],
] as const satisfies readonly (readonly [EndWord, string])[];

const sectionWords = text.numbers satisfies Record<keyof NonNullable<Row['section']>, string>;

/** A row without the fields that are left to the table again. */
const without = (row: Row, field: keyof Row): Row => {
  const { [field]: _, ...rest } = row;
  return rest as Row;
};

/** The row that says something of its own about a tube, and where it stands. */
const ownRow = (model: Model, member: Member): { readonly at: number; readonly row: Row | undefined } => {
  const at = model.members.findIndex(
    (m) => (m.id ?? `${m.from}-${m.to}`) === member.id || (m.from === member.from && m.to === member.to),
  );
  return { at, row: model.members[at] };
};

/** A tube touched: its size, ends, material, numbers of its own, what is near it; each undoable by itself. */
export const TubeInHand = ({ member }: { readonly member: Member }) => {
  const model = useDraft((draft) => draft.model);
  const { at, row: own } = ownRow(model, member);
  const base: Row = own ?? { from: member.from, to: member.to };
  const put = <Field extends keyof Row>(field: Field, value: Row[Field] | undefined, what: string): void => {
    const row = value === undefined ? without(base, field) : { ...base, [field]: value };
    changeModel([{ kind: 'setMember', row }], text.changed(what, member.id), `${what} ${member.id}`);
  };
  const turned = own !== undefined && own.from !== member.from;
  const setEnd = (k: 0 | 1, word: EndWord): void => {
    const ends: [EndWord, EndWord] = [...member.ends];
    ends[k] = word;
    put('ends', turned ? [ends[1], ends[0]] : ends, 'ends');
  };
  const setNumber = (field: keyof typeof sectionWords, value: number | undefined): void => {
    const { [field]: _, ...rest } = base.section ?? {};
    const section = value === undefined ? rest : { ...rest, [field]: value };
    put('section', Object.keys(section).length === 0 ? undefined : section, text.what.numbers);
  };
  return (
    <>
      <p>
        <strong>{memberLine(member)}</strong> · {asDrawn(member.lengthIn, model.drawnIn)} {model.drawnIn}
      </p>
      <div className="row">
        <TubeField
          label={text.size(member.id)}
          tube={member.tube}
          onTube={(tube) => put('tube', tube ?? undefined, 'size')}
        />
        {own && (
          <button
            type="button"
            onClick={() => changeModel([{ kind: 'removeMember', at }], text.wasAsTable(member.id))}
          >
            {text.asTable}
          </button>
        )}
        <button
          type="button"
          onClick={() => {
            const gone = own ? [{ kind: 'removeMember', at } as const] : [];
            const omit = [{ kind: 'omit', id: member.id } as const];
            // An added tube is only taken out: the pattern does not make it.
            const patterned =
              /^[UL]\d+[a-z]?[LRC]-[UL]\d+[a-z]?[LRC]$/.test(member.id) && member.role !== 'other';
            if (changeModel(patterned || !own ? [...gone, ...omit] : gone, text.leftOut(member.id)))
              setDraft({ picked: [] });
          }}
        >
          {text.leaveOut}
        </button>
      </div>
      <details>
        <summary>{text.more}</summary>
        <div className="fields narrow-fields">
          {([member.from, member.to] as const).map((end, k) => (
            <ChoiceCell
              key={end}
              shown={text.end(end)}
              label={text.endNamed(member.id, end)}
              value={member.ends[k === 0 ? 0 : 1]}
              words={endWords}
              onWord={(word) => setEnd(k === 0 ? 0 : 1, word)}
            />
          ))}
          <label className="check">
            <input
              type="checkbox"
              checked={member.bolted}
              onChange={(e) => put('bolted', e.target.checked || undefined, 'bolts')}
            />
            {text.bolted}
          </label>
          <NumberCell
            shown={text.fixity}
            label={text.fixityNamed(member.id)}
            value={own?.fixity}
            hint="1"
            onNumber={(value) => put('fixity', value, 'fixity')}
          />
          <ChoiceCell
            shown={text.material}
            label={text.materialNamed(member.id)}
            value={own?.material ?? ''}
            words={[
              ['', text.asModel] as const,
              ...materials.map(({ id, name }) => [id as string, name] as const),
            ]}
            onWord={(word) => put('material', word === '' ? undefined : word, 'material')}
          />
          <TextCell
            shown={text.near}
            label={text.nearNamed(member.id)}
            value={member.near.join(', ')}
            hint={text.nearHint}
            onText={(typed) => {
              const near = typed.split(',').flatMap((one) => one.trim() || []);
              put('near', near.length === 0 ? undefined : near, text.what.near);
            }}
          />
          <TextCell
            shown={text.shopNumber}
            label={text.shopNumberNamed(member.id)}
            value={own?.shopNumber ?? ''}
            onText={(typed) => put('shopNumber', typed === '' ? undefined : typed, text.what.shopNumber)}
          />
        </div>
        <details>
          <summary>{text.own}</summary>
          <div className="fields narrow-fields">
            {(Object.keys(sectionWords) as (keyof typeof sectionWords)[]).map((field) => (
              <NumberCell
                key={field}
                shown={sectionWords[field]}
                label={text.ownNamed(member.id, sectionWords[field])}
                value={own?.section?.[field]}
                hint={String(Number(member.section[field].toPrecision(4)))}
                onNumber={(value) => setNumber(field, value)}
              />
            ))}
          </div>
          <p className="small soft">{text.ownEmpty}</p>
        </details>
      </details>
    </>
  );
};
