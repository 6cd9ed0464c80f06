import { useState } from 'react';
import { useAnswer } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { fileName, saveFile } from '../storage/files.ts';
import { sheetText } from '../text/trammel.ts';
import { draw } from '../worker/asked.ts';

/** The sheet to take to the hangar: true distances in left and right pairs, with blanks. */
export const SheetButton = () => {
  const { assessment, forJob } = useAnswer();
  const { paper, units } = usePrefs();
  const [said, setSaid] = useState('');
  const save = async (): Promise<void> => {
    if (!assessment || !forJob) return;
    setSaid(sheetText.beingDrawn);
    const { trammel } = assessment;
    for (const { bytes } of await draw({
      kind: 'trammelSheet',
      job: forJob,
      trammel,
      choice: { paper, units },
    }))
      saveFile(fileName(sheetText.file(forJob.name), '.pdf'), new Uint8Array(bytes), 'application/pdf');
    setSaid(sheetText.saved);
  };
  return (
    <div className="row">
      <button type="button" disabled={!assessment} onClick={() => void save()}>
        {sheetText.save}
      </button>
      <span role="status" className="small">
        {said}
      </span>
    </div>
  );
};
