import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { accessFaults } from '../kit/access.ts';
import { openChromium } from '../kit/chromium.ts';
import {
  give,
  go,
  misfits,
  openSheet,
  type Sheet,
  settled,
  smallTargets,
  touchInPicture,
} from '../kit/page.ts';

const address = inject('address');
let browser: Browser;
beforeAll(async () => {
  browser = await openChromium();
});
afterAll(() => browser.close());

const demo = JSON.parse(readFileSync('demo-data/ground-loop.json', 'utf8'));
const chart = { width: 1440, height: 900 };

/** The smallest upright and flat in every run, all of them in a soak. */
const sizes = [
  [360, 740],
  [740, 360],
  [820, 1180],
  [2560, 1440],
] as const;

/** Every light by an automated check of WCAG 2.2 AA, and every size for what sticks out, lies over, or is too small. */
const looked = async (page: Page, state: string): Promise<readonly string[]> => {
  const wrong: string[] = [];
  for (const light of ['day', 'night', 'outdoor']) {
    await page.evaluate((one) => {
      document.documentElement.dataset.light = one;
    }, light);
    await page.waitForTimeout(120);
    wrong.push(...(await accessFaults(page)).map((one) => `${state}, ${light}: ${one}`));
  }
  for (const [width, height] of process.env.SOAK ? sizes : sizes.slice(0, 2)) {
    await page.setViewportSize({ width, height });
    await page.waitForTimeout(150);
    const odd = [...(await misfits(page)), ...(await smallTargets(page))];
    wrong.push(...odd.map((one) => `${state}, ${width} wide: ${one}`));
    if (odd.length > 0)
      await page.screenshot({ path: `tests/browser/shots/state-${state.replaceAll(' ', '-')}-${width}.png` });
  }
  await page.setViewportSize(chart);
  return wrong;
};

const opened = (): Promise<Sheet> => openSheet(browser, address, [1440, 900], { touch: true });

