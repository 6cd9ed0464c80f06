import { type ReactNode, useEffect, useState } from 'react';
import type { PhotoMark } from '../../core/job/jobSchema.ts';
import { photoBytes } from '../photos.ts';

/** The address of a photo's bytes for as long as it is shown; null while it is fetched, undefined when it is not here. */
export const usePhoto = (hash: string): string | null | undefined => {
  const [address, setAddress] = useState<string | null | undefined>(null);
  useEffect(() => {
    let made: string | undefined;
    let left = false;
    void photoBytes(hash).then((bytes) => {
      if (left) return;
      made = bytes && URL.createObjectURL(new Blob([new Uint8Array(bytes)], { type: 'image/jpeg' }));
      setAddress(made);
    });
    return () => {
      left = true;
      if (made) URL.revokeObjectURL(made);
    };
  }, [hash]);
  return address;
};

/** Size of the grid that marks are drawn on; the picture is stretched to it, so shapes are drawn in its own shares. */
const GRID = 1000;

const Line = ({ d }: { readonly d: string }) => (
  <>
    <path className="below" d={d} />
    <path className="above" d={d} />
  </>
);

const Mark = ({ mark, tall }: { readonly mark: PhotoMark; readonly tall: number }) => {
  const on = ([u, v]: readonly [number, number]): readonly [number, number] => [u * GRID, v * tall];
  const [x, y] = on(mark.at);
  const [tx, ty] = on(mark.to ?? mark.at);
  const long = Math.hypot(tx - x, ty - y) || 1;
  if (mark.mark === 'text')
    return (
      <text x={x} y={y} fontSize={56}>
        {mark.words}
      </text>
    );
  if (mark.mark === 'ring') {
    const r = Math.max(16, long);
    return <Line d={`M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`} />;
  }
  const [ux, uy] = [((tx - x) / long) * 36, ((ty - y) / long) * 36];
  return (
    <Line
      d={`M${x} ${y}L${tx} ${ty}M${tx - ux + uy / 2} ${ty - uy - ux / 2}L${tx} ${ty}L${tx - ux - uy / 2} ${ty - uy + ux / 2}`}
    />
  );
};

/** A photo with its marks over it. */
export const Shot = ({
  address,
  words,
  marks,
  children,
}: {
  readonly address: string;
  readonly words: string;
  readonly marks: readonly PhotoMark[];
  /** Drawn over everything, in the same grid. */
  readonly children?: (tall: number) => ReactNode;
}) => {
  const [tall, setTall] = useState(GRID * 0.75);
  return (
    <>
      <img
        src={address}
        alt={words}
        onLoad={({ currentTarget: { naturalWidth, naturalHeight } }) =>
          setTall((GRID * naturalHeight) / Math.max(1, naturalWidth))
        }
      />
      <svg viewBox={`0 0 ${GRID} ${tall}`} aria-hidden="true">
        {marks.map((mark, k) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: marks have no name and only the last one is ever taken off
          <Mark key={k} mark={mark} tall={tall} />
        ))}
        {children?.(tall)}
      </svg>
    </>
  );
};
