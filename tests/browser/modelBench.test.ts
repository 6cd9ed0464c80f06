import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { openChromium } from '../kit/chromium.ts';
import { misfits, openSheet, settled, touchInPicture } from '../kit/page.ts';

const address = inject('address');
let browser: Browser;
beforeAll(async () => {
  browser = await openChromium();
});
afterAll(() => browser.close());

const partOf = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Parts of the bench' }).getByRole('button', { name, exact: true });

const toBench = async (page: Page): Promise<void> => {
  await page
    .getByRole('navigation', { name: 'Route' })
    .getByRole('button', { name: /^Start/ })
    .click();
  await page.getByRole('button', { name: 'Model bench' }).click();
  await page.getByRole('heading', { name: 'Begin' }).waitFor();
};

/** Station, upper water line and half-width, lower water line and half-width. */
const table = [
  ['0', '20', '10', '0', '10'],
  ['24', '19 1/2', '9', '0', '9'],
  ['48', '18', '7 1/2', '1/2', '7 1/2'],
  ['66', '17', '6', '1', '6'],
];

const typeStations = async (page: Page): Promise<void> => {
  await page.getByLabel('New station, station').click();
  for (const row of table) {
    for (const [k, cell] of row.entries()) {
      await page.keyboard.type(cell);
      await page.keyboard.press(k < row.length - 1 ? 'Tab' : 'Enter');
    }
  }
};

