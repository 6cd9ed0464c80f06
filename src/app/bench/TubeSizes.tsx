import { useState } from 'react';
import { type Model, type Role, roles, type Tube } from '../../core/job/modelSchema.ts';
import type { ModelChange } from '../../core/truss/modelEdit.ts';
import { materials, stockSource } from '../../core/truss/stock.ts';
import { faceWords, roleWords } from '../../present/words/names.ts';
import { sizesText, otherSizesText as text } from '../text/modelSizes.ts';
import { changeModel, useDraft, useDraftTruss } from './draft.ts';
import { tubeAsDrawn } from './drawn.ts';
import { ChoiceCell, TextCell, TubeField } from './fields.tsx';
import { EnteredRows } from './Lists.tsx';

type Override = Model['tubes']['overrides'][number];

const whereWords = (o: Override): string =>
  [
    o.member && text.tubeOf(o.member),
    o.bay && text.bayOf(o.bay),
    o.station && text.stationOf(o.station),
    o.face && faceWords[o.face],
    o.role && text.kinds(roleWords[o.role]),
  ]
    .filter(Boolean)
    .join(', ') || text.everyTube;

const Overrides = () => {
  const model = useDraft((draft) => draft.model);
  const [where, setWhere] = useState('');
  const [role, setRole] = useState('');
  const [member, setMember] = useState('');
  const [tube, setTube] = useState<Tube | null>(null);
  const [face, setFace] = useState('');
  const [editing, setEditing] = useState<number | null>(null);
  const [kind, label] = where.split(' ');
  const clear = (): void => {
    setTube(null);
    setMember('');
    setEditing(null);
  };
  const edit = (o: Override, at: number): void => {
    setWhere(
      o.member !== undefined
        ? 'member'
        : o.bay !== undefined
          ? `bay ${o.bay}`
          : o.station !== undefined
            ? `station ${o.station}`
            : 'everywhere',
    );
    setMember(o.member ?? '');
    setRole(o.role ?? '');
    setFace(o.face ?? '');
    setTube(o.tube);
    setEditing(at);
  };
  const move = (o: Override, at: number, by: -1 | 1): void => {
    setEditing(null);
    changeModel([{ kind: 'moveOverride', at, by }], text.orderOf(whereWords(o)));
  };
  const override: Override | null = tube && {
    ...(kind === 'bay' || kind === 'station' ? { [kind]: label } : {}),
    ...(kind === 'member' ? { member } : {}),
    ...(role === '' || kind === 'member' ? {} : { role: role as Role }),
    ...(face === '' || kind === 'member' ? {} : { face: face as NonNullable<Override['face']> }),
    tube,
  };
  const ready =
    override !== null &&
    where !== '' &&
    (kind !== 'member' || member !== '') &&
    (kind !== 'everywhere' || role !== '' || face !== '');
  return (
    <section className="stack tight" aria-label={text.title}>
      <h3>{text.title}</h3>
      {model.tubes.overrides.length === 0 && <p className="soft">{text.none}</p>}
      <EnteredRows
        rows={model.tubes.overrides}
        nameOf={(o) => text.named(whereWords(o))}
        show={(o) => (
          <>
            {whereWords(o)}: <strong>{tubeAsDrawn(o.tube, model.drawnIn)}</strong>
          </>
        )}
        deeds={[
          [text.deeds.change, (o, at) => () => edit(o, at)],
          [text.deeds.earlier, (o, at) => (at === 0 ? null : () => move(o, at, -1))],
          [
            text.deeds.later,
            (o, at) => (at === model.tubes.overrides.length - 1 ? null : () => move(o, at, 1)),
          ],
          [
            text.deeds.takeOut,
            (o, at) => () => {
              setEditing(null);
              changeModel([{ kind: 'removeOverride', at }], text.changed(whereWords(o)));
            },
          ],
        ]}
      />
      {model.tubes.overrides.length > 1 && <p className="small soft">{text.laterCounts}</p>}
      <div className="fields">
        <label className="field">
          <span className="caption">{text.where}</span>
          <select value={where} onChange={(e) => setWhere(e.target.value)}>
            <option value="">{text.choose}</option>
            <option value="member">{text.oneTube}</option>
            <option value="everywhere">{text.everywhere}</option>
            <optgroup label={text.bays}>
              {model.stations.slice(0, -1).map((s) => (
                <option key={s.label} value={`bay ${s.label}`}>
                  {text.bay(s.label)}
                </option>
              ))}
            </optgroup>
            <optgroup label={text.across}>
              {model.stations.map((s) => (
                <option key={s.label} value={`station ${s.label}`}>
                  {text.station(s.label)}
                </option>
              ))}
            </optgroup>
          </select>
        </label>
        {kind === 'member' ? (
          <TextCell
            shown={text.tube}
            label={text.tubeNamed}
            value={member}
            list="bench-members"
            onText={setMember}
          />
        ) : (
          <>
            <ChoiceCell
              shown={text.which}
              label={text.which}
              value={role}
              words={[
                ['', text.allOfThem] as const,
                ...roles.map((one) => [one as string, roleWords[one]] as const),
              ]}
              onWord={setRole}
            />
            <ChoiceCell
              shown={text.face}
              label={text.face}
              value={face}
              words={[
                ['', text.anyFace] as const,
                ...Object.entries(faceWords).map(([one, words]) => [one, words] as const),
              ]}
              onWord={setFace}
            />
          </>
        )}
        <TubeField shown={text.size} label={text.sizeNamed} tube={tube ?? undefined} onTube={setTube} />
        <button
          type="button"
          className="end"
          disabled={!ready}
          onClick={() => {
            if (!override) return;
            const change: ModelChange =
              editing === null
                ? { kind: 'addOverride', override }
                : { kind: 'setOverride', at: editing, override };
            if (changeModel([change], text.changed(whereWords(override)))) clear();
          }}
        >
          {editing === null ? text.add : text.change}
        </button>
        {editing !== null && (
          <button type="button" className="end" onClick={clear}>
            {text.leave}
          </button>
        )}
      </div>
    </section>
  );
};

/** Tube sizes by kind, with the sizes that differ here and there. */
export const TubeSizes = () => {
  const model = useDraft((draft) => draft.model);
  const truss = useDraftTruss();
  const count = (role: Role): number => truss.members.filter((m) => m.role === role).length;
  return (
    <div className="stack">
      <p className="soft">{sizesText.lead}</p>
      <div className="fields sizes">
        {roles.map((role) => (
          <TubeField
            key={role}
            shown={sizesText.row(role === 'other' ? sizesText.other : roleWords[role], count(role))}
            label={sizesText.named(roleWords[role])}
            tube={model.tubes.roles[role]}
            onTube={(tube) =>
              changeModel(
                [{ kind: 'setTube', role, tube }],
                sizesText.changed(roleWords[role]),
                `size ${role}`,
              )
            }
          />
        ))}
        <label className="field">
          <span className="caption">{sizesText.material}</span>
          <select
            value={model.tubes.material}
            onChange={(e) =>
              changeModel([{ kind: 'setMaterial', material: e.target.value }], sizesText.wasMaterial)
            }
          >
            {materials.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
      </div>
      <Overrides />
      <p className="small soft">{stockSource}</p>
    </div>
  );
};
