import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { openChromium } from '../kit/chromium.ts';
import { go, openSheet, settled } from '../kit/page.ts';

const address = inject('address');
let browser: Browser;
beforeAll(async () => {
  browser = await openChromium();
});
afterAll(() => browser.close());

const open = async (word: string, size: readonly [number, number] = [1440, 900]) => {
  const sheet = await openSheet(browser, address, size);
  await go(sheet.page, word);
  return { ...sheet, bar: sheet.page.getByRole('region', { name: 'Stages of the work' }) };
};

/** The step's row, found by the name of its tick. */
const row = (page: Page, line: string): Locator =>
  page
    .getByRole('listitem')
    .filter({ has: page.getByRole('checkbox', { name: `Done: ${line}`, exact: true }) });

/** Drags with the mouse as a hand does: pressed on the grip, moved in small steps, let go. */
const drag = async (page: Page, from: Locator, to: Locator): Promise<void> => {
  const grip = from.getByTitle('Drag to another place');
  await grip.scrollIntoViewIfNeeded();
  const [start, end] = [await grip.boundingBox(), await to.boundingBox()];
  if (!start || !end) throw new Error('Nothing to drag, or nowhere to drag it to.');
  await page.mouse.move(start.x + start.width / 2, start.y + start.height / 2);
  await page.mouse.down();
  await page.mouse.move(start.x + 30, start.y + start.height / 2, { steps: 3 });
  await page.mouse.move(end.x + 90, end.y + end.height / 2, { steps: 8 });
  await page.mouse.up();
};

