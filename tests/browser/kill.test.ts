import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { afterAll, describe, expect, inject, it } from 'vitest';
import { readJob } from '../../src/core/job/read.ts';
import { chromiumFlags, executable } from '../kit/chromium.ts';
import { soak } from '../kit/soak.ts';
import { seededRandom } from '../kit/trusses.ts';

const address = inject('address');
const profile = mkdtempSync(join(tmpdir(), 'tubewright-kill-'));
afterAll(() => rmSync(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 }));

/** A browser as a process of its own on a profile that lasts, and its page. */
const start = async (): Promise<{ child: ChildProcess; page: Page }> => {
  const child = spawn(
    executable(),
    [
      ...chromiumFlags,
      '--headless=new',
      '--remote-debugging-port=0',
      `--user-data-dir=${profile}`,
      'about:blank',
    ],
    { stdio: ['ignore', 'ignore', 'pipe'] },
  );
  const endpoint = await new Promise<string>((give, fail) => {
    let said = '';
    child.stderr?.on('data', (piece) => {
      said += String(piece);
      const found = /DevTools listening on (ws:\S+)/.exec(said)?.[1];
      if (found) give(found);
    });
    child.once('exit', () => fail(new Error(`the browser did not start: ${said.slice(-300)}`)));
  });
  const browser = await chromium.connectOverCDP(endpoint);
  const [context] = browser.contexts();
  const page = await context!.newPage();
  await page.goto(`${address}?aa=0`);
  await page
    .getByRole('status', { name: 'Saved' })
    .getByText(/^Saved/)
    .waitFor({ timeout: 60_000 });
  return { child, page };
};

const keptText = (page: Page): Promise<string> =>
  page.evaluate(
    () =>
      new Promise<string>((give, fail) => {
        const open = indexedDB.open('tubewright');
        open.onerror = () => fail(open.error);
        open.onsuccess = () => {
          const all = open.result.transaction('jobs').objectStore('jobs').getAll();
          all.onerror = () => fail(all.error);
          all.onsuccess = () => {
            open.result.close();
            give((all.result as { text: string }[])[0]?.text ?? '');
          };
        };
      }),
  );

/**
 * Renames the job and tags a tube, on and off, again and again as fast as it says that they are saved, and tells each
 * pair that was acknowledged with the milliseconds it took.
 */
const work = (page: Page, first: number): Promise<void> =>
  page.evaluate(async (begin) => {
    const tell = (window as unknown as { acknowledged: (n: number, ms: number) => Promise<void> })
      .acknowledged;
    const saved = () => document.querySelector('[role="status"][aria-label="Saved"]')?.textContent ?? '';
    const field = document.querySelector<HTMLInputElement>('#job-aircraft')!;
    const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')!.set!;
    const tick = () => new Promise((go) => setTimeout(go, 0));
    for (let n = begin; ; n++) {
      const began = performance.now();
      field.focus();
      set.call(field, `entry ${n}`);
      field.dispatchEvent(new Event('input', { bubbles: true }));
      await tick();
      field.blur();
      await tick();
      document.body.dispatchEvent(new KeyboardEvent('keydown', { key: 'l', bubbles: true }));
      await tick();
      while (
        document.querySelector('.job-aircraft')?.textContent !== `entry ${n}` ||
        !saved().startsWith('Saved')
      )
        await tick();
      await tell(n, performance.now() - began);
    }
  }, first);

describe('killing the browser', () => {
  const kills = soak(200);
  it(`at ${kills} random moments of a long job loses nothing that was acknowledged (seed 2031)`, {
    timeout: 3_600_000,
  }, async () => {
    const chance = seededRandom(2031);
    let last = 0;
    /** Records that must be there: one more with each pair acknowledged. */
    let records = 0;
    const took: number[] = [];
    for (let kill = 0; kill <= kills; kill++) {
      const { child, page } = await start();
      const ended = new Promise((go) => child.once('exit', go));
      if (kill > 0) {
        const read = readJob(await keptText(page));
        if (!read.ok) return expect.fail(`kill ${kill}: the job does not open`);
        const entered = Number(/^entry (\d+)$/.exec(read.value.aircraft ?? '')?.[1]);
        expect(entered, `kill ${kill}`).toBeGreaterThanOrEqual(last);
        expect(await page.locator('.job-aircraft').textContent()).toBe(`entry ${entered}`);
        expect(read.value.records.length, `kill ${kill}`).toBeGreaterThanOrEqual(records);
        [last, records] = [entered, read.value.records.length];
      }
      if (kill < kills) {
        await page.exposeFunction('acknowledged', (n: number, ms: number) => {
          last = Math.max(last, n);
          records += 1;
          took.push(ms);
        });
        await page.getByRole('combobox', { name: /Find a tube/ }).fill('U7L-L7L');
        await page.keyboard.press('Enter');
        await page
          .getByRole('navigation', { name: 'Route' })
          .getByRole('button', { name: /^Start/ })
          .click();
        await page.locator('#job-aircraft').waitFor();
        work(page, last + 1).catch(() => {});
        await new Promise((go) => setTimeout(go, 150 + chance() * 1200));
      }
      child.kill('SIGKILL');
      await ended;
    }
    expect(last).toBeGreaterThan(kills);
    // durable within a second, the page's own start left out: the middle of all
    const middle = took.sort((a, b) => a - b)[took.length >> 1]!;
    expect(middle).toBeLessThan(1000);
    if (process.env.SOAK === '1')
      process.stdout.write(
        `${kills} kills, ${took.length} pairs of entries acknowledged, none missing; ${Math.round(middle)} ms each in the middle, ${Math.round(took.at(-1)!)} ms at most\n`,
      );
  });
});