describe('states of the screen', () => {
  it('an empty job: each part of the route says what is missing, and all of it can be read and hit', async () => {
    const { page, context, noise } = await opened();
    await go(page, 'Start');
    await page
      .getByRole('button', { name: /^New job:/ })
      .first()
      .click();
    await settled(page);
    const route = page.getByRole('navigation', { name: 'Route' }).getByRole('button');
    const wrong: string[] = [];
    for (let k = 0; k < (await route.count()); k++) {
      const word = ((await route.nth(k).textContent()) ?? '').replace(/[^A-Za-z-].*$/, '');
      await route.nth(k).click();
      await page.waitForTimeout(200);
      wrong.push(...(await accessFaults(page)).map((one) => `${word}: ${one}`));
      wrong.push(
        ...[...(await misfits(page)), ...(await smallTargets(page))].map((one) => `${word}: ${one}`),
      );
      expect(await page.getByText(/Our own fault/).count(), word).toBe(0);
    }
    expect(wrong).toEqual([]);
    expect(noise).toEqual([]);
    await context.close();
  });

  it('dialog, found list, table, several picked, refused files, conflicts, a photo being marked', async () => {
    const { page, context } = await opened();
    const wrong: string[] = [];
    await page.keyboard.press('Shift+?');
    await page.getByRole('dialog', { name: 'Keys' }).waitFor();
    wrong.push(...(await looked(page, 'key sheet')));
    await page.keyboard.press('Escape');

    await page.getByRole('combobox', { name: /Find a tube/ }).fill('bay 4');
    await page.getByRole('listbox', { name: 'Found' }).waitFor();
    wrong.push(...(await looked(page, 'found list')));
    // the box finds clusters and actions too
    const box = page.getByRole('combobox', { name: /Find a tube/ });
    await box.fill('upper right 4');
    await page.getByRole('option', { name: /U4R/ }).first().waitFor();
    await box.fill('light night');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.evaluate(() => document.documentElement.dataset.light)).toBe('night');

    await page.getByRole('combobox', { name: 'Picture or table' }).selectOption('table');
    await page.getByRole('grid').waitFor();
    wrong.push(...(await looked(page, 'table')));
    await page.getByRole('combobox', { name: 'Picture or table' }).selectOption('picture');

    // the picture comes back with the size of its new place
    await settled(page);
    await page.waitForTimeout(500);
    for (const id of ['U7L-L7L', 'U6L-L6L', 'L3R-L4R']) await touchInPicture(page, id, ['Shift']);
    await page.getByRole('button', { name: 'Select nothing' }).waitFor();
    wrong.push(...(await looked(page, 'several picked')));

    await go(page, 'Start');
    await give(page, /Open a file/, 'broken.json', '{"format": "tubewright-job"');
    await page
      .getByRole('alert')
      .getByText(/broken.json/)
      .waitFor();
    wrong.push(...(await looked(page, 'refused file')));
    await page.getByRole('alert').getByRole('button', { name: 'Close' }).click();

    const stamp = { by: 'Ben', at: '2031-05-04T10:00:00Z', device: 'tablet 2' };
    const other = demo.records.map((record: object, k: number) =>
      k % 3 === 0 ? { ...record, ...stamp } : record,
    );
    await give(
      page,
      "Join another tablet's job",
      'tablet2.json',
      JSON.stringify({ ...demo, aircraft: 'Other blue one', records: other }),
    );
    const preview = page.getByRole('region', { name: 'From tablet2.json' });
    await preview.getByText(/Said differently/).waitFor();
    expect(await preview.textContent()).not.toMatch(/[{}]/);
    wrong.push(...(await looked(page, 'conflicts')));
    await page.screenshot({ path: 'tests/browser/shots/conflicts.png' });
    await page.getByRole('button', { name: 'Leave it' }).click();

    await go(page, 'Walk-round');
    await page.getByRole('button', { name: 'Select nothing' }).click();
    await page.getByRole('button', { name: 'Left side' }).click();
    await touchInPicture(page, 'U7L-L7L');
    const png = Buffer.from(
      'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
      'base64',
    );
    await page
      .getByLabel('Photo from a file')
      .setInputFiles({ name: 'p.png', mimeType: 'image/png', buffer: png });
    const shot = page.getByRole('button', { name: /^Photo to mark/ });
    await shot.focus();
    for (const key of ['Enter', 'ArrowRight', 'Enter']) await page.keyboard.press(key);
    wrong.push(...(await looked(page, 'photo form')));
    expect(wrong).toEqual([]);
    await context.close();
  });

  it('faults of our own: a part that cannot come, a picture that cannot be drawn, sums that fail', async () => {
    const context = await browser.newContext({
      viewport: chart,
      hasTouch: true,
      reducedMotion: 'reduce',
      serviceWorkers: 'block',
    });
    const page = await context.newPage();
    await page.route(/assets\/(Plan|work\.worker)-/, (route) => route.abort());
    await page.addInitScript(() => {
      const real = HTMLCanvasElement.prototype.getContext;
      HTMLCanvasElement.prototype.getContext = function (
        this: HTMLCanvasElement,
        kind: string,
        ...rest: never[]
      ) {
        return kind.startsWith('webgl')
          ? null
          : (real as (...all: unknown[]) => never).call(this, kind, ...rest);
      } as never;
    });
    await page.goto(`${address}?aa=0`);
    await page
      .getByText(/This browser cannot draw the 3D picture/)
      .waitFor({ state: 'attached', timeout: 60_000 });
    await page.getByRole('grid').waitFor();
    await page.getByText(/The sums failed by our own fault/).waitFor({ timeout: 60_000 });
    const wrong = [...(await looked(page, 'no picture and no sums'))];
    await go(page, 'Plan');
    await page.getByText(/This part of the screen failed\. The job is saved/).waitFor({ timeout: 30_000 });
    wrong.push(...(await looked(page, 'a part that failed')));
    // the rest goes on
    await go(page, 'Walk-round');
    await page.getByRole('row', { name: /U7L-L7L/ }).click();
    await page.getByRole('button', { name: 'Bent', exact: true }).click();
    await page.getByRole('region', { name: 'Selected' }).getByText('Bent, undecided').waitFor();
    expect(wrong).toEqual([]);
    await context.close();
  });
});
