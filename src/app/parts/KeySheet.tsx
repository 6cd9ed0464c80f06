import { useEffect, useRef } from 'react';
import { commands } from '../commands.ts';
import { useDialog } from '../state/dialog.ts';
import { usePrefs } from '../state/prefs.ts';
import { keySheetText as text } from '../text/commands.ts';

const said = (keys: string): string => keys.replace('Mod', 'Ctrl').replaceAll('+', ' + ');

/** Every key there is, on one sheet; the browser's own dialog, which gives the focus back when it closes. */
export const KeySheet = () => {
  const letters = usePrefs((prefs) => prefs.letterKeys);
  const sheet = useRef<HTMLDialogElement>(null);
  useEffect(() => sheet.current?.showModal(), []);
  return (
    <dialog
      ref={sheet}
      className="key-sheet"
      aria-label={text.title}
      onClose={() => useDialog.setState({ open: null })}
    >
      <div className="entry-head">
        <h2>{text.title}</h2>
        <button type="button" onClick={() => sheet.current?.close()}>
          {text.close}
        </button>
      </div>
      {!letters && <p className="small">{text.lettersOff}</p>}
      <dl className="key-rows">
        {commands.flatMap(({ id, name, keys }) =>
          keys === undefined
            ? []
            : [
                <div key={id}>
                  <dt>{name}</dt>
                  <dd>
                    <kbd>{said(keys)}</kbd>
                  </dd>
                </div>,
              ],
        )}
        <div>
          <dt>{text.turn}</dt>
          <dd>
            <kbd>{text.arrows}</kbd>
          </dd>
        </div>
      </dl>
    </dialog>
  );
};
