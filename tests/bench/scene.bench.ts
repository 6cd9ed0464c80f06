import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { preview } from 'vite';
import { openChromium } from '../kit/chromium.ts';
import { boxModel } from '../kit/trusses.ts';
import { bare, drawn, heapOf, least, settled, turned, untilFrame } from './browserMeasures.ts';

/** What one size of truss costs in the built app: milliseconds of script, not of drawing, which is software here. */
interface Measured {
  readonly tubes: number;
  readonly firstMs: number;
  readonly tagMs: number;
  readonly recolourMs: number;
  readonly orbitMs: number;
  readonly bareMs: number;
  readonly labels: number;
  readonly labelsMs: number;
  readonly pickMs: number;
  readonly idleFrames: number;
  readonly heapMb: number;
}

const modelOf = (bays: number) => {
  const box = boxModel(5, { bays });
  // bays drawn closer, so that a long truss stays within what a station may be
  const stations = box.stations.map((one) => ({ ...one, stationIn: (one.stationIn * 11) / bays }));
  return { ...box, stations, name: `Bench ${bays}` };
};

/** Opens a truss of so many bays; gives the milliseconds until it stands on the screen. */
const open = async (page: Page, address: string, bays: number): Promise<number> => {
  await page.goto(`${address}?aa=0`);
  const model = modelOf(bays);
  await page
    .getByRole('navigation', { name: 'Route' })
    .getByRole('button', { name: /^Start/ })
    .click();
  const choose = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a file' }).click();
  const chooser = await choose;
  const began = Date.now();
  const file = Buffer.from(JSON.stringify(model));
  await chooser.setFiles({ name: 'bench.json', mimeType: 'application/json', buffer: file });
  await page.waitForFunction(
    (name) => document.querySelector('.job-name')?.textContent === name,
    model.name,
    { timeout: 120_000 },
  );
  await page.evaluate(() => new Promise((go) => requestAnimationFrame(() => requestAnimationFrame(go))));
  return Date.now() - began;
};

const names = (page: Page, which: string) =>
  page.getByRole('combobox', { name: 'Names in the picture' }).selectOption(which);

const measure = async (page: Page, address: string, bays: number): Promise<Measured> => {
  for (const file of ['three.module.js', 'three.core.js'])
    await page.route(`**/bare/${file}`, (route) =>
      route.fulfill({
        contentType: 'text/javascript',
        body: readFileSync(`node_modules/three/build/${file}`, 'utf8'),
      }),
    );
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Performance.enable');
  const firstMs = await open(page, address, bays);
  await page.waitForFunction(() => (window.__tubewright?.frames().drawn ?? 0) > 0, undefined, {
    timeout: 120_000,
  });
  const said = (await page.locator('.picture [role="img"]').getAttribute('aria-label')) ?? '';
  const [, tubes = 0, clusters = 0] = (/Truss of (\d+) tubes and (\d+)/.exec(said) ?? []).map(Number);
  const heapMb = await heapOf(page);
  // where tubes are tagged
  await page.keyboard.press('Alt+2');
  await page.getByRole('combobox', { name: /Find a tube/ }).fill('U1L-U2L');
  await page.keyboard.press('Enter');
  await settled(page);
  // with the table beside the picture where the budget counts it in
  if (tubes < 3000) {
    await page.getByRole('combobox', { name: 'Picture or table' }).selectOption('both');
    await page.getByRole('grid').waitFor();
    await settled(page);
  }
  const picture = '.picture [role="img"]';
  const tagMs = await least(8, () => untilFrame(page, picture, 'a'));
  const recolourMs = await least(6, () => untilFrame(page, '.legend-fold button', null));
  await page.getByRole('combobox', { name: 'Picture or table' }).selectOption('picture');
  await names(page, 'none');
  await page.locator(picture).focus();
  await settled(page);
  const orbitMs = await turned(page, devtools);
  await settled(page);
  const pickMs = await page.evaluate(() => {
    const at = window.__tubewright!.project('U1L-U2L')!;
    const spots = Array.from({ length: 60 }, (_, k) => ({ x: at.x + (k % 8), y: at.y + (k >> 3) }));
    for (const spot of spots.slice(0, 20)) window.__tubewright!.pick(spot);
    const began = performance.now();
    for (const spot of spots) window.__tubewright!.pick(spot);
    return (performance.now() - began) / spots.length;
  });
  await settled(page);
  const before = await drawn(page);
  await page.waitForTimeout(5000);
  const idleFrames = (await drawn(page)) - before;
  const labels = tubes + clusters;
  let labelsMs = 0;
  if (labels < 600) {
    await names(page, 'all');
    await page.locator(picture).focus();
    await settled(page);
    labelsMs = (await turned(page, devtools)) - orbitMs;
  }
  const bareMs = await bare(page, devtools, tubes);
  return { tubes, firstMs, tagMs, recolourMs, orbitMs, bareMs, labels, labelsMs, pickMs, idleFrames, heapMb };
};

/** The same job open where the picture cannot come: what is left of the heap is not the scene's. */
const withoutScene = async (page: Page, address: string, bays: number): Promise<number> => {
  await page.route(/assets\/(Scene|three)-/, (route) => route.abort());
  await open(page, address, bays);
  return heapOf(page);
};

/** Trusses of 160, some 300 things to name, 2,000 and 20,000 tubes in the built app, on this machine and at this hour. */
export const run = async (): Promise<string[]> => {
  const server = await preview({ preview: { host: '127.0.0.1', port: 0 }, logLevel: 'error' });
  const browser = await openChromium();
  const address = server.resolvedUrls?.local[0] ?? '';
  const newPage = () =>
    browser.newPage({
      viewport: { width: 1100, height: 750 },
      reducedMotion: 'reduce',
      serviceWorkers: 'block',
    });
  try {
    const told: string[] = [];
    for (const bays of [13, 18, 166, 1666]) {
      const page = await newPage();
      const row = await measure(page, address, bays);
      await page.close();
      const plain = await newPage();
      const restMb = await withoutScene(plain, address, bays);
      await plain.close();
      told.push(
        [
          `${row.tubes} tubes: first picture ${row.firstMs} ms`,
          `script: tag to frame ${row.tagMs.toFixed(1)} ms`,
          `recolour to frame ${row.recolourMs.toFixed(1)} ms`,
          `pick ${row.pickMs.toFixed(2)} ms`,
          `orbit ${row.orbitMs.toFixed(2)} ms a frame, ${(row.orbitMs / row.bareMs).toFixed(1)} times bare three.js at ${row.bareMs.toFixed(2)} ms`,
          ...(row.labelsMs > 0 ? [`${row.labels} labels ${row.labelsMs.toFixed(1)} ms a frame`] : []),
          `${row.idleFrames} frames in 5 s at rest`,
          `heap ${row.heapMb.toFixed(0)} MB, the scene's ${(row.heapMb - restMb).toFixed(1)} MB`,
        ].join(', '),
      );
    }
    return told;
  } finally {
    await browser.close();
    await server.close();
  }
};
