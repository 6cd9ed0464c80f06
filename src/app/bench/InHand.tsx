import { distance } from '../../core/base/vec3.ts';
import { type Origin, origins } from '../../core/job/modelSchema.ts';
import type { Cluster, Member } from '../../core/truss/result.ts';
import { clusterLine, memberLine } from '../../present/words/names.ts';
import { changeModel, pickOnBench, setDraft, useDraft, useDraftTruss } from './draft.ts';
import { asDrawn } from './drawn.ts';
import { LengthCell, TextCell, TubeField } from './fields.tsx';
import { originWords } from './StationTable.tsx';

const TubeInHand = ({ member }: { readonly member: Member }) => {
  const model = useDraft((draft) => draft.model);
  const row = model.members.findIndex(
    (m) => (m.id ?? `${m.from}-${m.to}`) === member.id || (m.from === member.from && m.to === member.to),
  );
  const own = model.members[row];
  return (
    <>
      <p>
        <strong>{memberLine(member)}</strong> · {asDrawn(member.lengthIn, model.drawnIn)} {model.drawnIn}
      </p>
      <div className="row">
        <TubeField
          label={`Size of ${member.id}`}
          tube={member.tube}
          onTube={(tube) => {
            const base = own ?? { from: member.from, to: member.to };
            const { tube: _, ...rest } = base;
            changeModel(
              [{ kind: 'setMember', row: tube ? { ...rest, tube } : rest }],
              `size of ${member.id}`,
              `member ${member.id}`,
            );
          }}
        />
        {own && (
          <button
            type="button"
            onClick={() =>
              changeModel([{ kind: 'removeMember', at: row }], `${member.id} as the table has it`)
            }
          >
            As the table has it
          </button>
        )}
        <button
          type="button"
          onClick={() => {
            const gone = own ? [{ kind: 'removeMember', at: row } as const] : [];
            const omit = [{ kind: 'omit', id: member.id } as const];
            // An added tube is only taken out: the pattern does not make it.
            const patterned =
              /^[UL]\d+[a-z]?[LRC]-[UL]\d+[a-z]?[LRC]$/.test(member.id) && member.role !== 'other';
            if (changeModel(patterned || !own ? [...gone, ...omit] : gone, `${member.id} left out`))
              setDraft({ picked: [] });
          }}
        >
          Leave it out
        </button>
      </div>
    </>
  );
};

const PointInHand = ({ cluster }: { readonly cluster: Cluster }) => {
  const model = useDraft((draft) => draft.model);
  const row = model.clusters.find((c) => c.id === cluster.id);
  const put = (
    set: Partial<Pick<Cluster, 'at' | 'fitting' | 'origin'>> & { readonly drawing?: true },
    what: string,
  ): void => {
    const { assumed: _, origin: old, ...rest } = row ?? { id: cluster.id };
    const origin = set.drawing ? undefined : (set.origin ?? old ?? cluster.origin);
    const fitting = set.fitting ?? cluster.fitting;
    changeModel(
      [
        {
          kind: 'setCluster',
          row: {
            ...rest,
            id: cluster.id,
            at: [...(set.at ?? cluster.at)] as [number, number, number],
            ...(fitting ? { fitting } : {}),
            ...(origin ? { origin } : {}),
          },
        },
      ],
      `${what} of ${cluster.id}`,
      `${what} ${cluster.id}`,
    );
  };
  return (
    <>
      <p>
        <strong>{clusterLine(cluster)}</strong>
      </p>
      <div className="row">
        {(['station', 'butt line', 'water line'] as const).map((axis, k) => (
          <LengthCell
            key={axis}
            shown={axis}
            label={`${cluster.id}, ${axis}`}
            valueIn={cluster.at[k]}
            onValue={(v) => {
              if (v !== undefined)
                put({ at: cluster.at.map((o, i) => (i === k ? v : o)) as unknown as Cluster['at'] }, axis);
            }}
          />
        ))}
        <div className="field">
          <label htmlFor="in-hand-origin">place from</label>
          <select
            id="in-hand-origin"
            value={cluster.origin ?? 'drawing'}
            onChange={(e) => {
              const origin = e.target.value as Origin;
              put(origin === 'drawing' ? { drawing: true } : { origin }, 'origin');
            }}
          >
            {origins.map((origin) => (
              <option key={origin} value={origin}>
                {originWords[origin]}
              </option>
            ))}
          </select>
        </div>
        <TextCell
          shown="what sits there"
          label={`${cluster.id}, fitting`}
          value={cluster.fitting ?? ''}
          onText={(fitting) => put({ fitting }, 'fitting')}
        />
      </div>
      <p className="small soft">Touch another cluster to join the two with a tube.</p>
    </>
  );
};

/** What was touched in the picture, and what can be done with it. */
export const InHand = () => {
  const picked = useDraft((draft) => draft.picked);
  const drawnIn = useDraft((draft) => draft.model.drawnIn);
  const truss = useDraftTruss();
  const [a, b] = picked;
  const member = truss.members.find((m) => m.id === a);
  const [from, to] = [truss.clusters.find((c) => c.id === a), truss.clusters.find((c) => c.id === b)];
  if (!member && !from) return null;
  return (
    <section className="bench-hand" aria-label="In hand">
      <button
        type="button"
        className="quiet bench-hand-close"
        aria-label="Lay it down"
        onClick={() => pickOnBench(null)}
      >
        ×
      </button>
      {member && <TubeInHand key={member.id} member={member} />}
      {from && !to && <PointInHand key={from.id} cluster={from} />}
      {from && to && (
        <>
          <p>
            <strong>
              {from.id} and {to.id}
            </strong>
            , {asDrawn(distance(from.at, to.at), drawnIn)} {drawnIn} apart
          </p>
          <div className="row">
            <button
              type="button"
              className="main"
              onClick={() => {
                if (
                  changeModel(
                    [{ kind: 'setMember', row: { from: from.id, to: to.id } }],
                    `tube ${from.id} to ${to.id}`,
                  )
                )
                  setDraft({ picked: [] });
              }}
            >
              Join them with a tube
            </button>
          </div>
        </>
      )}
    </section>
  );
};
