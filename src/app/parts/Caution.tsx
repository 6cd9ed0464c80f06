import { type CautionStep, cautionsFor, levelWords } from '../../present/words/cautions.ts';

/** What can hurt or spoil at this step, before the step. */
export const Cautions = ({ step }: { readonly step: CautionStep }) => (
  <>
    {cautionsFor(step).map(({ id, level, text }) => (
      <p key={id} className={`notice ${level} small`} role="note">
        <strong>{levelWords[level]}</strong> {text}
      </p>
    ))}
  </>
);
