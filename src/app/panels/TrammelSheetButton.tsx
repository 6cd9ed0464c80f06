import { useState } from 'react';
import { VERSION } from '../../core/version.ts';
import { useAnswer } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { fileName, saveFile } from '../storage/files.ts';

/** The sheet to take to the hangar: true distances in left and right pairs, with blanks. */
export const SheetButton = () => {
  const { assessment, forJob } = useAnswer();
  const { paper, units } = usePrefs();
  const [said, setSaid] = useState('');
  const save = async (): Promise<void> => {
    if (!assessment || !forJob) return;
    setSaid('Being drawn …');
    const [{ trammelSheetPdf }, { contentHash }] = await Promise.all([
      import('../../present/trammelSheet.ts'),
      import('../../present/contentHash.ts'),
    ]);
    const options = { paper, units, version: VERSION, hash: contentHash(forJob) };
    const bytes = await trammelSheetPdf(forJob, assessment, options);
    saveFile(fileName(`${forJob.name} trammel sheet`, '.pdf'), new Uint8Array(bytes), 'application/pdf');
    setSaid('Saved.');
  };
  return (
    <div className="row">
      <button type="button" disabled={!assessment} onClick={() => void save()}>
        Trammel sheet (PDF)
      </button>
      <span role="status" className="small">
        {said}
      </span>
    </div>
  );
};
