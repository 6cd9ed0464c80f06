/** For browser tests; set by the Scene while it is shown, and used by nothing of ours. */
interface TubewrightHook {
  /** A member's middle or a cluster on the page, CSS pixels; `null` for an id it does not know. */
  readonly project: (id: string) => { readonly x: number; readonly y: number } | null;
  /** What a click at a place of the page would pick first; picks nothing. */
  readonly pick: (at: { readonly x: number; readonly y: number }) => string | null;
  /** Frames drawn, and draw calls of the latest one. */
  readonly frames: () => { readonly drawn: number; readonly calls: number };
}

interface Window {
  __tubewright?: TubewrightHook;
}
