import { useState } from 'react';
import { type Model, type Role, roles, type Tube } from '../../core/job/modelSchema.ts';
import { materials, stockSource } from '../../core/truss/stock.ts';
import { faceWords, roleWords } from '../../present/words/names.ts';
import { changeModel, useDraft, useDraftTruss } from './draft.ts';
import { tubeAsDrawn } from './drawn.ts';
import { TextCell, TubeField } from './fields.tsx';

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
  const [kind, label] = where.split(' ');
  const override: Override | null = tube && {
    ...(kind === 'bay' || kind === 'station' ? { [kind]: label } : {}),
    ...(kind === 'member' ? { member } : {}),
    ...(role === '' || kind === 'member' ? {} : { role: role as Role }),
    tube,
  };
  const ready = override !== null && where !== '' && (kind !== 'member' || member !== '');
  return (
    <section className="stack tight" aria-label="Other sizes here and there">
      <h3>Other sizes here and there</h3>
      {model.tubes.overrides.length === 0 ? (
        <p className="soft">None: every tube has the size of its kind.</p>
      ) : (
        <ul className="entries">
          {model.tubes.overrides.map((o, k) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name but their place
            <li key={k} className="entry-head">
              <span>
                {whereWords(o)}: <strong>{tubeAsDrawn(o.tube, model.drawnIn)}</strong>
              </span>
              <button
                type="button"
                className="link"
                aria-label={`Take out the size for ${whereWords(o)}`}
                onClick={() => changeModel([{ kind: 'removeOverride', at: k }], `size for ${whereWords(o)}`)}
              >
                Take out
              </button>
            </li>
          ))}
        </ul>
      )}
      <div className="fields">
        <label className="field">
          <span className="caption">Where</span>
          <select value={where} onChange={(e) => setWhere(e.target.value)}>
            <option value="">Choose …</option>
            <option value="member">One tube, by its id</option>
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
          <label className="field">
            <span className="caption">Which tubes there</span>
            <select value={role} onChange={(e) => setRole(e.target.value)}>
              <option value="">All of them</option>
              {roles.map((one) => (
                <option key={one} value={one}>
                  {roleWords[one]}
                </option>
              ))}
            </select>
          </label>
        )}
        <TubeField shown="Size" label="Other size" tube={tube ?? undefined} onTube={setTube} />
        <button
          type="button"
          className="end"
          disabled={!ready}
          onClick={() => {
            if (
              override &&
              changeModel([{ kind: 'addOverride', override }], `size for ${whereWords(override)}`)
            ) {
              setTube(null);
              setMember('');
            }
          }}
        >
          Add this size
        </button>
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
