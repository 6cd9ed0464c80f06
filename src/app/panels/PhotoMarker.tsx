import { type KeyboardEvent, type PointerEvent, useState } from 'react';
import type { PhotoMark } from '../../core/job/jobSchema.ts';
import { Shot } from '../parts/Shot.tsx';

const tools = { arrow: 'Arrow', ring: 'Ring', text: 'Words' } as const satisfies Record<
  PhotoMark['mark'],
  string
>;
type Spot = readonly [number, number];
const inside = (share: number): number => Math.min(1, Math.max(0, share));
const STEP = 0.02;
const steps: Readonly<Record<string, Spot>> = {
  ArrowLeft: [-STEP, 0],
  ArrowRight: [STEP, 0],
  ArrowUp: [0, -STEP],
  ArrowDown: [0, STEP],
};

/**
 * Marks on a photo: two touches for an arrow (tail, point) or a ring (middle, rim), one for words. By keyboard a cross
 * goes with the arrow keys and Enter is a touch; nothing needs dragging.
 */
export const PhotoMarker = ({
  address,
  marks,
  onMarks,
}: {
  readonly address: string;
  readonly marks: readonly PhotoMark[];
  readonly onMarks: (marks: readonly PhotoMark[]) => void;
}) => {
  const [tool, setTool] = useState<PhotoMark['mark']>('ring');
  const [words, setWords] = useState('');
  const [first, setFirst] = useState<Spot | null>(null);
  const [cross, setCross] = useState<Spot>([0.5, 0.5]);

  const touch = (spot: Spot): void => {
    setCross(spot);
    const at: [number, number] = [...(first ?? spot)];
    if (tool === 'text') {
      if (words.trim() !== '') onMarks([...marks, { mark: 'text', at, words: words.trim() }]);
    } else if (first) {
      onMarks([...marks, { mark: tool, at, to: [...spot] }]);
      setFirst(null);
    } else setFirst(spot);
  };
  const pointed = (event: PointerEvent<HTMLDivElement>): void => {
    const { left, top, width, height } = event.currentTarget.getBoundingClientRect();
    touch([inside((event.clientX - left) / width), inside((event.clientY - top) / height)]);
  };
  const keyed = (event: KeyboardEvent): void => {
    const step = steps[event.key];
    if (step) setCross(([u, v]) => [inside(u + step[0]), inside(v + step[1])]);
    else if (event.key === 'Enter' || event.key === ' ') touch(cross);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const asks =
    tool === 'text'
      ? words.trim() === ''
        ? 'Write the words first, then touch where they go.'
        : 'Touch where the words go.'
      : first
        ? tool === 'arrow'
          ? 'Touch where it points.'
          : 'Touch its rim.'
        : tool === 'arrow'
          ? 'Touch where the arrow begins.'
          : 'Touch the middle of the ring.';
  return (
    <div className="stack tight">
      <div className="row">
        {(Object.keys(tools) as PhotoMark['mark'][]).map((one) => (
          <button
            key={one}
            type="button"
            aria-pressed={tool === one}
            onClick={() => {
              setTool(one);
              setFirst(null);
            }}
          >
            {tools[one]}
          </button>
        ))}
        <button type="button" disabled={marks.length === 0} onClick={() => onMarks(marks.slice(0, -1))}>
          Take off the last
        </button>
      </div>
      {tool === 'text' && (
        <div className="field">
          <label htmlFor="mark-words">Words on the photo</label>
          <input
            id="mark-words"
            type="text"
            maxLength={60}
            value={words}
            onChange={(e) => setWords(e.target.value)}
          />
        </div>
      )}
      <p className="small">{asks}</p>
      {/* biome-ignore lint/a11y/useSemanticElements: a button cannot hold a picture that is pointed into */}
      <div
        className="shot"
        role="button"
        tabIndex={0}
        data-marking="true"
        aria-label={`Photo to mark. ${asks} Arrow keys move the cross, Enter touches.`}
        onPointerDown={pointed}
        onKeyDown={keyed}
      >
        <Shot address={address} words="Photo to mark" marks={marks}>
          {(tall) => {
            const [x, y] = [cross[0] * 1000, cross[1] * tall];
            return <path className="cross" d={`M${x - 24} ${y}h48M${x} ${y - 24}v48`} />;
          }}
        </Shot>
      </div>
    </div>
  );
};
