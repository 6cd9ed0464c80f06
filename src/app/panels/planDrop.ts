import { type DragEvent, useState } from 'react';
import type { Plan } from '../../core/plan/result.ts';
import { putStep } from '../planDeeds.ts';
import { setPlanning, usePlanning } from '../state/planning.ts';

/** Makes a thing one that a dragged step can be let go on: it is then put before `before` (null: last). */
export const useDrop = (plan: Plan, before: string | null) => {
  const dragged = usePlanning((planning) => planning.dragged);
  const [over, setOver] = useState(false);
  return {
    'data-over': over && dragged !== null && dragged !== before ? '' : undefined,
    onDragOver: (event: DragEvent): void => {
      if (dragged === null) return;
      event.preventDefault();
      setOver(true);
    },
    onDragLeave: (): void => setOver(false),
    onDrop: (event: DragEvent): void => {
      event.preventDefault();
      event.stopPropagation();
      setOver(false);
      if (dragged !== null) putStep(plan, dragged, before);
      setPlanning({ dragged: null });
    },
  };
};
