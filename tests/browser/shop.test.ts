import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { openChromium } from '../kit/chromium.ts';
import { go, openSheet } from '../kit/page.ts';

const address = inject('address');
let browser: Browser;
beforeAll(async () => {
  browser = await openChromium();
});
afterAll(() => browser.close());

const pick = async (page: Page, id: string): Promise<void> => {
  await page.getByRole('combobox', { name: /find/i }).fill(id);
  await page.keyboard.press('Enter');
};

describe('the shop', () => {
  it('asks for a written reason before a decision that the rules do not allow', async () => {
    const { page, noise } = await openSheet(browser, address, [1440, 900]);
    await go(page, 'Decide');
    await pick(page, 'U4R-L4R');
    // a kinked tube is cut out: common practice
    await page.locator('summary', { hasText: /^×?\s*Straighten/ }).click();
    const form = page.getByRole('form', { name: 'Decide: Straighten' });
    await form.getByRole('button', { name: 'Decide: Straighten' }).click();
    await expect.poll(() => form.getByText('Write why.').isVisible()).toBe(true);
    await form.getByRole('textbox').fill('The maker wrote so on 3 May');
    await form.getByRole('button', { name: 'Decide: Straighten' }).click();
    await page.getByText('Straighten: decided against the rules loaded.').waitFor();
    await page.getByText('Reason: The maker wrote so on 3 May').waitFor();
    expect(noise).toEqual([]);
  });

  it('fits an axis to straight-edge readings and predicts the next push from the one logged', async () => {
    const { page, noise } = await openSheet(browser, address, [1440, 900]);
    await go(page, 'Straighten');
    await pick(page, 'L2R-U3R');
    await page.getByText('Enter a straight-edge reading').click();
    const edge = page.getByRole('form', { name: 'Straight edge on L2R-U3R' });
    await edge.getByLabel('The edge lies at').selectOption('3');
    // a parabola 3/16 deep over 44 in: gap 0 in the middle, 3/16 at the ends
    const [xs, gaps] = [
      ['0', '11', '22', '33', '44'],
      ['3/16', '3/64', '0', '3/64', '3/16'],
    ];
    for (let k = 0; k < 5; k++) {
      await edge.getByLabel('Place from L2R').nth(k).fill(xs[k]!);
      await edge.getByLabel('Gap').nth(k).fill(gaps[k]!);
    }
    await edge.getByRole('button', { name: 'Record this side' }).click();
    await page.getByText('0.188 in · 3/16').first().waitFor();
    await page.getByText('Log a push').click();
    const push = page.getByRole('form', { name: 'Push on L2R-U3R' });
    await push.getByLabel('Ram at, from L2R').fill('22');
    await push.getByLabel('Blocks apart').fill('27');
    await push.getByLabel('Pressed, from where it lay').fill('5/8');
    await push.getByLabel('Stayed after letting go').fill('1/32');
    await push.getByLabel('Ram stood at').selectOption('3');
    await push.getByRole('button', { name: 'Record the push' }).click();
    await page.getByText('Next push, from what the last ones left').waitFor();
    await page.getByText('Not read since the last push').waitFor();
    expect(noise).toEqual([]);
  });

  it('keeps the fit-up shut until every row is ticked, and asks for proof and a second person', async () => {
    const { page, noise } = await openSheet(browser, address, [1440, 900]);
    await go(page, 'Splice');
    await pick(page, 'L4R-L5R');
    await page.getByRole('button', { name: /Larger tube/ }).click();
    const card = page.getByRole('region', { name: 'Fit-up card' });
    const boxes = card.locator('.tick-list').getByRole('checkbox');
    const count = await boxes.count();
    await expect
      .poll(() => card.getByRole('button', { name: `Closed until ${count} rows are ticked` }).isDisabled())
      .toBe(true);
    expect(await boxes.first().isDisabled()).toBe(true);
    await card.getByLabel(/^Proof/).fill('mill paper 4411');
    for (let k = 0; k < count; k++) await boxes.nth(k).check();
    await card.getByLabel('Gap found').fill('1/32');
    await card.getByLabel('Overlap found').fill('1 1/2');
    await card.getByLabel('Marks stand').check();
    await card.getByLabel('Second person').fill('Bo Lindqvist');
    await card.getByRole('button', { name: 'Record the fit-up' }).click();
    await card.getByText('Seen by Bo Lindqvist').waitFor();
    expect(noise).toEqual([]);
  });

  it('reckons one tube at the bench and hands out its templates', async () => {
    const { page, noise } = await openSheet(browser, address, [1440, 900]);
    await go(page, 'Start');
    await page.getByRole('button', { name: 'Bench sums' }).click();
    await page.getByRole('button', { name: /Inner sleeve/ }).click();
    // 1 in tube: 1.732 × 1 + 1/8 + 2 × 1.5 × 1 = 4.857 in by AC 43.13-1B, 4-95, and a 30° cut
    await page.getByText('Sleeve at end A: length').waitFor();
    await page.getByText('4.857 in').first().waitFor();
    const waiting = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Templates (PDF)' }).click();
    expect((await waiting).suggestedFilename()).toBe('templates-bench.pdf');
    expect(noise).toEqual([]);
  });
});
