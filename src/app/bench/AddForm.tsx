import { type ReactNode, useEffect, useRef, useState } from 'react';

/** Fields that make one entry: Enter in any of them adds it and begins the next at the first. */
export const AddForm = ({
  words,
  ready,
  onAdd,
  children,
}: {
  readonly words: string;
  readonly ready: boolean;
  /** Makes the entry; false when it was refused. */
  readonly onAdd: () => boolean;
  readonly children: ReactNode;
}) => {
  const form = useRef<HTMLFormElement>(null);
  const [added, setAdded] = useState(0);
  useEffect(() => {
    if (added > 0) form.current?.querySelector<HTMLElement>('input, select')?.focus();
  }, [added]);
  return (
    <form
      key={added}
      ref={form}
      className="fields"
      onSubmit={(e) => {
        e.preventDefault();
        if (ready && onAdd()) setAdded(added + 1);
      }}
    >
      {children}
      <button type="submit" className="end" disabled={!ready}>
        {words}
      </button>
    </form>
  );
};
