import { heading } from '../record/heading.ts';
import type { Part, TagLabel } from '../record/sections.ts';
import type { Showing } from '../tables/showing.ts';
import { choiceWords, tags } from '../tags.ts';
import { clusterWords, memberWords } from '../words/names.ts';
import { gateLine } from '../words/planGates.ts';

/** What the code of a tag says: the id first, then the job, as plain text that any reader shows. */
export const tagCode = (id: string, job: string): string => `${id} · ${job.slice(0, 48)}`;

/** Chalk key and tags to cut out: one for every tube or cluster with a finding, a decision or a second look due. */
export const tagSheets = (showing: Showing, side: string): readonly Part[] => {
  const { truss, coverage, plan } = showing.assessment;
  const members = new Map(truss.members.map((m) => [m.id, m]));
  const labels = coverage.marks
    .filter(({ state }) => state !== 'lookedAt' && state !== 'notLookedAt')
    .map((mark): TagLabel => {
      const tag = tags[mark.state];
      const member = members.get(mark.id);
      const next = plan.gates.find(
        (g) => g.of === mark.id && g.state !== 'done' && g.state !== 'openedByName',
      );
      return {
        id: mark.id,
        words: member ? memberWords(member) : clusterWords(mark.id),
        chalk: tag.chalk,
        glyph: tag.glyph === 'damage' ? 'otherQuery' : tag.glyph,
        decision: mark.choice ? choiceWords[mark.choice] : tag.word,
        next: next ? `Next hold: ${gateLine({ name: next.name })}` : `${showing.job.name}`,
        code: tagCode(mark.id, showing.job.name),
      };
    });
  return [
    {
      lie: 'upright',
      side,
      sections: [
        heading(
          'Chalk key',
          'Two letters in chalk on the tube; the same letters, pattern and sign stand in the maps.',
        ),
        { kind: 'counts', coverage },
        heading(
          'Tags',
          'Cut out and tie on. A tablet that reads the code gets the id and the job as plain text, without network; type or paste the id into the find box.',
        ),
        { kind: 'tags', tags: labels },
      ],
    },
  ];
};
