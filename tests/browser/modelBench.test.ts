import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { accessFaults } from '../kit/access.ts';
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

/** A printed table, invented: station, upper water line, half-width, lower water line, half-width. */
const printed = `
0      | 28     | 13     | 0      | 13
20 1/2 | 29 1/4 | 13     | -1     | 13
42     | 30     | 12 3/4 | -2     | 12 3/4
62 1/4 | 29 1/2 | 12     | -1 3/4 | 12
84     | 28     | 11     | -1     | 11
104    | 26 1/4 | 9 1/2  | 0      | 9 1/2
124    | 24 1/2 | 8      | 1      | 8
142    | 22 3/4 | 6 1/4  | 2 1/4  | 6 1/4
160    | 21     | 4 1/4  | 3 3/4  | 4 1/4
178    | 19 1/2 | 0      | 5 1/2  | 0
`;

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

  // The printed table below, typed as it stands: counted by hand 9 bays of 4 longerons, 9 rings of 4 tubes and a tail
  // post, 18 side and 16 flat diagonals, 8 across the stations; one opening; gear of 2 clusters and 6 tubes. 120 tubes.
  it('takes a whole truss of 120 tubes from a printed table in one sitting, without the mouse between rows', async () => {
    const { page, noise } = await openSheet(browser, address, [1440, 900]);
    let keys = 0;
    let presses = 0;
    const type = async (...cells: readonly string[]): Promise<void> => {
      for (const cell of cells) {
        await page.keyboard.type(cell);
        await page.keyboard.press('Tab');
        keys += cell.length + 1;
      }
    };
    const enter = async (): Promise<void> => {
      await page.keyboard.press('Enter');
      keys += 1;
    };
    const go = async (name: string): Promise<void> => {
      await partOf(page, name).click();
      presses += 1;
    };
    await toBench(page);
    const began = Date.now();
    await page.getByRole('button', { name: 'Blank', exact: true }).click();
    await page.getByLabel('New station, station').click();
    for (const line of printed.trim().split('\n')) {
      const cells = line.split('|').map((cell) => cell.trim());
      await type(...cells.slice(0, -1));
      await page.keyboard.type(cells.at(-1)!);
      keys += cells.at(-1)!.length;
      await enter();
    }
    await go('Sizes');
    await page.getByLabel('Size of upper longeron').click();
    await type(...['3/4 x .035', '3/4 x .049', '5/8 x .035', '5/8 x .035', '5/8 x .035']);
    await type('1/2 x .035', '1/2 x .035', '1/2 x .035');
    await go('Bracing');
    for (const side of ['Left side', 'Top', 'Bottom']) {
      await page.getByLabel(`${side}: all bays at once`).selectOption('alternating');
      presses += 2;
    }
    await page.getByRole('button', { name: 'Station 1, across the stations: none' }).focus();
    for (let k = 0; k < 8; k++)
      for (const key of ['/', 'ArrowRight']) {
        await page.keyboard.press(key);
        keys += 1;
      }
    await go('Points and tubes');
    await page.getByLabel('Tube to leave out').click();
    await page.keyboard.type('U4L-L5L');
    await enter();
    await page.getByLabel('Cluster to add or move').click();
    for (const row of [
      ['GL', '30', '-20', '-18', 'gear, left'],
      ['GR', '30', '20', '-18', 'gear, right'],
    ]) {
      await type(...row.slice(0, -1));
      await page.keyboard.type(row.at(-1)!);
      await enter();
    }
    await page.getByLabel('New tube, from').click();
    for (const [from, to] of ['L2L GL', 'L3L GL', 'L2R GL', 'L2R GR', 'L3R GR', 'L2L GR'].map((t) =>
      t.split(' '),
    )) {
      await type(from!, to!);
      // the size of the last one stays
      if (from === 'L2L' && to === 'GL') await page.keyboard.type('1 x .058');
      await enter();
    }
    await go('Distances');
    await page.getByLabel('Distance from').click();
    for (const row of [
      ['U1L', 'L1R', '38 3/16', '1/16', 'sheet 2'],
      ['L1L', 'L2L', '20 17/32', '1/32', 'sheet 2'],
    ]) {
      await page.keyboard.press('Control+a');
      for (const [k, cell] of row.entries()) {
        await page.keyboard.press('Control+a');
        await page.keyboard.type(cell);
        if (k < row.length - 1) await page.keyboard.press('Tab');
        keys += cell.length + 1;
      }
      await enter();
    }
    await go('Held and loaded');
    for (const name of ['On its gear', 'Hung in a jig', 'Own weight', 'Tail down-load', 'Landing', 'Twist']) {
      await page.getByRole('button', { name, exact: true }).click();
      presses += 1;
    }
    await go('Begin');
    await page.getByLabel('Name of the model').click();
    await type('Old biplane', 'Printed table, sheet 1', 'Station 0 at the firewall, water line 0 at L1');
    await go('Use it');
    const odd = page.getByRole('region', { name: 'What is odd' });
    await odd.getByText('120 tubes · 40 clusters').waitFor();
    expect(await page.getByText('Still to do').count()).toBe(0);
    await page.screenshot({ path: 'tests/browser/shots/bench-120.png' });
    // keystrokes of a person: this is what the sitting costs
    expect(keys).toBeLessThan(800);
    expect(presses).toBeLessThan(30);
    expect(Date.now() - began).toBeLessThan(120_000);
    await page.getByRole('button', { name: 'New job on this model' }).click();
    await settled(page);
    await page.getByText('120 of 120 not looked at').waitFor();
    expect(noise).toEqual([]);
  });

  it('changes ends, bolts, fixity and what is near a tube, moments and gravity, and the order of sizes; undoes each', async () => {
    const { page, noise } = await openSheet(browser, address, [1440, 900]);
    await toBench(page);
    await page.getByRole('button', { name: 'A copy of practice truss' }).click();
    await page.waitForFunction(() => (window.__tubewright?.frames().drawn ?? 0) > 0);
    await partOf(page, 'Points and tubes').click();
    await page.getByLabel('New tube, from').click();
    for (const cell of ['U1L', 'L2R']) {
      await page.keyboard.type(cell);
      await page.keyboard.press('Tab');
    }
    await page.keyboard.type('5/8 x .035');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Change U1L to L2R' }).click();
    const hand = page.getByRole('region', { name: 'In hand' });
    await hand.getByText('Ends, material, what is near it').click();
    await hand.getByLabel('U1L-L2R: end at L2R').selectOption('pinned');
    await hand.getByLabel('Bolted: no saw needed').check();
    await hand.getByLabel('U1L-L2R: end fixity').fill('2');
    await hand.getByLabel('U1L-L2R: what is near it').fill('fabric, fuel line');
    await page.keyboard.press('Enter');
    await page.getByText('U1L-L2R · 5/8 × .035 · pinned · bolted · near fabric, fuel line').waitFor();
    await page.screenshot({ path: 'tests/browser/shots/bench-in-hand.png' });
    expect(await misfits(page)).toEqual([]);
    await page.getByRole('button', { name: 'Undo: what is near of U1L-L2R' }).click();
    await page.getByText('U1L-L2R · 5/8 × .035 · pinned · bolted', { exact: true }).waitFor();
    await page.getByRole('button', { name: 'Undo: fixity of U1L-L2R' }).click();
    await page.getByRole('button', { name: 'Undo: bolts of U1L-L2R' }).click();
    await page.getByText('U1L-L2R · 5/8 × .035 · pinned', { exact: true }).waitFor();

    await partOf(page, 'Sizes').click();
    for (const size of ['1/2 x .035', '5/8 x .035']) {
      await page.getByRole('combobox', { name: 'Where', exact: true }).selectOption('bay 2');
      await page.getByLabel('Other size', { exact: true }).fill(size);
      await page.getByRole('button', { name: 'Add this size' }).click();
    }
    const sizes = page.getByRole('region', { name: 'Other sizes here and there' }).getByRole('listitem');
    await page.getByRole('button', { name: 'Earlier the size for bay 2' }).nth(1).click();
    expect(await sizes.first().textContent()).toContain('5/8');
    await page.getByRole('button', { name: 'Change the size for bay 2' }).first().click();
    await page.getByLabel('Other size', { exact: true }).fill('3/4 x .049');
    await page.getByRole('button', { name: 'Change this size' }).click();
    expect(await sizes.first().textContent()).toContain('3/4 × .049');

    await partOf(page, 'Held and loaded').click();
    await page.getByText('100 lbf down at the aft ring').click();
    const load = '100 lbf down at the aft ring';
    await page.getByLabel(`${load}: gravity, g right`).fill('0.5');
    await page.getByText('Moment').first().click();
    await page.getByLabel(`${load}: in-lbf about the aft axis at U4L`).fill('250');
    await page.keyboard.press('Tab');
    await page.getByRole('button', { name: `Undo: load case ${load}` }).click();
    await page.getByRole('button', { name: `Undo: load case ${load}` }).click();
    expect(await page.getByLabel(`${load}: gravity, g right`).inputValue()).toBe('0');
    expect(noise).toEqual([]);
  });

  it('mends what is odd with one press, and keeps distances typed for measuring up when the page is opened afresh', async () => {
    const { page, noise } = await openSheet(browser, address, [1440, 900]);
    await toBench(page);
    await page.getByRole('button', { name: 'A copy of practice truss' }).click();
    await partOf(page, 'Sizes').click();
    await page.getByLabel('Size of upper longeron').fill('0.77 x .036');
    await page.keyboard.press('Tab');
    const odd = page.getByRole('region', { name: 'What is odd' });
    await odd.getByText('is not in the list of stock sizes').first().waitFor();
    await odd.getByRole('button', { name: /^Take 3\/4 × \.035/ }).click();
    expect(await page.getByLabel('Size of upper longeron').inputValue()).toBe('3/4 × .035');
    await partOf(page, 'Begin').click();
    await page.getByText(/^Distances to take: 0 of/).click();
    const first = page.locator('.pair input').first();
    const label = (await first.getAttribute('aria-label'))!;
    await first.fill('24 1/16');
    await page.getByText(/^Distances to take: 1 of/).waitFor();
    await page.reload();
    await settled(page);
    await toBench(page);
    await page.getByText(/^Distances to take: 1 of/).click();
    expect(await page.getByLabel(label, { exact: true }).inputValue()).toBe('24 1/16');
    expect(noise).toEqual([]);
  });

  it('shows garbage row by row, takes nothing from it, and loses nothing', async () => {
    const { page, noise } = await openSheet(browser, address, [1024, 768]);
    await toBench(page);
    await page.getByRole('button', { name: 'A copy of practice truss' }).click();
    await partOf(page, 'Tables').click();
    const paste = page.getByLabel('Paste a table here');
    const preview = page.getByRole('region', { name: 'Preview' });
    for (const [garbage, rows] of [
      ['\u0000\u0001;;;\n"unclosed\tquote', 1],
      ['=SUM(A1)\t#REF!\t1e999\tNaN\t-\t½½\n9\t1e5\t20\t10\t0\t10', 2],
      [`<script>alert(1)</script>\n${'x\t'.repeat(500)}`, 2],
    ] as const) {
      await paste.fill(garbage);
      await preview.waitFor();
      expect(await preview.locator('tr.bad').count(), garbage.slice(0, 20)).toBeGreaterThanOrEqual(rows);
      expect(await preview.getByRole('button', { name: /^Take 0 good rows/ }).isDisabled()).toBe(true);
    }
    await page
      .getByRole('region', { name: 'What is odd' })
      .getByText(/16 clusters/)
      .waitFor();
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
        wrong.push(...(await accessFaults(page)).map((one) => `${name}: ${one}`));
      }
    }
    expect(wrong).toEqual([]);
    expect(noise).toEqual([]);
  });
});
