/** Long enough for the frame that shows a change, short enough for nobody to lose a second of work. */
const AFTER_FRAME_MS = 30;

/** Does once, after the next frame, what need not be done before a change is seen. Asked again meanwhile, it is still done once. */
export const afterFrame = (work: () => void) => {
  let waits: ReturnType<typeof setTimeout> | undefined;
  const drop = (): void => {
    clearTimeout(waits);
    waits = undefined;
  };
  const soon = (): void => {
    waits ??= setTimeout(() => {
      waits = undefined;
      work();
    }, AFTER_FRAME_MS);
  };
  return { soon, drop };
};
