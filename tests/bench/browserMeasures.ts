import type { CDPSession, Page } from 'playwright-core';

/** Measures of a page that need its developer tools: script, frames and heap. */

export const metric = async (devtools: CDPSession, name: string): Promise<number> => {
  const { metrics } = await devtools.send('Performance.getMetrics');
  return metrics.find((one) => one.name === name)?.value ?? 0;
};

export const drawn = (page: Page): Promise<number> =>
  page.evaluate(() => window.__tubewright?.frames().drawn ?? 0);

/** Waits until half a second went by without a frame. */
export const settled = async (page: Page): Promise<void> => {
  for (let before = -1, n = 0; n < 40; n++) {
    const now = await drawn(page);
    if (now === before) return;
    before = now;
    await page.waitForTimeout(500);
  }
};

/** Of several goes the one that other work on this machine disturbed least. */
export const least = async (times: number, go: () => Promise<number>): Promise<number> => {
  const took: number[] = [];
  for (let n = 0; n < times; n++) took.push(await go());
  return Math.min(...took);
};

/** Milliseconds from an event until the last frame it asks for is asked for: everything but the drawing. */
export const untilFrame = async (page: Page, selector: string, key: string | null): Promise<number> => {
  const took = await page.evaluate(
    async ([where, pressed]) => {
      const frames = (): number => window.__tubewright?.frames().drawn ?? 0;
      const real = window.requestAnimationFrame;
      const before = frames();
      const target = document.querySelector<HTMLElement>(where)!;
      const began = performance.now();
      let asked = began;
      let inFrame = false;
      window.requestAnimationFrame = (call) => {
        // a frame asks for the next one as it begins; only what is asked for outside of frames is the event's
        if (!inFrame && frames() === before) asked = performance.now();
        return real.call(window, (time) => {
          inFrame = true;
          call(time);
          inFrame = false;
        });
      };
      if (pressed === null) target.click();
      else target.dispatchEvent(new KeyboardEvent('keydown', { key: pressed, bubbles: true }));
      while (frames() === before) await new Promise((go) => setTimeout(go, 4));
      window.requestAnimationFrame = real;
      return asked - began;
    },
    [selector, key] as const,
  );
  // the sums are not what is measured here, and every change of the job begins them again
  await page.keyboard.press('Control+.');
  await settled(page);
  return took;
};

const TURNS = 30;

/** Script of one frame while the picture turns, waiting for each to be drawn. */
export const turned = (page: Page, devtools: CDPSession): Promise<number> =>
  least(3, async () => {
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
  });

/** The least that three.js can do: as many tubes in one instanced mesh, a camera that turns, and nothing else. */
export const bare = async (page: Page, devtools: CDPSession, tubes: number): Promise<number> => {
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
  return least(3, async () => {
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
  });
};

/** Heap in use after what is not needed was thrown away. */
export const heapOf = async (page: Page): Promise<number> => {
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Performance.enable');
  await page.keyboard.press('Control+.');
  await page.waitForTimeout(1500);
  await devtools.send('HeapProfiler.enable');
  await devtools.send('HeapProfiler.collectGarbage');
  await devtools.send('HeapProfiler.collectGarbage');
  return (await metric(devtools, 'JSHeapUsedSize')) / 1e6;
};
