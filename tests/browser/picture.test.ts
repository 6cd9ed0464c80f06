import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { openChromium } from '../kit/chromium.ts';
import { openSheet } from '../kit/page.ts';

const address = inject('address');
let browser: Browser;
beforeAll(async () => {
  browser = await openChromium();
});
afterAll(() => browser.close());

/** Tubes at whose middle, as the scene tells it, the picture shows nothing but one even ground. */
const notDrawn = async (page: Page, ids: readonly string[]): Promise<readonly string[]> => {
  const picture = (await page.screenshot()).toString('base64');
  return page.evaluate(
    async ({ picture: base64, ids: asked }) => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
      const canvas = new OffscreenCanvas(image.width, image.height);
      const pen = canvas.getContext('2d', { willReadFrequently: true })!;
      pen.drawImage(image, 0, 0);
      return asked.filter((id) => {
        const at = window.__tubewright?.project(id);
        if (!at) return true;
        const { data } = pen.getImageData(Math.round(at.x) - 4, Math.round(at.y) - 4, 9, 9);
        const seen = new Set<number>();
        for (let k = 0; k < data.length; k += 4)
          seen.add((data[k]! << 16) | (data[k + 1]! << 8) | data[k + 2]!);
        return seen.size < 2;
      });
    },
    { picture, ids },
  );
};

it('draws every tube where the pointer finds it, in each view', async () => {
  const { page, noise } = await openSheet(browser, address);
  const longerons = ['U1R-U2R', 'U3R-U4R', 'U5L-U6L', 'U8L-U9L', 'L1L-L2L', 'L6R-L7R', 'L8L-L9L', 'L9R-L10R'];
  for (const view of ['Left side', 'Right side', 'Plan', 'Ahead', 'Below']) {
    await page.getByRole('button', { name: view }).first().click();
    await page.waitForTimeout(600);
    expect(await notDrawn(page, longerons), view).toEqual([]);
  }
  expect(noise).toEqual([]);
});
