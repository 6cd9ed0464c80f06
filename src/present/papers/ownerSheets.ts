import type { Part } from '../record/sections.ts';
import type { Showing } from '../tables/showing.ts';

const many = (count: number, one: string, more = `${one}s`): string =>
  count === 1 ? `One ${one}` : `${count} ${more}`;

const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

/** The owner's page, in plain words: no verdict, what is unknown, what happens next. */
export const ownerSheets = (showing: Showing, side: string): readonly Part[] => {
  const { assessment, job } = showing;
  const { coverage, estimate, plan } = assessment;
  const { members } = coverage;
  const unseen = coverage.notLookedAt.members.length;
  const done = plan.steps.filter((s) => s.done).length;
  const older = coverage.findings.filter((f) => f.origin === 'older').length;
  const unknown = coverage.findings.filter((f) => f.origin === 'unknown').length;
  const { bestH, worstH } = estimate.withHidden;
  return [
    {
      lie: 'upright',
      side,
      sections: [
        { kind: 'title', text: 'Your aircraft', under: job.aircraft ?? job.name },
        {
          kind: 'lines',
          lines: [
            `The frame of your aircraft is made of ${assessment.truss.members.length} steel tubes, welded together. So far people have looked at ${assessment.truss.members.length - unseen} of them.`,
            `On ${lower(many(new Set(coverage.findings.map((f) => f.of)).size, 'tube or joint', 'tubes and joints'))} they found damage. ${older > 0 ? `${many(older, 'mark')} ${older === 1 ? 'is' : 'are'} older than this accident. ` : ''}${unknown > 0 ? `Of ${lower(many(unknown, 'mark'))} nobody can say how old it is.` : ''}`.trim(),
          ],
        },
        { kind: 'subheading', text: 'What is planned' },
        {
          kind: 'lines',
          lines: [
            ...(members.straighten > 0
              ? [`${many(members.straighten, 'tube')} to be bent straight again.`]
              : []),
            ...(members.splitSleeve > 0
              ? [`${many(members.splitSleeve, 'tube')} to get a sleeve or a patch over the damage.`]
              : []),
            ...(members.splice > 0 ? [`${many(members.splice, 'tube')} to get a new piece let in.`] : []),
            ...(members.replace > 0 ? [`${many(members.replace, 'tube')} to be replaced.`] : []),
            ...(members.undecided > 0
              ? [`On ${lower(many(members.undecided, 'tube'))} nobody has decided yet.`]
              : []),
            ...(plan.steps.length > 0 ? [`${done} of ${plan.steps.length} steps of the work are done.`] : []),
          ],
        },
        { kind: 'subheading', text: 'What nobody knows yet' },
        {
          kind: 'lines',
          lines: [
            unseen > 0
              ? `${many(unseen, 'tube')} nobody has looked at. There may be more damage there. It costs time and money when it is found.`
              : 'Every tube has been looked at once.',
            ...(members.lookAgain > 0
              ? [`${many(members.lookAgain, 'tube')} must be looked at once more.`]
              : []),
            'Inside the tubes nobody can see everything.',
          ],
        },
        { kind: 'subheading', text: 'How long it may take' },
        {
          kind: 'lines',
          lines:
            estimate.lines.length === 0
              ? ['Nothing is planned yet, so nobody can say.']
              : [
                  `Between ${Math.round(bestH.value)} and ${Math.round(worstH.value)} hours of work on the frame, for what is decided so far. ${estimate.hidden.every((h) => h.chance === null) ? 'What nobody has looked at is not in it.' : 'A guess of the shop for tubes nobody has looked at is in it.'}`,
                  estimate.rates.every((r) => r.record === undefined)
                    ? 'The hours for each kind of work are only starting numbers. The shop has not put in its own.'
                    : "The hours for some kinds of work are the shop's own.",
                  'Fabric, paint, engine, propeller and fees are not in it.',
                ],
        },
        { kind: 'subheading', text: 'What happens next' },
        {
          kind: 'lines',
          lines: [
            ...(unseen > 0 ? ['People look at the tubes that nobody has looked at.'] : []),
            ...(members.undecided > 0 ? ['People decide what to do about the tubes that are open.'] : []),
            'You say yes or no to the plan before anything is cut.',
            'People who may do so decide if the aircraft flies again. This page does not.',
          ],
        },
        { kind: 'blanks', names: ['Explained by, date', 'Your questions'] },
      ],
    },
  ];
};
