/**
 * Puts the earlier object wherever the new one is deep-equal, so that what did not change stays `===`
 * and stages (or screens) that remember by identity do no work again. Plain JSON-like data only; other
 * objects (typed arrays, maps) count as new.
 */
export const share = <T>(previous: unknown, received: T): T => {
  if (Object.is(previous, received)) return received;
  if (Array.isArray(received)) {
    if (!Array.isArray(previous)) return received;
    const items = received.map((item, i) => share(previous[i], item));
    const same = items.length === previous.length && items.every((item, i) => item === previous[i]);
    return (same ? previous : items) as T;
  }
  if (!isPlain(received) || !isPlain(previous)) return received;
  const keys = Object.keys(received);
  const shared = Object.fromEntries(keys.map((key) => [key, share(previous[key], received[key])]));
  const same =
    keys.length === Object.keys(previous).length &&
    keys.every((key) => key in previous && Object.is(shared[key], previous[key]));
  return (same ? previous : shared) as T;
};

const isPlain = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype;