describe('the plan on the screen', () => {
  it('ticks a step with who and when', async () => {
    const { page, noise } = await open('Plan');
    await page.getByLabel('Your name, kept on this device').first().fill('Ana Invented');
    await page.keyboard.press('Enter');
    const step = row(page, 'Drain fuel and oil, purge tanks and lines · whole truss');
    await step.getByRole('checkbox').check();
    await step.getByText(/^Ana Invented, \d{4}-\d{2}-\d{2}/).waitFor();
    await page.getByText(/^1 of \d+ steps ticked/).waitFor();
    expect(noise).toEqual([]);
  });

  it('keeps a cut closed until its hold points are done, and opens one by name with the reason', async () => {
    const { page, bar, noise } = await open('Plan');
    await bar.getByRole('button', { name: /^Bay 3:/ }).click();
    const cut = row(page, 'Cut · L3R-L4L');
    await cut
      .getByText(/^Closed until: H1 Reference accepted; H2 .*H4 Held, and baseline taken: L3R-L4L$/)
      .waitFor();
    expect(await cut.getByRole('checkbox').isDisabled()).toBe(true);

    await page.getByLabel('Your name, kept on this device').first().fill('Ana Invented');
    await page.keyboard.press('Enter');
    const gates = page.getByRole('region', { name: 'Hold points of the work' });
    const gate = gates.getByRole('group').filter({ hasText: 'H2 Damage map complete' });
    await gate.getByText('H2 Damage map complete').click();
    const press = gate.getByRole('button', { name: 'Open it under my name' });
    expect(await press.isDisabled()).toBe(true);
    await gate.getByLabel(/^Something is missing/).fill('Tail was looked at on paper');
    await press.click();
    await gate.getByText(/^Opened by Ana Invented, .*: Tail was looked at on paper$/).waitFor();
    await cut.getByText(/^Closed until: H1 Reference accepted; H3 Plan agreed; H4/).waitFor();
    expect(await cut.getByRole('checkbox').isDisabled()).toBe(true);
    expect(noise).toEqual([]);
  });

  it('moves a dragged step where it may go, and refuses each other drag with the reason', async () => {
    const { page, noise } = await open('Plan');
    const steps = page.getByRole('region', { name: 'Steps' });
    const battery = 'Take the battery out, electronics off · whole truss';
    const defuel = 'Drain fuel and oil, purge tanks and lines · whole truss';
    const photo = 'Photograph as found · whole truss';
    await drag(page, row(page, battery), row(page, defuel));
    await steps.getByRole('status').getByText(`Moved: "${battery}" is now step 2 of`).waitFor();
    await row(page, battery)
      .getByRole('button', { name: /^2 Take the battery out/ })
      .waitFor();
    await settled(page);

    // a second drag, to the top: the truss must be held before it is photographed
    await page.setViewportSize({ width: 1440, height: 1900 });
    await drag(
      page,
      row(page, photo),
      row(page, 'Wait for release of the wreck, keep people off · whole truss'),
    );
    const refused = steps.getByRole('alert');
    await refused
      .getByText(/^Not moved\. The truss is held on sound clusters before it is stripped or measured\./)
      .waitFor();
    await refused
      .getByText(`"${photo}" comes after "Hold the truss on sound clusters, level it · whole truss".`)
      .waitFor();

    // a third, let go on the head of the part: as good as its first step
    await drag(page, row(page, photo), steps.getByText('Make ready, look, measure as found'));
    await refused.getByText(/^Not moved\. The truss is held/).waitFor();

    // on itself, and outside the list
    await drag(page, row(page, photo), row(page, photo));
    await refused.getByText(`Not moved. "${photo}" stands there already.`).waitFor();
    await drag(page, row(page, photo), page.getByText('Figures are up to date'));
    await refused.getByText(`Not moved. "${photo}" was let go outside the list of steps.`).waitFor();
    await row(page, battery)
      .getByRole('button', { name: /^2 Take the battery out/ })
      .waitFor();
    expect(noise).toEqual([]);
  });

  it('moves a step by key, by press and a long way, with the same answers', async () => {
    const { page, noise } = await open('Plan');
    const steps = page.getByRole('region', { name: 'Steps' });
    const battery = row(page, 'Take the battery out, electronics off · whole truss');
    const name = battery.getByRole('button', { name: /Take the battery out/ });
    await name.focus();
    await page.keyboard.press('Alt+ArrowUp');
    await steps
      .getByRole('status')
      .getByText(/is now step 2 of/)
      .waitFor();
    // at once, while that is still being worked out: one up from there breaks a rule
    await page.keyboard.press('Alt+ArrowUp');
    await steps
      .getByRole('alert')
      .getByText(/^Not moved\. Nothing is touched before the wreck is released/)
      .waitFor();
    await settled(page);
    await name.click();
    await battery.getByRole('button', { name: 'Move down' }).click();
    await steps
      .getByRole('status')
      .getByText(/is now step 3 of/)
      .waitFor();
    await settled(page);
    await battery.getByLabel('Put it before').selectOption({ label: 'last of all' });
    await steps
      .getByRole('alert')
      .getByText(/^Not moved\./)
      .waitFor();
    const photo = row(page, 'Photograph as found · whole truss');
    await photo.getByRole('button', { name: /Photograph as found/ }).click();
    const before = await photo
      .getByLabel('Put it before')
      .getByRole('option', { name: /Lay out station points .* bay 1/ })
      .textContent();
    await photo.getByLabel('Put it before').selectOption({ label: before! });
    await steps
      .getByRole('status')
      .getByText(/^Moved: "Photograph as found · whole truss"/)
      .waitFor();
    await settled(page);
    await page.getByText('In your own order.').waitFor();
    await page.getByRole('button', { name: 'Take the worked order' }).click();
    await page.getByText('In your own order.').waitFor({ state: 'detached' });
    expect(noise).toEqual([]);
  });

  for (const size of [
    [1440, 900],
    [360, 740],
  ] as const)
    it(`steps the picture through the work by its stages (${size.join('×')})`, async () => {
      const { page, bar, noise } = await open('Plan', size);
      await bar.getByText(/^\d+ steps: go through the work$/).waitFor();
      expect(await bar.getByRole('button', { name: 'Step before' }).isDisabled()).toBe(true);
      await bar.getByRole('button', { name: 'Next step' }).click();
      await bar.getByText(/^Step 1 of \d+: Wait for release of the wreck/).waitFor();
      await bar.getByRole('button', { name: /^Bay 3:/ }).click();
      await bar.getByText(/^Step \d+ of \d+: Cut · L3R-L4L$/).waitFor();
      expect(await bar.getByRole('button', { name: /^Bay 3:/ }).getAttribute('aria-current')).toBe('step');
      const openTubes = bar.getByRole('definition').first();
      await expect.poll(() => openTubes.textContent()).toBe('L3R-L4L');
      const before = (await bar.getByText(/^Step \d+ of/).textContent())!;
      await bar.getByRole('button', { name: 'Step before' }).click();
      await expect.poll(() => openTubes.textContent()).toBe('no tube');
      await bar.getByRole('button', { name: 'Next step' }).click();
      await bar.getByText(before).waitFor();
      for (const button of await bar.getByRole('button').all()) {
        const box = (await button.boundingBox())!;
        expect([box.width >= 44, box.height >= 44], (await button.getAttribute('aria-label'))!).toEqual([
          true,
          true,
        ]);
      }
      // the picture keeps room of its own above the bar
      expect((await page.locator('canvas').first().boundingBox())!.height).toBeGreaterThan(100);
      if (size[0] > 1000) {
        await bar.getByText('Jig: engine mount, wing and tail fittings pinned').waitFor();
        await bar.getByText(/^grows by .*; limit 0\.031 in/).waitFor();
      }
      expect(noise).toEqual([]);
    });
});

