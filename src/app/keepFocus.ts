/** The nearest thing left of the way up to what had the focus, that is still to be seen. */
const nearest = (trail: readonly Element[]): HTMLElement | undefined =>
  trail.find(
    (one): one is HTMLElement => one instanceof HTMLElement && one.isConnected && one.checkVisibility(),
  );

const cannotHold = (one: Element): boolean =>
  !one.isConnected || !one.checkVisibility() || (one as HTMLButtonElement).disabled === true;

/**
 * Keeps the focus on the page: when what had it is taken away, hidden or switched off, the part it stood in gets it.
 * A person's own click on bare paper still lets go of it.
 */
export const keepFocus = (): (() => void) => {
  let last: Element | null = null;
  let trail: readonly Element[] = [];
  const came = ({ target }: FocusEvent): void => {
    if (!(target instanceof Element)) return;
    last = target;
    const up: Element[] = [];
    for (let one = target.parentElement; one && one !== document.body; one = one.parentElement) up.push(one);
    trail = up;
  };
  const look = (): void => {
    const { activeElement } = document;
    const nowhere = activeElement === null || activeElement === document.body || activeElement === last;
    if (!nowhere || last === null || !cannotHold(last)) return;
    const home = nearest(trail);
    if (!home) return;
    if (!home.hasAttribute('tabindex')) home.tabIndex = -1;
    home.focus({ preventScroll: true });
  };
  const watch = new MutationObserver(() => requestAnimationFrame(look));
  document.addEventListener('focusin', came);
  watch.observe(document.body, {
    childList: true,
    subtree: true,
    attributes: true,
    attributeFilter: ['disabled', 'hidden', 'open'],
  });
  return () => {
    document.removeEventListener('focusin', came);
    watch.disconnect();
  };
};
