import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { readJob } from '../../src/core/job/read.ts';
import { exerciseOf } from '../../src/core/practice/exerciseFile.ts';
import { waysThatShow } from '../../src/core/practice/look.ts';
import { expandTruss } from '../../src/core/truss/truss.ts';
import { lookWords } from '../../src/present/words/practice.ts';
import { openChromium } from '../kit/chromium.ts';
import { misfits, openSheet, settled } from '../kit/page.ts';

const address = inject('address');
let browser: Browser;
beforeAll(async () => {
  browser = await openChromium();
});
afterAll(() => browser.close());

const practice = (page: Page) =>
  page
    .getByRole('navigation', { name: 'Route' })
    .getByRole('button', { name: /^Practice/ })
    .click();

describe('practice in a real browser', () => {
  it('asks a layout drill, marks each answer with its reason, and keeps progress on the device', async () => {
    const { page, noise } = await openSheet(browser, address);
    await practice(page);
    await page.getByLabel('Seed').first().fill('DRILL');
    await page.getByRole('button', { name: 'Begin the drill' }).click();
    const drill = page.getByRole('region', { name: 'Layout drill' });
    for (let k = 0; k < 8; k++) {
      const choices = drill.locator('.choices button');
      const length = drill.getByLabel('True length');
      if ((await choices.count()) > 0) await choices.first().click();
      else if ((await length.count()) > 0) {
        await length.fill('20');
        await drill.getByRole('button', { name: 'Answer' }).click();
      } else await drill.getByLabel(/Or by its place/).selectOption({ index: 1 });
      await drill
        .getByRole('status')
        .getByText(/^(Right\.|Not so\.)/)
        .waitFor();
      expect(await misfits(page)).toEqual([]);
      await drill.getByRole('button', { name: /Next question|See the marks/ }).click();
    }
    await drill.getByText(/of \d/).first().waitFor();
    await drill.getByRole('button', { name: 'Close' }).click();
    await page.getByText('Progress on this device (1 done)').waitFor();
    await page.reload();
    await settled(page);
    await practice(page);
    await page.getByText('Progress on this device (1 done)').waitFor();
    expect(noise).toEqual([]);
  });

  it('hides damage in a practice job, shows what each look shows, and marks a full round in full', async () => {
    const { page, noise } = await openSheet(browser, address);
    await practice(page);
    await page.getByLabel('Seed').first().fill('ROUND');
    await page.getByRole('button', { name: 'Break the truss' }).click();
    await page.getByText('Training file. Invented aircraft. Not for work.').waitFor();
    await settled(page);
    const [file] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Control+s')]);
    const read = readJob(readFileSync(await file.path(), 'utf8'));
    if (!read.ok) return expect.fail('copy not read');
    const exercise = exerciseOf(read.value)!;
    const truss = expandTruss(read.value.model);
    const round = page.getByRole('region', { name: 'Hidden damage' });
    const find = page.getByRole('combobox', { name: /Find a tube/ });
    for (const id of new Set(exercise.truth.findings.map((f) => f.of))) {
      await find.fill(id);
      await page.keyboard.press('Enter');
      await round.getByRole('heading', { name: id }).waitFor();
      const wanted = exercise.truth.findings.filter((f) => f.of === id);
      const ways = [
        { method: 'eye', finishRemoved: false } as const,
        ...wanted.map((f) => waysThatShow(exercise.truth, truss, f)[0]!),
      ];
      for (const way of [...new Map(ways.map((w) => [JSON.stringify(w), w])).values()]) {
        await round.getByLabel('Look', { exact: true }).selectOption({ label: lookWords[way.method] });
        await round.getByLabel('Take the finish off here first').setChecked(way.finishRemoved);
        await round.getByRole('button', { name: `Look at ${id}` }).click();
        await page.waitForTimeout(100);
        const open = round.getByRole('button', { name: 'Write it down' });
        while ((await open.count()) > 0) await open.first().click();
      }
    }
    await round.getByRole('button', { name: 'Hand in' }).click();
    const marks = page.getByRole('region', { name: 'Marks of this round' });
    await marks.waitFor({ timeout: 60_000 });
    const shares = await marks.locator('dd').allTextContents();
    for (const share of shares) {
      const [got, of] = share.split(' of ');
      expect(share === 'not asked' || got === of, shares.join('; ')).toBe(true);
    }
    expect(await marks.getByText('missed').count()).toBe(0);
    expect(await misfits(page)).toEqual([]);
    expect(noise).toEqual([]);
  });
});
