import { orbit, pan, type ScreenPoint, type Size, type Turntable, zoomAt } from './turntable.ts';

/** What a hand can ask of the picture. Points are CSS pixels from its upper left corner. */
export interface Hands {
  readonly size: () => Size;
  readonly turn: (change: (v: Turntable) => Turntable) => void;
  readonly tap: (at: ScreenPoint, kind: 'mouse' | 'pen' | 'touch', additive: boolean) => void;
  readonly hover: (at: ScreenPoint | null) => void;
  /** Takes a key, or leaves it to the app. */
  readonly key: (event: KeyboardEvent) => boolean;
}

const MOVED = { mouse: 4, pen: 6, touch: 10 } as const;
const kindOf = (event: PointerEvent): 'mouse' | 'pen' | 'touch' =>
  event.pointerType === 'touch' || event.pointerType === 'pen' ? event.pointerType : 'mouse';

interface Finger {
  readonly start: ScreenPoint;
  at: ScreenPoint;
}

/**
 * Listens to pointers and the wheel: one finger or the left button turns, two fingers or another button (or Shift) pan,
 * pinch and wheel zoom to the pointer, a press without a move is a tap.
 *
 * @returns what stops listening
 */
export const listen = (box: HTMLElement, hands: Hands): (() => void) => {
  const fingers = new Map<number, Finger>();
  let dragging = false;
  let frame = 0;
  let lastHover: ScreenPoint | null = null;

  const local = (event: MouseEvent): ScreenPoint => {
    const { left, top } = box.getBoundingClientRect();
    return { x: event.clientX - left, y: event.clientY - top };
  };
  const hoverSoon = (point: ScreenPoint | null) => {
    lastHover = point;
    frame ||= requestAnimationFrame(() => {
      frame = 0;
      hands.hover(lastHover);
    });
  };

  const down = (event: PointerEvent) => {
    if (fingers.size === 2) return;
    box.setPointerCapture(event.pointerId);
    const point = local(event);
    fingers.set(event.pointerId, { start: point, at: point });
    dragging = fingers.size > 1;
  };

  const move = (event: PointerEvent) => {
    const point = local(event);
    const finger = fingers.get(event.pointerId);
    if (finger === undefined) {
      if (event.pointerType !== 'touch') hoverSoon(point);
      return;
    }
    const [dx, dy] = [point.x - finger.at.x, point.y - finger.at.y];
    const far = Math.hypot(point.x - finger.start.x, point.y - finger.start.y);
    if (!dragging && far <= MOVED[kindOf(event)]) return;
    if (!dragging) hoverSoon(null);
    dragging = true;
    const other = [...fingers].find(([id]) => id !== event.pointerId)?.[1];
    finger.at = point;
    if (other) {
      const before = Math.hypot(point.x - dx - other.at.x, point.y - dy - other.at.y);
      const now = Math.hypot(point.x - other.at.x, point.y - other.at.y);
      const middle = { x: (point.x + other.at.x) / 2, y: (point.y + other.at.y) / 2 };
      hands.turn((v) => zoomAt(pan(v, dx / 2, dy / 2), hands.size(), middle, now / Math.max(1, before)));
    } else if (event.buttons & 6 || event.shiftKey) hands.turn((v) => pan(v, dx, dy));
    else hands.turn((v) => orbit(v, dx, dy));
  };

  const up = (event: PointerEvent) => {
    const finger = fingers.get(event.pointerId);
    fingers.delete(event.pointerId);
    if (finger === undefined || dragging) {
      dragging = fingers.size > 0;
      return;
    }
    if (event.type === 'pointerup' && event.button === 0)
      hands.tap(finger.start, kindOf(event), event.shiftKey || event.ctrlKey || event.metaKey);
  };

  const leave = () => hoverSoon(null);
  const wheel = (event: WheelEvent) => {
    event.preventDefault();
    const lines = event.deltaMode === 1 ? 16 : event.deltaMode === 2 ? 400 : 1;
    const factor = Math.exp(-Math.max(-120, Math.min(120, event.deltaY * lines)) * 0.0022);
    const point = local(event);
    hands.turn((v) => zoomAt(v, hands.size(), point, factor));
  };
  // taken before React and the app's own keys hear of it: turning is the deed that is done most often
  const pressed = (event: KeyboardEvent) => {
    if (event.target !== box || !hands.key(event)) return;
    event.preventDefault();
    event.stopPropagation();
  };
  const noMenu = (event: Event) => event.preventDefault();

  box.addEventListener('pointerdown', down);
  box.addEventListener('pointermove', move);
  box.addEventListener('pointerup', up);
  box.addEventListener('pointercancel', up);
  box.addEventListener('pointerleave', leave);
  box.addEventListener('wheel', wheel, { passive: false });
  box.addEventListener('contextmenu', noMenu);
  box.addEventListener('keydown', pressed);
  return () => {
    cancelAnimationFrame(frame);
    box.removeEventListener('pointerdown', down);
    box.removeEventListener('pointermove', move);
    box.removeEventListener('pointerup', up);
    box.removeEventListener('pointercancel', up);
    box.removeEventListener('pointerleave', leave);
    box.removeEventListener('wheel', wheel);
    box.removeEventListener('contextmenu', noMenu);
    box.removeEventListener('keydown', pressed);
  };
};

/** What a key asks of the picture when it has the focus; `null` for every other key. Single letters are the app's. */
export const keyTurn = (key: string, size: Size): ((v: Turntable) => Turntable) | null => {
  const middle = { x: size.width / 2, y: size.height / 2 };
  switch (key) {
    case 'ArrowLeft':
      return (v) => orbit(v, -12, 0);
    case 'ArrowRight':
      return (v) => orbit(v, 12, 0);
    case 'ArrowUp':
      return (v) => orbit(v, 0, -12);
    case 'ArrowDown':
      return (v) => orbit(v, 0, 12);
    case '+':
    case '=':
      return (v) => zoomAt(v, size, middle, 1.2);
    case '-':
      return (v) => zoomAt(v, size, middle, 1 / 1.2);
    default:
      return null;
  }
};
