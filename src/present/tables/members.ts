import type { Member } from '../../core/truss/result.ts';
import type { Mark } from '../../core/walkRound/result.ts';
import { lengthUnit, showBareLength, showTube } from '../show.ts';
import { type Table, tableOf } from '../table.ts';
import { choiceWords, damageTags, tags } from '../tags.ts';
import { memberWords } from '../words/names.ts';
import { methodWords } from '../words/record.ts';
import { byId, marksById, rawLength, type Showing, twinOf } from './showing.ts';

const foundWords = (mark: Mark | undefined): string =>
  (mark?.damage ?? []).map((damage) => damageTags[damage].tagged.toLowerCase()).join(', ');

/** What a state is called for one thing: an undecided one names its damage: "Bent, undecided". */
export const stateWords = (mark: Mark | undefined): string => {
  if (mark === undefined) return tags.notLookedAt.word;
  if (mark.state !== 'undecided') return tags[mark.state].word;
  const kinds = foundWords(mark);
  const words = kinds === '' ? 'undecided' : `${kinds}, undecided`;
  return words.charAt(0).toUpperCase() + words.slice(1);
};

/** Every member of the truss as a row: the parallel of the picture. */
export const membersTable = (showing: Showing): Table => {
  const { units, assessment } = showing;
  const marks = marksById(showing);
  const looks = byId(assessment.coverage.looks);
  const twin = twinOf(showing);
  const lookOf = (member: Member) => looks.get(marks.get(member.id)?.look ?? '');
  return tableOf<Member>(
    {
      name: 'members',
      title: 'Members',
      note: 'Lengths are true, between cluster centres.',
      empty: 'The truss has no members.',
      idOf: (member) => member.id,
      columns: [
        { id: 'id', title: 'Id', text: (member) => member.id },
        { id: 'words', title: 'In words', text: memberWords },
        { id: 'state', title: 'State', text: (member) => stateWords(marks.get(member.id)) },
        {
          id: 'chalk',
          title: 'Chalk',
          text: (member) => tags[marks.get(member.id)?.state ?? 'notLookedAt'].chalk,
        },
        { id: 'found', title: 'Found', text: (member) => foundWords(marks.get(member.id)) },
        {
          id: 'decision',
          title: 'Decision',
          text: (member) => choiceOf(marks.get(member.id)),
        },
        {
          id: 'tube',
          title: 'Tube',
          unit: lengthUnit(units),
          text: (member) => (member.tube ? showTube(member.tube, units).replace(/ mm$/, '') : 'own numbers'),
        },
        { id: 'material', title: 'Material', text: (member) => member.material },
        {
          id: 'length',
          title: 'Length true',
          unit: lengthUnit(units),
          align: 'right',
          text: (member) => (member.guessed ? 'not measured' : showBareLength(member.lengthIn, units)),
          raw: (member) => (member.guessed ? null : rawLength(member.lengthIn, units)),
        },
        {
          id: 'looked',
          title: 'Looked at by',
          text: (member) => {
            const look = lookOf(member);
            return look ? `${methodWords[look.method]}${look.finishRemoved ? ', finish off' : ''}` : '';
          },
        },
        { id: 'near', title: 'Nearby', text: (member) => member.near.join(', ') },
        { id: 'twin', title: 'Opposite-hand twin', text: (member) => twin(member) ?? '' },
        { id: 'shopNumber', title: 'Shop number', text: (member) => member.shopNumber ?? '' },
      ],
    },
    assessment.truss.members,
  );
};

export const choiceOf = (mark: Mark | undefined): string => (mark?.choice ? choiceWords[mark.choice] : '');
