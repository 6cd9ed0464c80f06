import { readFileSync } from 'node:fs';
import type { CDPSession, Page } from 'playwright-core';
import { preview } from 'vite';
import { openChromium } from '../kit/chromium.ts';
import { boxModel } from '../kit/trusses.ts';

/** What one size of truss costs in the built app: milliseconds of script, not of drawing, which is software here. */
interface Measured {
  readonly tubes: number;
  readonly firstMs: number;
  readonly tagMs: number;
  readonly recolourMs: number;
  readonly orbitMs: number;
  readonly bareMs: number;
  readonly pickMs: number;
  readonly idleFrames: number;
  readonly heapMb: number;
}

const metric = async (devtools: CDPSession, name: string): Promise<number> => {
  const { metrics } = await devtools.send('Performance.getMetrics');
  return metrics.find((one) => one.name === name)?.value ?? 0;
};

const drawn = (page: Page): Promise<number> => page.evaluate(() => window.__tubewright?.frames().drawn ?? 0);

/** Waits until half a second went by without a frame. */
const settled = async (page: Page): Promise<void> => {
  for (let before = -1, n = 0; n < 40; n++) {
    const now = await drawn(page);
    if (now === before) return;
    before = now;
    await page.waitForTimeout(500);
  }
};

/** The middle of several goes, each the page's own script from the deed until the picture rests. */
const scripted = async (page: Page, devtools: CDPSession, deed: () => Promise<unknown>): Promise<number> => {
  const times: number[] = [];
  for (let n = 0; n < 3; n++) {
    const before = await metric(devtools, 'ScriptDuration');
    await deed();
    await settled(page);
    times.push(((await metric(devtools, 'ScriptDuration')) - before) * 1000);
  }
  return times.sort((a, b) => a - b)[1]!;
};

const TURNS = 20;

/** Script of one frame while the picture turns, waiting for each to be drawn. */
const turned = async (page: Page, devtools: CDPSession): Promise<number> => {
  const before = await metric(devtools, 'ScriptDuration');
  const [from, to] = await page.evaluate(async (turns) => {
    const picture = document.querySelector('.picture [role="img"]')!;
    const frames = (): number => window.__tubewright?.frames().drawn ?? 0;
    const start = frames();
    for (let n = 0; n < turns; n++) {
      picture.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowLeft', bubbles: true }));
      await new Promise((go) => requestAnimationFrame(() => setTimeout(go)));
    }
    return [start, frames()] as const;
  }, TURNS);
  return (((await metric(devtools, 'ScriptDuration')) - before) * 1000) / Math.max(1, to - from);
};

