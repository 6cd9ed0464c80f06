import type { DispositionRow } from '../../core/disposition/result.ts';
import { choiceWords } from '../../present/tags.ts';
import { decideTopicText as say } from '../text/decide.ts';
import type { OwnTopic } from './OwnData.tsx';

/** What the user may enter as their own data for a decision on this tube or cluster. */
export const decideTopics = ({ id, kind }: DispositionRow): readonly OwnTopic[] => [
  { topic: `straighten-only:${id}`, label: say.straightenOnly(id), takes: 'words' },
  { topic: `round-out-only:${id}`, label: say.roundOutOnly(id), takes: 'words' },
  ...(['patch', 'splitSleeve', 'splice', 'replace', 'fingerPlate', 'rebuild'] as const).map(
    (choice): OwnTopic => ({
      topic: `allow:${choice}:${id}`,
      label: say.allowed(choiceWords[choice], id),
      takes: 'words',
    }),
  ),
  { topic: `forbid:straighten:${id}`, label: say.noStraighten(id), takes: 'words' },
  { topic: `forbid:splice:${id}`, label: say.noSplice(id), takes: 'words' },
  { topic: `scope:${id}`, label: say.scope(id), takes: 'words' },
  ...(kind === 'member'
    ? ([
        { topic: `limit:bow:${id}`, label: say.bow(id), takes: 'length' },
        { topic: 'limit:bow', label: say.allBow, takes: 'share' },
        { topic: `limit:ovality:${id}`, label: say.ovality(id), takes: 'share' },
        { topic: `limit:wallLoss:${id}`, label: say.wallLoss(id), takes: 'share' },
        {
          topic: `limit:dentDepth:${id}`,
          label: say.dentDepth(id),
          takes: 'share',
        },
        { topic: `patch-overlap:${id}`, label: say.patchOverlap, takes: 'length' },
      ] as const)
    : []),
];
