import type { Page } from 'playwright-core';
import { preview } from 'vite';
import { openChromium } from '../kit/chromium.ts';
import { boxModel } from '../kit/trusses.ts';

/** Milliseconds and bytes of one size of truss in the built app, as the page itself measures them. */
interface Measured {
  readonly tubes: number;
  readonly firstMs: number;
  readonly tagMs: number;
  readonly orbitMs: number;
  readonly idleFrames: number;
  readonly heapMb: number;
}

const measure = async (page: Page, address: string, bays: number): Promise<Measured> => {
  await page.goto(`${address}?aa=0`);
  await page.waitForFunction(() => (window.__tubewright?.frames().drawn ?? 0) > 0, undefined, {
    timeout: 120_000,
  });
  const box = boxModel(5, { bays });
  // bays drawn closer, so that a long truss stays within what a station may be
  const stations = box.stations.map((one) => ({ ...one, stationIn: (one.stationIn * 11) / bays }));
  const model = { ...box, stations, name: `Bench ${bays}` };
  await page
    .getByRole('navigation', { name: 'Route' })
    .getByRole('button', { name: /^Start/ })
    .click();
  const choose = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a file' }).click();
  const chooser = await choose;
  const began = Date.now();
  const file = {
    name: 'bench.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(model)),
  };
  await chooser.setFiles(file);
  await page.waitForFunction(
    (name) => document.querySelector('.job-name')?.textContent === name,
    model.name,
    {
      timeout: 120_000,
    },
  );
  await page.evaluate(() => new Promise((go) => requestAnimationFrame(() => requestAnimationFrame(go))));
  const firstMs = Date.now() - began;
  const said = (await page.locator('.picture [role="img"]').getAttribute('aria-label')) ?? '';
  await page.keyboard.press('Control+.'); // the sums are not what is measured here
  await page.getByRole('combobox', { name: /Find a tube/ }).fill('U1L-U2L');
  await page.keyboard.press('Enter');
  await page.waitForTimeout(500);
  const [tagMs, orbitMs] = await page.evaluate(() => {
    const middle = (times: number[]): number => times.sort((a, b) => a - b)[times.length >> 1] ?? 0;
    const timed = (target: EventTarget, key: string): number => {
      const from = performance.now();
      target.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }));
      return performance.now() - from;
    };
    const picture = document.querySelector('.picture [role="img"]')!;
    const tags = [0, 1, 2, 3, 4, 5].map(() => timed(document.body, 'a'));
    const frames = async (): Promise<number[]> => {
      const times: number[] = [];
      for (let n = 0; n < 20; n++) {
        const from = performance.now();
        timed(picture, 'ArrowLeft');
        await new Promise((go) => requestAnimationFrame(() => go(null)));
        times.push(performance.now() - from);
      }
      return times;
    };
    return frames().then((times) => [middle(tags), middle(times)] as const);
  });
  await page.waitForTimeout(1500);
  const idleFrames = await page.evaluate(async () => {
    const before = window.__tubewright?.frames().drawn ?? 0;
    await new Promise((go) => setTimeout(go, 5000));
    return (window.__tubewright?.frames().drawn ?? 0) - before;
  });
  const heapMb = await page.evaluate(
    () => ((performance as { memory?: { usedJSHeapSize: number } }).memory?.usedJSHeapSize ?? 0) / 1e6,
  );
  return { tubes: Number(/Truss of (\d+)/.exec(said)?.[1]), firstMs, tagMs, orbitMs, idleFrames, heapMb };
};

/** The built app at three sizes of truss, each against the smallest, on this machine and at this hour. */
export const run = async (): Promise<string[]> => {
  const server = await preview({ preview: { host: '127.0.0.1', port: 0 }, logLevel: 'error' });
  const browser = await openChromium();
  try {
    const rows: Measured[] = [];
    for (const bays of [11, 140, 1400]) {
      const page = await browser.newPage({ viewport: { width: 1100, height: 750 }, reducedMotion: 'reduce' });
      rows.push(await measure(page, server.resolvedUrls?.local[0] ?? '', bays));
      await page.close();
    }
    const [least] = rows;
    return rows.map(
      (row) =>
        `${row.tubes} tubes: opened and drawn in ${row.firstMs} ms (${(row.firstMs / least!.firstMs).toFixed(1)} times), ` +
        `tag ${row.tagMs.toFixed(1)} ms of script (${(row.tagMs / least!.tagMs).toFixed(1)} times), ` +
        `orbit ${row.orbitMs.toFixed(1)} ms a frame, drawn in software (${(row.orbitMs / least!.orbitMs).toFixed(1)} times), ` +
        `${row.idleFrames} frames in 5 s at rest, heap ${row.heapMb.toFixed(0)} MB`,
    );
  } finally {
    await browser.close();
    await server.close();
  }
};
