import { type KeyboardEvent, useId, useMemo, useState } from 'react';
import { type Command, commands } from '../commands.ts';
import { type Found, find, findIndex } from '../find.ts';
import { useAnswer } from '../state/answer.ts';
import { ask, select } from '../state/view.ts';
import { findText as text } from '../text/frame.ts';

type Choice =
  | { readonly what: 'thing'; readonly found: Found }
  | { readonly what: 'deed'; readonly deed: Command };

const deedsFor = (typed: string): readonly Command[] => {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  return commands.filter(
    (one) =>
      one.id !== 'find' &&
      one.when() &&
      words.every((word) =>
        one.name
          .toLowerCase()
          .split(/[\s:-]+/)
          .some((part) => part.startsWith(word)),
      ),
  );
};

/** Finds tubes and clusters by id or by what they are, and actions by name. */
export const FindBox = () => {
  const truss = useAnswer((answer) => answer.atOnce?.truss);
  const index = useMemo(() => (truss ? findIndex(truss) : []), [truss]);
  const [typed, setTyped] = useState('');
  const [open, setOpen] = useState(false);
  const [at, setAt] = useState(0);
  const list = useId();
  const choices: readonly Choice[] = useMemo(() => {
    if (typed.trim() === '') return [];
    const things = find(index, typed, 8).map((found) => ({ what: 'thing' as const, found }));
    const deeds = deedsFor(typed).slice(0, 5);
    return [...things, ...deeds.map((deed) => ({ what: 'deed' as const, deed }))];
  }, [typed, index]);
  const aim = Math.min(at, choices.length - 1);

  const take = (choice: Choice | undefined): void => {
    if (!choice) return;
    if (choice.what === 'deed') choice.deed.do();
    else {
      select(choice.found.id);
      ask('keep', 'selection');
    }
    setTyped('');
    setOpen(false);
  };
  const pressed = (event: KeyboardEvent<HTMLInputElement>): void => {
    if (event.key === 'ArrowDown') setAt(Math.min(choices.length - 1, aim + 1));
    else if (event.key === 'ArrowUp') setAt(Math.max(0, aim - 1));
    else if (event.key === 'Enter') take(choices[Math.max(0, aim)]);
    else if (event.key === 'Escape') {
      setTyped('');
      document.querySelector<HTMLElement>('.picture [role="img"]')?.focus();
    } else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const shown = open && choices.length > 0;

  return (
    <search className="find">
      <input
        id="find"
        type="text"
        role="combobox"
        aria-label={text.label}
        aria-expanded={shown}
        aria-controls={list}
        aria-autocomplete="list"
        aria-activedescendant={shown ? `${list}-${aim}` : undefined}
        placeholder={text.hint}
        autoComplete="off"
        spellCheck={false}
        value={typed}
        onChange={(e) => {
          setTyped(e.target.value);
          setAt(0);
          setOpen(true);
        }}
        onFocus={() => setOpen(true)}
        onBlur={() => setOpen(false)}
        onKeyDown={pressed}
      />
      <div id={list} role="listbox" aria-label={text.found} className="found" hidden={!shown}>
        {choices.map((choice, i) => (
          <div
            key={choice.what === 'thing' ? choice.found.id : choice.deed.id}
            id={`${list}-${i}`}
            role="option"
            tabIndex={-1}
            aria-selected={i === aim}
            className="found-item"
            onPointerDown={(e) => {
              e.preventDefault();
              take(choice);
            }}
          >
            {choice.what === 'thing' ? (
              <>
                <strong>{choice.found.id}</strong>
                <span className="soft">{choice.found.words}</span>
              </>
            ) : (
              <>
                <span>{choice.deed.name}</span>
                {choice.deed.keys && <kbd>{choice.deed.keys.replace('Mod', 'Ctrl')}</kbd>}
              </>
            )}
          </div>
        ))}
      </div>
      {open && typed.trim() !== '' && choices.length === 0 && (
        <p className="found small" role="status">
          {text.nothing}
        </p>
      )}
    </search>
  );
};
