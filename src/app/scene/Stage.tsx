import { createRoot, extend, flushSync } from '@react-three/fiber';
import { type ReactNode, useEffect, useLayoutEffect, useRef, useState } from 'react';
import { InstancedMesh, LineSegments, OrthographicCamera, WebGLRenderer } from 'three';
import type { Size } from './turntable.ts';

// Only what is drawn, where <Canvas> would bring all of three.
extend({ InstancedMesh, LineSegments });

interface StageProps {
  readonly children: ReactNode;
  readonly onSize: (size: Size) => void;
  /** WebGL is missing, or was lost and did not come back. */
  readonly onUnavailable: () => void;
}

type Root = ReturnType<typeof createRoot>;

/** `?aa=0` draws without smoothing, for tests on machines that draw in software. */
const smooth = (): boolean => new URLSearchParams(window.location.search).get('aa') !== '0';

const openContext = (canvas: HTMLCanvasElement): WebGL2RenderingContext | null =>
  canvas.getContext('webgl2', {
    antialias: smooth(),
    alpha: true,
    depth: true,
    stencil: false,
    powerPreference: 'high-performance',
  });

/**
 * A canvas that draws its children when something changed and not otherwise. Each start makes a fresh canvas, so a lost
 * graphics context is answered by starting again.
 */
export const Stage = ({ children, onSize, onUnavailable }: StageProps) => {
  const host = useRef<HTMLDivElement>(null);
  const root = useRef<Root>(null);
  const [start, setStart] = useState(0);
  const told = useRef({ onSize, onUnavailable });
  told.current = { onSize, onUnavailable };
  const shown = useRef(children);
  shown.current = children;

  // biome-ignore lint/correctness/useExhaustiveDependencies: a new start is asked for by its number
  useEffect(() => {
    const box = host.current;
    if (box === null) return;
    const canvas = document.createElement('canvas');
    canvas.style.display = 'block';
    box.append(canvas);
    const context = openContext(canvas);
    if (context === null) {
      canvas.remove();
      told.current.onUnavailable();
      return;
    }
    const made = createRoot(canvas);
    const camera = new OrthographicCamera();
    const measure = () => {
      const { width, height } = box.getBoundingClientRect();
      const size = { width: Math.max(1, width), height: Math.max(1, height), top: 0, left: 0 };
      void made.configure({
        gl: (given) => new WebGLRenderer({ ...given, canvas, context, alpha: true, antialias: smooth() }),
        camera: Object.assign(camera, { manual: true as const }),
        frameloop: 'demand',
        flat: true,
        dpr: [1, 2],
        size,
      });
      told.current.onSize(size);
    };
    measure();
    root.current = made;
    made.render(shown.current);
    const watch = new ResizeObserver(measure);
    watch.observe(box);
    let again: ReturnType<typeof setTimeout> | undefined;
    const lost = (event: Event) => {
      event.preventDefault();
      again = setTimeout(() => setStart((n) => n + 1), 200);
    };
    canvas.addEventListener('webglcontextlost', lost);
    return () => {
      clearTimeout(again);
      canvas.removeEventListener('webglcontextlost', lost);
      watch.disconnect();
      root.current = null;
      made.unmount();
      canvas.remove();
    };
  }, [start]);

  // at once, before the page is laid out and painted: what was tagged is in the very next frame
  useLayoutEffect(() => {
    flushSync(() => root.current?.render(children));
  }, [children]);

  return <div ref={host} style={{ position: 'absolute', inset: 0, overflow: 'hidden' }} />;
};
