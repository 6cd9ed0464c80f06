interface ChoiceFieldProps<Word extends string> {
  readonly label: string;
  readonly value: Word;
  readonly words: readonly (readonly [Word, string])[];
  readonly onWord: (word: Word) => void;
}

/** A caption and a choice of words under it. */
export const ChoiceField = <Word extends string>({ label, value, words, onWord }: ChoiceFieldProps<Word>) => (
  <label className="field">
    <span className="caption">{label}</span>
    <select value={value} onChange={(e) => onWord(e.target.value as Word)}>
      {words.map(([word, said]) => (
        <option key={word} value={word}>
          {said}
        </option>
      ))}
    </select>
  </label>
);