describe('the model bench in a real browser', () => {
  // Counted by hand: 4 rings of 4, 3 bays of 4 longerons, 3 bays of 2 side and 2 flat diagonals, one across the first ring.
  it('builds a truss of four stations from a blank page by keyboard, and assesses it', async () => {
    const { page, noise } = await openSheet(browser, address, [1440, 900]);
    await toBench(page);
    await page.getByRole('button', { name: 'Blank', exact: true }).click();
    await typeStations(page);
    await partOf(page, 'Sizes').click();
    for (const kind of ['upper longeron', 'lower longeron', 'vertical', 'cross member', 'side diagonal']) {
      await page.getByLabel(`Size of ${kind}`).fill('5/8 x .035');
    }
    for (const kind of ['top diagonal', 'bottom diagonal', 'diagonal across the station'])
      await page.getByLabel(`Size of ${kind}`).fill('1/2x.035');
    await partOf(page, 'Bracing').click();
    await page.getByRole('button', { name: 'Bay 1, left side: none' }).focus();
    for (const key of ['/', 'ArrowRight', '\\', 'ArrowRight', '/', 'ArrowDown', '/', 'ArrowLeft', '\\'])
      await page.keyboard.press(key);
    await page.getByRole('button', { name: 'Bay 1, top: none' }).click();
    await page.getByRole('button', { name: 'Bay 3, right side: rising aft' }).waitFor();
    await page.getByLabel('Bottom: all bays at once').selectOption('alternating');
    await page.getByRole('button', { name: 'Station 1, across the stations: none' }).click();
    const odd = page.getByRole('region', { name: 'What is odd' });
    await odd.getByText('Nothing odd · 41 tubes · 16 clusters').waitFor();

    await partOf(page, 'Held and loaded').click();
    await page.getByRole('button', { name: 'Hung in a jig' }).click();
    await page.getByRole('button', { name: 'Own weight' }).click();
    await partOf(page, 'Use it').click();
    await page.getByRole('button', { name: 'New job on this model' }).click();
    await settled(page);
    await page.getByText('41 of 41 not looked at').waitFor();
    expect(noise).toEqual([]);
  });

  it('joins two clusters touched in the picture, takes one change back, and amends the open job with its findings kept', async () => {
    const { page, noise } = await openSheet(browser, address, [1440, 900]);
    await touchInPicture(page, 'U7L-L7L');
    await page.getByRole('button', { name: 'Bent', exact: true }).click();
    await page
      .getByRole('navigation', { name: 'Route' })
      .getByRole('button', { name: /^Start/ })
      .click();
    await page.getByRole('button', { name: 'Change this job’s model' }).click();
    await page.waitForFunction(() => (window.__tubewright?.frames().drawn ?? 0) > 0);
    await touchInPicture(page, 'U8L');
    await page.getByRole('region', { name: 'In hand' }).getByText('U8L').first().waitFor();
    await touchInPicture(page, 'L8R');
    await page.getByRole('button', { name: 'Join them with a tube' }).click();
    await page.getByLabel('Station 9, station', { exact: true }).fill('140');
    await page.keyboard.press('Tab');
    await page.getByRole('button', { name: 'Undo: station of 9' }).click();
    await page.getByRole('button', { name: /^Undo: tube U8L to L8R/ }).waitFor();
    await partOf(page, 'Use it').click();
    const amend = page.getByRole('region', { name: 'Amend the open job' });
    await amend.getByText('U8L-L8R').waitFor();
    await amend.getByRole('button', { name: 'Amend the open job' }).click();
    await settled(page);
    await page.getByRole('combobox', { name: /Find a tube/ }).fill('U7L-L7L');
    await page.keyboard.press('Enter');
    await page.getByRole('region', { name: 'Selected' }).getByText('Bent, undecided').waitFor();
    expect(noise).toEqual([]);
  });

  it('marks bad rows of a pasted table, takes the good ones, and builds a rough truss', async () => {
    const { page, noise } = await openSheet(browser, address, [1024, 768]);
    await toBench(page);
    await page.getByRole('button', { name: 'Blank', exact: true }).click();
    await partOf(page, 'Tables').click();
    await page
      .getByLabel('Paste a table here')
      .fill('1\t0\t20\t10\t0\t10\n2\t24\t20\t\t0\t10\n3\t48\t20\t10\t0\t10');
    await page.getByText('2 rows to take, 1 with something wrong').waitFor();
    await page.getByText(/Upper half-width: One of the two is given/).waitFor();
    await page.getByRole('button', { name: 'Take 2 good rows' }).click();
    await partOf(page, 'Stations').click();
    await page.getByLabel('Station 3, station', { exact: true }).waitFor();
    await partOf(page, 'Begin').click();
    await page.getByLabel('Rings, forward to aft').fill('6');
    for (const [label, size] of [
      ['length, first ring to last', '120'],
      ['height, forward', '30'],
      ['height, aft', '10'],
      ['width, forward', '24'],
    ] as const)
      await page.getByLabel(`Rough truss: ${label}`).fill(size);
    await page.getByRole('button', { name: 'Build the rough truss' }).click();
    await page.getByText('22 assumed, drawn dotted').waitFor();
    expect(noise).toEqual([]);
  });

  it.each([
    [1440, 900],
    [1024, 768],
    [820, 1180],
    [390, 844],
  ] as const)('has nothing overlapping or cut off at %i by %i', async (width, height) => {
    const { page, noise } = await openSheet(browser, address, [width, height], { touch: width < 1000 });
    await toBench(page);
    await page.getByRole('button', { name: 'This job’s model' }).click();
    const wrong: string[] = [];
    const parts = page.getByRole('navigation', { name: 'Parts of the bench' }).getByRole('button');
    for (const light of ['day', 'night']) {
      if (light === 'night') {
        const choice = page.getByRole('combobox', { name: 'Light' });
        // A phone has no room for the choice on the bench; it is made on Start.
        if (await choice.isVisible()) await choice.selectOption('night');
        else
          await page.evaluate(() => {
            document.documentElement.dataset.light = 'night';
          });
      }
      for (const part of await parts.all()) {
        await part.click();
        await page.waitForTimeout(150);
        const name = `${(await part.textContent())!} ${light}`;
        await page.screenshot({ path: `tests/browser/shots/bench-${width}-${name}.png` });
        if (light === 'day') wrong.push(...(await misfits(page)).map((one) => `${name}: ${one}`));
        if (width !== { day: 1440, night: 390 }[light]) continue;
        const { violations } = await new AxeBuilder({ page })
          .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
          .analyze();
        wrong.push(...violations.map((v) => `${name}: ${v.id} ${v.nodes[0]?.target.join(' ')}`));
      }
    }
    expect(wrong).toEqual([]);
    expect(noise).toEqual([]);
  });
});
