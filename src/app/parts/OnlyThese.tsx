import { setView, useView } from '../state/view.ts';
import { fieldText as text } from '../text/fields.ts';

/** Fades everything in the picture but these, or lets everything be seen again. */
export const OnlyThese = ({ ids }: { readonly ids: readonly string[] }) => {
  const apart = useView((view) => view.apart);
  const on = apart?.ids !== undefined && apart.ids.join() === ids.join();
  if (ids.length < 2) return null;
  return (
    <p>
      <button
        type="button"
        aria-pressed={on}
        onClick={() => setView({ apart: on ? null : { zone: '', ids, how: 'isolate' } })}
      >
        {text.onlyThese}
      </button>
    </p>
  );
};
