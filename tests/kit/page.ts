import type { Browser, BrowserContext, Page } from 'playwright-core';
import { expect } from 'vitest';

/** Console lines that are known, harmless and not ours. */
const known = [
  /THREE\.Clock/, // fiber 9.8 on three 0.187 (stack notes)
  /GPU stall due to ReadPixels|GL Driver Message/, // software WebGL in a headless Chromium
];

export interface Sheet {
  readonly page: Page;
  readonly context: BrowserContext;
  /** What the page said on its console or asked of any other machine. Must be empty at the end. */
  readonly noise: readonly string[];
}

/** Opens the app in a fresh profile at a size and waits until the truss is drawn and the sums are done. */
export const openSheet = async (
  browser: Browser,
  address: string,
  [width, height]: readonly [number, number] = [1100, 750],
  options: { readonly touch?: boolean; readonly reducedMotion?: boolean } = {},
): Promise<Sheet> => {
  const context = await browser.newContext({
    viewport: { width, height },
    acceptDownloads: true,
    hasTouch: options.touch ?? false,
    reducedMotion: options.reducedMotion === false ? 'no-preference' : 'reduce',
  });
  const page = await context.newPage();
  const noise: string[] = [];
  page.on('console', (line) => {
    if (!['warning', 'error'].includes(line.type())) return;
    if (!known.some((one) => one.test(line.text()))) noise.push(`${line.type()}: ${line.text()}`);
  });
  page.on('pageerror', (fault) => noise.push(`fault: ${fault.message}`));
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(address) && !/^(blob|data):/.test(url)) noise.push(`asked another machine: ${url}`);
  });
  await page.goto(`${address}?aa=0`);
  await settled(page);
  return { page, context, noise };
};

/** Waits until the truss is drawn and nothing is being worked out. */
export const settled = async (page: Page): Promise<void> => {
  await page.waitForFunction(() => (window.__tubewright?.frames().drawn ?? 0) > 0, undefined, {
    timeout: 90_000,
  });
  await page.getByText('Figures are up to date').waitFor({ timeout: 90_000 });
};

/** Clicks a tube's middle or a cluster in the picture, where the scene says it is. */
export const touchInPicture = async (
  page: Page,
  id: string,
  modifiers: ('Shift' | 'Control')[] = [],
): Promise<void> => {
  const at = await page.evaluate((one) => window.__tubewright?.project(one) ?? null, id);
  if (!at) return expect.fail(`${id} is not in the picture`);
  for (const key of modifiers) await page.keyboard.down(key);
  await page.mouse.click(at.x, at.y);
  for (const key of modifiers) await page.keyboard.up(key);
};

/** Every visible control or text block that sticks out of the window or lies over another of its kind. */
export const misfits = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const wrong: string[] = [];
    const seen = (e: Element): boolean => {
      const r = e.getBoundingClientRect();
      const style = getComputedStyle(e);
      return (
        r.width > 0 &&
        r.height > 0 &&
        e.checkVisibility() &&
        style.visibility !== 'hidden' &&
        style.opacity !== '0'
      );
    };
    /** The part of an element that its scrolling ancestors let through; null when nothing is left of it. */
    const shown = (e: Element) => {
      const own = e.getBoundingClientRect();
      let [left, top, right, bottom] = [own.left, own.top, own.right, own.bottom];
      for (let up = e.parentElement; up && up !== document.body; up = up.parentElement) {
        if (getComputedStyle(up).overflow === 'visible') continue;
        const r = up.getBoundingClientRect();
        [left, top] = [Math.max(left, r.left), Math.max(top, r.top)];
        [right, bottom] = [Math.min(right, r.right), Math.min(bottom, r.bottom)];
      }
      return right - left > 2 && bottom - top > 2 ? { left, top, right, bottom } : null;
    };
    // what lies under an open dialog cannot be touched
    const dialog = document.querySelector('dialog:modal') ?? document;
    const controls = [...dialog.querySelectorAll('button, select, input, summary, a[href]')]
      .filter(seen)
      .flatMap((e) => {
        const r = shown(e);
        return r ? [{ e, r }] : [];
      });
    const name = (e: Element): string =>
      (e.getAttribute('aria-label') ?? e.textContent ?? e.tagName).trim().slice(0, 40);
    for (const { e, r } of controls) {
      if (r.right > innerWidth + 1 || r.left < -1) wrong.push(`${name(e)} sticks out sideways`);
    }
    for (let a = 0; a < controls.length; a++)
      for (let b = a + 1; b < controls.length; b++) {
        const [p, q] = [controls[a]!, controls[b]!];
        if (p.e.contains(q.e) || q.e.contains(p.e)) continue;
        const x = Math.min(p.r.right, q.r.right) - Math.max(p.r.left, q.r.left);
        const y = Math.min(p.r.bottom, q.r.bottom) - Math.max(p.r.top, q.r.top);
        if (x > 2 && y > 2) wrong.push(`${name(p.e)} lies over ${name(q.e)}`);
      }
    if (document.documentElement.scrollWidth > innerWidth + 1) wrong.push('the page scrolls sideways');
    return wrong;
  });

/** Controls that a glove would miss: less than 44 px in a direction, the label of a tick box counted in. */
export const smallTargets = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('button, select, input, summary, a[href]')].flatMap((e) => {
      const own = e.closest('label') ?? e;
      const r = own.getBoundingClientRect();
      if (r.width === 0 || r.height === 0 || !e.checkVisibility() || e.closest('[hidden], svg')) return [];
      const name = (e.getAttribute('aria-label') ?? e.textContent ?? e.id).trim().slice(0, 30);
      // half a pixel of rounding
      return r.height < 43.5 || r.width < 43.5
        ? [`${name} is ${Math.round(r.width)} by ${Math.round(r.height)}`]
        : [];
    }),
  );

/** Goes to a part of the route by the first words of its button. */
export const go = (page: Page, part: string): Promise<void> =>
  page
    .getByRole('navigation', { name: 'Route' })
    .getByRole('button', { name: new RegExp(`^${part}`) })
    .click();

/** Gives a file of JSON text to what a button asks for. */
export const give = async (
  page: Page,
  button: string | RegExp,
  name: string,
  text: string,
): Promise<void> => {
  const choose = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: button }).click();
  await (await choose).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
};