describe('the estimate on the screen', () => {
  it('takes a rate of the shop’s own into the sum, and money at its rate in its currency', async () => {
    const { page, noise } = await open('Estimate');
    const sum = page.getByRole('region', { name: 'Sum' });
    const likely = async (): Promise<number> => Number(/Likely(\d+) h/.exec((await sum.textContent())!)![1]);
    const first = await likely();
    await page.getByText('Rates: hours for an operation, money for an hour').click();
    const tick = 'Hold the truss on sound clusters, level it';
    // eight hours more of an operation that is done once
    for (const [what, hours] of [
      ['Worst', '16'],
      ['Likely', '16'],
      ['Best', '16'],
    ] as const)
      await page.getByLabel(`${tick}, ${what}`, { exact: true }).fill(hours);
    await page.keyboard.press('Enter');
    // ours is 4, 8, 16 and so 28/3 h on average: 16 h are 6 2/3 h more
    await expect.poll(likely).toBeGreaterThan(first + 4);
    expect(await likely()).toBeLessThan(first + 10);
    await page.getByLabel('Money for an hour').fill('50');
    await page.getByLabel('In what').fill('shells');
    await page.getByRole('button', { name: 'Use it' }).first().click();
    await sum
      .getByText(/^\d[^a-z]* shells$/)
      .first()
      .waitFor();
    expect(noise).toEqual([]);
  });

  it('prices what nobody has looked at only by the shop’s chance, and says what the next hour of looking is worth', async () => {
    const { page, noise } = await open('Estimate');
    const hidden = page.getByRole('region', { name: 'What nobody has looked at' });
    await hidden.getByText(/counted and not priced$/).waitFor();
    expect(await hidden.getByText('not priced', { exact: true }).count()).toBe(3);
    await hidden.getByLabel('Chance in percent, First to look at').fill('20');
    await page.keyboard.press('Enter');
    // ten tubes, a chance of a fifth, (3 + 6 + 12)/3 h each: 14 h
    await hidden.getByText('14.0 h').waitFor();
    await hidden
      .getByText(
        /^The next hour of looking: .* takes the spread of the sum from .* and finds 1\.0 on average/,
      )
      .waitFor();
    expect(noise).toEqual([]);
  });

  it('lays splicing each tube of a bay beside replacing the bay', async () => {
    const { page, noise } = await open('Estimate');
    await page.getByText('Compare: splice each tube of a bay, or replace the bay').click();
    await page.getByRole('combobox', { name: 'Bay', exact: true }).selectOption('3');
    await page.getByRole('button', { name: 'Work them out' }).click();
    const sides = page.getByRole('region', { name: 'Side by side' });
    await sides.waitFor({ timeout: 90_000 });
    expect(await sides.getByRole('columnheader').allTextContents()).toEqual([
      'What',
      'As decided',
      'Bay 3: splice each',
      'Bay 3: replace whole',
    ]);
    const cells = await sides
      .getByRole('row', { name: /^Likely, h/ })
      .getByRole('cell')
      .allTextContents();
    expect(Number(cells[2])).toBeGreaterThan(Number(cells[1]));
    expect(noise).toEqual([]);
  });
});
