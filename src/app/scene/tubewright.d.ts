/** For browser tests; set by the Scene while it is shown, and used by nothing of ours. */
interface TubewrightHook {
  /** A member's middle or a cluster on the page, CSS pixels; `null` for an id it does not know. */
  readonly project: (id: string) => { readonly x: number; readonly y: number } | null;
  /** Frames drawn, and draw calls of the latest one. */
  readonly frames: () => { readonly drawn: number; readonly calls: number };
}

interface Window {
  __tubewright?: TubewrightHook;
}
