import { between, distance } from '../../core/base/vec3.ts';
import { origins } from '../../core/job/modelSchema.ts';
import type { Cluster, Truss } from '../../core/truss/result.ts';
import { clusterLine } from '../../present/words/names.ts';
import { inHandText as words } from '../text/modelHand.ts';
import { changeModel, pickOnBench, setDraft, useDraft, useDraftTruss } from './draft.ts';
import { asDrawn } from './drawn.ts';
import { ChoiceCell, LengthCell, TextCell } from './fields.tsx';
import { originWords } from './stationEntry.ts';
import { TubeInHand } from './TubeInHand.tsx';

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
      words.changed(what, cluster.id),
      `${what} ${cluster.id}`,
    );
  };
  return (
    <>
      <p>
        <strong>{clusterLine(cluster)}</strong>
      </p>
      <div className="row">
        {words.axes.map((axis, k) => (
          <LengthCell
            key={axis}
            shown={axis}
            label={words.cell(cluster.id, axis)}
            valueIn={cluster.at[k]}
            onValue={(v) => {
              if (v !== undefined)
                put({ at: cluster.at.map((o, i) => (i === k ? v : o)) as unknown as Cluster['at'] }, axis);
            }}
          />
        ))}
        <ChoiceCell
          shown={words.placeFrom}
          label={words.placeFromNamed(cluster.id)}
          value={cluster.origin ?? 'drawing'}
          words={origins.map((one) => [one, originWords[one]] as const)}
          onWord={(origin) => put(origin === 'drawing' ? { drawing: true } : { origin }, 'origin')}
        />
        <TextCell
          shown={words.sitsThere}
          label={words.cell(cluster.id, 'fitting')}
          value={cluster.fitting ?? ''}
          onText={(fitting) => put({ fitting }, 'fitting')}
        />
      </div>
      <p className="small soft">{words.joinHint}</p>
    </>
  );
};

type Place = [number, number, number];

/** `P1`, or the next that is free; a person may move it, and give it another name in a table. */
const freeName = ({ clusters }: Truss): string => {
  const taken = new Set(clusters.map((c) => c.id));
  let n = 1;
  while (taken.has(`P${n}`)) n += 1;
  return `P${n}`;
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
    <section className="bench-hand" aria-label={words.region}>
      <button
        type="button"
        className="quiet bench-hand-close"
        aria-label={words.layDown}
        onClick={() => pickOnBench(null)}
      >
        ×
      </button>
      {member && <TubeInHand key={member.id} member={member} />}
      {from && !to && <PointInHand key={from.id} cluster={from} />}
      {from && to && (
        <>
          <p>
            <strong>{words.two(from.id, to.id)}</strong>
            {words.apart(asDrawn(distance(from.at, to.at), drawnIn), drawnIn)}
          </p>
          <div className="row">
            <button
              type="button"
              className="main"
              onClick={() => {
                if (
                  changeModel(
                    [{ kind: 'setMember', row: { from: from.id, to: to.id } }],
                    words.joined(from.id, to.id),
                  )
                )
                  setDraft({ picked: [] });
              }}
            >
              {words.join}
            </button>
            <button
              type="button"
              onClick={() => {
                const row = { id: freeName(truss), at: [...between(from.at, to.at, 0.5)] as Place };
                if (changeModel([{ kind: 'setCluster', row }], words.cluster(row.id)))
                  setDraft({ picked: [row.id] });
              }}
            >
              {words.halfWay}
            </button>
          </div>
        </>
      )}
    </section>
  );
};
