import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { readJob } from '../../src/core/job/read.ts';
import { exerciseOf } from '../../src/core/practice/exerciseFile.ts';
import { waysThatShow } from '../../src/core/practice/look.ts';
import { expandTruss } from '../../src/core/truss/truss.ts';
import { lookWords } from '../../src/present/words/practice.ts';
import { openChromium } from '../kit/chromium.ts';
import { misfits, openSheet, settled, touchInPicture } from '../kit/page.ts';

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

const openFile = async (page: Page, name: string, buffer: Buffer): Promise<void> => {
  await page
    .getByRole('navigation', { name: 'Route' })
    .getByRole('button', { name: /^Start/ })
    .click();
  const choose = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: /Open a file/ }).click();
  await (await choose).setFiles({ name, mimeType: 'application/json', buffer });
  await settled(page);
};

/** Answers anything until a question of the kind comes. */
const answerUntil = async (page: Page, kind: string): Promise<void> => {
  const drill = page.getByRole('region', { name: 'Layout drill' });
  for (let k = 0; k < 8; k++) {
    if (await drill.getByText(kind).count()) return;
    const choices = drill.locator('.choices button');
    const length = drill.getByLabel('True length');
    if ((await choices.count()) > 0) await choices.first().click();
    else if ((await length.count()) > 0) {
      await length.fill('20');
      await drill.getByRole('button', { name: 'Answer' }).click();
    } else await drill.getByLabel(/Or by its place/).selectOption({ index: 1 });
    await drill.getByRole('button', { name: /Next question|See the marks/ }).click();
  }
  expect.fail(`no question: ${kind}`);
};

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
      } else {
        await drill.getByLabel(/Or by its place/).selectOption({ index: 1 });
        // a tube to be drawn takes its other end as well
        if (await drill.getByText('Touch the other end').count())
          await drill.getByLabel(/Or by its place/).selectOption({ index: 2 });
      }
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

  it('has the missing diagonal drawn by touching its two clusters in the picture', async () => {
    const { page, noise } = await openSheet(browser, address);
    await openFile(page, 'practice-truss.json', readFileSync('models/practice-truss.json'));
    await practice(page);
    await page.getByLabel('Seed').first().fill('DRAW');
    await page.getByRole('button', { name: 'Begin the drill' }).click();
    const drill = page.getByRole('region', { name: 'Layout drill' });
    await answerUntil(page, 'Draw the missing diagonal');
    const said = (await drill.locator('.question').textContent())!;
    const bay = /bay (\w+)/i.exec(said)?.[1] ?? expect.fail(said);
    // Read off the model file: bays 1 and 3 rise aft on the right, bay 2 falls.
    const aft = `${Number(bay) + 1}`;
    const [first, second] = bay === '2' ? ['U2R', 'L3R'] : [`L${bay}R`, `U${aft}R`];
    await page.getByText('Right', { exact: true }).first().click();
    await page.waitForTimeout(500);
    await touchInPicture(page, first!);
    await drill.getByText(`(${first})`).waitFor();
    await touchInPicture(page, second!);
    await drill.getByRole('status').getByText('Right.').waitFor();
    expect(noise).toEqual([]);
  });

  it('mixes the steps of a real plan, shows what a wrong order would do, and keeps the right one', async () => {
    const { page, noise } = await openSheet(browser, address);
    await openFile(page, 'practice-truss.json', readFileSync('models/practice-truss.json'));
    await practice(page);
    await page.getByLabel('Seed').first().fill('PLAN');
    await page.getByRole('button', { name: 'Mix the steps' }).click();
    const plan = page.getByRole('region', { name: 'Plan practice' });
    await plan.waitFor({ timeout: 60_000 });
    await plan.getByRole('button', { name: 'Check the order' }).click();
    await plan
      .getByText(/^First "/)
      .first()
      .waitFor();
    await page.screenshot({ path: 'tests/browser/shots/practice-plan.png' });
    expect(await misfits(page)).toEqual([]);
    expect(noise).toEqual([]);
  });

  it('lets an instructor save an exercise that a trainee opens, hands in and finds marked after a reload', async () => {
    const { page, noise } = await openSheet(browser, address);
    await practice(page);
    await page.getByText('For the instructor').click();
    const made = page.getByRole('group').filter({ hasText: 'A file to hand out' });
    await made.getByLabel('Seed').fill('TEACH');
    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the exercise file' }).click(),
    ]);
    const bytes = readFileSync(await file.path());
    expect(bytes.toString()).not.toContain('thisAccident');
    await openFile(page, file.suggestedFilename(), bytes);
    await practice(page);
    const round = page.getByRole('region', { name: 'Hidden damage' });
    await round.getByText('seed TEACH', { exact: false }).waitFor();
    await round.getByRole('button', { name: 'Hand in' }).click();
    const marks = page.getByRole('region', { name: 'Marks of this round' });
    await marks.waitFor({ timeout: 60_000 });
    const before = await marks.locator('dd').allTextContents();
    await page.reload();
    await settled(page);
    await practice(page);
    await marks.waitFor({ timeout: 60_000 });
    expect(await marks.locator('dd').allTextContents()).toEqual(before);
    await page.getByText('Progress on this device (1 done)').click();
    const [csv] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the results as CSV' }).click(),
    ]);
    const table = readFileSync(await csv.path(), 'utf8');
    expect(table).toContain('Subject areas');
    expect(table).toContain('seed TEACH');
    expect(noise).toEqual([]);
  });

  it.each([
    [1440, 900],
    [820, 1180],
    [360, 740],
  ] as const)('has nothing overlapping or cut off at %i by %i', async (width, height) => {
    const { page, noise } = await openSheet(browser, address, [width, height], { touch: width < 1000 });
    await practice(page);
    await page.getByText('For the instructor').click();
    await page.screenshot({ path: `tests/browser/shots/practice-${width}.png` });
    expect(await misfits(page)).toEqual([]);
    await page.getByRole('button', { name: 'Mix the steps' }).click();
    const plan = page.getByRole('region', { name: 'Plan practice' });
    await plan.waitFor({ timeout: 60_000 });
    await plan.getByRole('button', { name: 'Check the order' }).click();
    await page.waitForTimeout(200);
    await page.screenshot({ path: `tests/browser/shots/practice-plan-${width}.png` });
    expect(await misfits(page)).toEqual([]);
    expect(noise).toEqual([]);
  });
});
