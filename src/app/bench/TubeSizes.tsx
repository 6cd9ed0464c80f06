import { useState } from 'react';
import { type Model, type Role, roles, type Tube } from '../../core/job/modelSchema.ts';
import type { ModelChange } from '../../core/truss/modelEdit.ts';
import { materials, stockSource } from '../../core/truss/stock.ts';
import { faceWords, roleWords } from '../../present/words/names.ts';
import { changeModel, useDraft, useDraftTruss } from './draft.ts';
import { tubeAsDrawn } from './drawn.ts';
import { ChoiceCell, TextCell, TubeField } from './fields.tsx';
import { EnteredRows } from './Lists.tsx';

type Override = Model['tubes']['overrides'][number];

const whereWords = (o: Override): string =>
  [
    o.member && `tube ${o.member}`,
    o.bay && `bay ${o.bay}`,
    o.station && `station ${o.station}`,
    o.face && faceWords[o.face],
    o.role && `${roleWords[o.role].toLowerCase()}s`,
  ]
    .filter(Boolean)
    .join(', ') || 'every tube';

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
    changeModel([{ kind: 'moveOverride', at, by }], `order of the size for ${whereWords(o)}`);
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
    <section className="stack tight" aria-label="Other sizes here and there">
      <h3>Other sizes here and there</h3>
      {model.tubes.overrides.length === 0 && (
        <p className="soft">None: every tube has the size of its kind.</p>
      )}
      <EnteredRows
        rows={model.tubes.overrides}
        nameOf={(o) => `the size for ${whereWords(o)}`}
        show={(o) => (
          <>
            {whereWords(o)}: <strong>{tubeAsDrawn(o.tube, model.drawnIn)}</strong>
          </>
        )}
        deeds={[
          ['Change', (o, at) => () => edit(o, at)],
          ['Earlier', (o, at) => (at === 0 ? null : () => move(o, at, -1))],
          ['Later', (o, at) => (at === model.tubes.overrides.length - 1 ? null : () => move(o, at, 1))],
          [
            'Take out',
            (o, at) => () => {
              setEditing(null);
              changeModel([{ kind: 'removeOverride', at }], `size for ${whereWords(o)}`);
            },
          ],
        ]}
      />
      {model.tubes.overrides.length > 1 && (
        <p className="small soft">Where two of them hold for a tube, the later one counts.</p>
      )}
      <div className="fields">
        <label className="field">
          <span className="caption">Where</span>
          <select value={where} onChange={(e) => setWhere(e.target.value)}>
            <option value="">Choose …</option>
            <option value="member">One tube, by its id</option>
            <option value="everywhere">Everywhere on a face or of a kind</option>
            <optgroup label="Bays">
              {model.stations.slice(0, -1).map((s) => (
                <option key={s.label} value={`bay ${s.label}`}>
                  Bay {s.label}
                </option>
              ))}
            </optgroup>
            <optgroup label="Across a station">
              {model.stations.map((s) => (
                <option key={s.label} value={`station ${s.label}`}>
                  Station {s.label}
                </option>
              ))}
            </optgroup>
          </select>
        </label>
        {kind === 'member' ? (
          <TextCell
            shown="Tube"
            label="Tube of its own size"
            value={member}
            list="bench-members"
            onText={setMember}
          />
        ) : (
          <>
            <ChoiceCell
              shown="Which tubes there"
              label="Which tubes there"
              value={role}
              words={[
                ['', 'All of them'] as const,
                ...roles.map((one) => [one as string, roleWords[one]] as const),
              ]}
              onWord={setRole}
            />
            <ChoiceCell
              shown="On which face"
              label="On which face"
              value={face}
              words={[
                ['', 'Any'] as const,
                ...Object.entries(faceWords).map(([one, words]) => [one, words] as const),
              ]}
              onWord={setFace}
            />
          </>
        )}
        <TubeField shown="Size" label="Other size" tube={tube ?? undefined} onTube={setTube} />
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
            if (changeModel([change], `size for ${whereWords(override)}`)) clear();
          }}
        >
          {editing === null ? 'Add this size' : 'Change this size'}
        </button>
        {editing !== null && (
          <button type="button" className="end" onClick={clear}>
            Leave it as it was
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
      <p className="soft">
        Outside diameter × wall, typed or chosen from the list. A kind without a size makes no tubes.
      </p>
      <div className="fields sizes">
        {roles.map((role) => (
          <TubeField
            key={role}
            shown={`${role === 'other' ? 'Other tube' : roleWords[role]} · ${count(role)}`}
            label={`Size of ${roleWords[role].toLowerCase()}`}
            tube={model.tubes.roles[role]}
            onTube={(tube) =>
              changeModel(
                [{ kind: 'setTube', role, tube }],
                `size of ${roleWords[role].toLowerCase()}s`,
                `size ${role}`,
              )
            }
          />
        ))}
        <label className="field">
          <span className="caption">Material</span>
          <select
            value={model.tubes.material}
            onChange={(e) => changeModel([{ kind: 'setMaterial', material: e.target.value }], 'material')}
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
