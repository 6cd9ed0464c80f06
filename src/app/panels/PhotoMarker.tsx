import { type KeyboardEvent, type PointerEvent, useId, useState } from 'react';
import type { PhotoMark } from '../../core/job/jobSchema.ts';
import { Shot } from '../parts/Shot.tsx';
import { markerText } from '../text/photos.ts';

const tools: readonly PhotoMark['mark'][] = ['arrow', 'ring', 'text'];
type Spot = readonly [number, number];
const inside = (share: number): number => Math.min(1, Math.max(0, share));
const STEP = 0.02;
const steps: Readonly<Record<string, Spot>> = {
  ArrowLeft: [-STEP, 0],
  ArrowRight: [STEP, 0],
  ArrowUp: [0, -STEP],
  ArrowDown: [0, STEP],
};

const takeOff = ({ mark, words }: PhotoMark, place: number): string =>
  mark === 'text' ? markerText.takeOffWords(words ?? '') : markerText.takeOff(markerText.tools[mark], place);

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
  const field = useId();
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
  const asks = markerText.asks(tool, tool === 'text' ? words.trim() !== '' : first !== null);
  return (
    <div className="stack tight">
      <div className="row">
        {tools.map((one) => (
          <button
            key={one}
            type="button"
            aria-pressed={tool === one}
            onClick={() => {
              setTool(one);
              setFirst(null);
            }}
          >
            {markerText.tools[one]}
          </button>
        ))}
      </div>
      {tool === 'text' && (
        <div className="field">
          <label htmlFor={field}>{markerText.words}</label>
          <input
            id={field}
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
        aria-label={markerText.pictureNamed(asks)}
        onPointerDown={pointed}
        onKeyDown={keyed}
      >
        <Shot address={address} words={markerText.picture} marks={marks}>
          {(tall) => {
            const [x, y] = [cross[0] * 1000, cross[1] * tall];
            return <path className="cross" d={`M${x - 24} ${y}h48M${x} ${y - 24}v48`} />;
          }}
        </Shot>
      </div>
      {marks.length > 0 && (
        <ul className="row" aria-label={markerText.marks}>
          {marks.map((mark, k) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: marks have no name of their own
            <li key={k}>
              <button type="button" onClick={() => onMarks(marks.toSpliced(k, 1))}>
                {takeOff(mark, marks.slice(0, k + 1).filter((one) => one.mark === mark.mark).length)}
              </button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
};
