/** One question of a drill as the trainee knows it. Plain data, kept on the device. */
export interface Card {
  /** Question id: kind and subject. */
  readonly id: string;
  /** 0 new or wrong last time … 4 well known. */
  readonly box: number;
  /** Day number on which it is asked again. Days are handed in; core knows no clock. */
  readonly dueDay: number;
  readonly asked: number;
  readonly right: number;
}

/** Days until a card of each box is asked again; starting values of ours. Idea: S. Leitner 1972, from memory. */
export const boxDays = [0, 1, 3, 7, 21] as const;

/** The cards after an answer: right moves a card one box up, wrong back to the first, where it is asked again today. */
export const answered = (
  cards: readonly Card[],
  id: string,
  right: boolean,
  day: number,
): readonly Card[] => {
  const known = cards.find((card) => card.id === id) ?? { id, box: 0, dueDay: day, asked: 0, right: 0 };
  const box = right ? Math.min(boxDays.length - 1, known.box + 1) : 0;
  const card: Card = {
    id,
    box,
    dueDay: day + boxDays[box]!,
    asked: known.asked + 1,
    right: known.right + (right ? 1 : 0),
  };
  return [...cards.filter((other) => other.id !== id), card].sort((a, b) => (a.id < b.id ? -1 : 1));
};

/** Cards to be asked on a day: lowest box first, then the longest due. */
export const dueOn = (cards: readonly Card[], day: number): readonly Card[] =>
  cards
    .filter((card) => card.asked > 0 && card.dueDay <= day)
    .sort((a, b) => a.box - b.box || a.dueDay - b.dueDay || (a.id < b.id ? -1 : 1));