/** The least that three.js can do: as many tubes in one instanced mesh, a camera that turns, and nothing else. */
const bare = async (page: Page, devtools: CDPSession, tubes: number): Promise<number> => {
  // as text, for Vite would make an import of its own of it
  await page.evaluate("import('/bare/three.module.js').then((three) => Object.assign(window, { three }))");
  await page.evaluate((count) => {
    const { three } = window as unknown as { three: typeof import('three') };
    const renderer = new three.WebGLRenderer({ antialias: false });
    renderer.setSize(600, 500);
    document.body.append(renderer.domElement);
    const mesh = new three.InstancedMesh(
      new three.CylinderGeometry(1, 1, 1, 10, 1, true),
      new three.MeshBasicMaterial(),
      count,
    );
    for (let k = 0; k < count; k++)
      mesh.setMatrixAt(k, new three.Matrix4().makeTranslation(k % 100, (k / 100) | 0, 0));
    const scene = new three.Scene();
    scene.add(mesh);
    const camera = new three.OrthographicCamera(-100, 100, 100, -100, -500, 500);
    const draw = (): void => {
      camera.rotation.y += 0.05;
      renderer.render(scene, camera);
    };
    draw();
    Object.assign(window, { bareDraw: draw });
  }, tubes);
  const before = await metric(devtools, 'ScriptDuration');
  await page.evaluate(async (turns) => {
    const { bareDraw } = window as unknown as { bareDraw: () => void };
    for (let n = 0; n < turns; n++)
      await new Promise((go) =>
        requestAnimationFrame(() => {
          bareDraw();
          setTimeout(go);
        }),
      );
  }, TURNS);
  return (((await metric(devtools, 'ScriptDuration')) - before) * 1000) / TURNS;
};

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
  await chooser.setFiles({
    name: 'bench.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(model)),
  });
  await page.waitForFunction(
    (name) => document.querySelector('.job-name')?.textContent === name,
    model.name,
    { timeout: 120_000 },
  );
  await page.evaluate(() => new Promise((go) => requestAnimationFrame(() => requestAnimationFrame(go))));
  const firstMs = Date.now() - began;
  const said = (await page.locator('.picture [role="img"]').getAttribute('aria-label')) ?? '';
  const tubes = Number(/Truss of (\d+)/.exec(said)?.[1]);

  // the sums are not what is measured here, and every change of the job begins them again
  const stopSums = (): Promise<void> => page.keyboard.press('Control+.');
  await stopSums();
  await page.getByRole('combobox', { name: /Find a tube/ }).fill('U1L-U2L');
  await page.keyboard.press('Enter');
  await page.locator('.picture [role="img"]').focus();
  await settled(page);
  const tagMs = await scripted(page, devtools, async () => {
    await page.keyboard.press('a');
    await stopSums();
  });
  const fade = page.locator('.legend-fold button').first();
  const recolourMs = await scripted(page, devtools, () =>
    fade.evaluate((button) => (button as HTMLElement).click()),
  );
  const orbitMs = await turned(page, devtools);
  await settled(page);
  const at = await page.evaluate(() => window.__tubewright?.project('U1L-U2L') ?? null);
  const pickMs = await scripted(page, devtools, () => page.mouse.click(at?.x ?? 400, at?.y ?? 300));
  await settled(page);
  const before = await drawn(page);
  await page.waitForTimeout(3000);
  const idleFrames = (await drawn(page)) - before;
  const heapMb = (await metric(devtools, 'JSHeapUsedSize')) / 1e6;
  const bareMs = await bare(page, devtools, tubes);
  return { tubes, firstMs, tagMs, recolourMs, orbitMs, bareMs, pickMs, idleFrames, heapMb };
};

/** The built app at two sizes of truss (stations have three digits, and making members slows beyond: 12,000 take 25 s), each against the smallest, on this machine and at this hour. */
export const run = async (): Promise<string[]> => {
  const server = await preview({ preview: { host: '127.0.0.1', port: 0 }, logLevel: 'error' });
  const browser = await openChromium();
  try {
    const rows: Measured[] = [];
    for (const bays of [11, 166]) {
      const page = await browser.newPage({
        viewport: { width: 1100, height: 750 },
        reducedMotion: 'reduce',
        serviceWorkers: 'block',
      });
      rows.push(await measure(page, server.resolvedUrls?.local[0] ?? '', bays));
      await page.close();
    }
    const [least] = rows;
    const told = (row: Measured, name: string, key: 'tagMs' | 'recolourMs' | 'orbitMs' | 'pickMs'): string =>
      `${name} ${row[key].toFixed(1)} ms (${(row[key] / least![key]).toFixed(1)} times)`;
    return rows.map((row) =>
      [
        `${row.tubes} tubes: first picture ${row.firstMs} ms (${(row.firstMs / least!.firstMs).toFixed(1)} times)`,
        `script: ${told(row, 'tag', 'tagMs')}`,
        told(row, 'recolour', 'recolourMs'),
        told(row, 'pick', 'pickMs'),
        `${told(row, 'orbit', 'orbitMs')} a frame, ${(row.orbitMs / row.bareMs).toFixed(1)} times bare three.js at ${row.bareMs.toFixed(1)} ms`,
        `${row.idleFrames} frames in 3 s at rest`,
        `heap ${row.heapMb.toFixed(0)} MB`,
      ].join(', '),
    );
  } finally {
    await browser.close();
    await server.close();
  }
};
