import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { unpackBackup } from '../../src/present/backup.ts';
import { accessFaults } from '../kit/access.ts';
import { openChromium } from '../kit/chromium.ts';
import { go, misfits, openSheet, smallTargets, touchInPicture } from '../kit/page.ts';

const address = inject('address');
let browser: Browser;
beforeAll(async () => {
  browser = await openChromium();
});
afterAll(() => browser.close());

const focused = (page: Page) => page.evaluate(() => document.activeElement?.tagName ?? 'none');

/** A photo as a camera writes it, 3000 × 2000, with an EXIF block that holds a position. */
const cameraPhoto = async (page: Page): Promise<Buffer> => {
  const plain = Buffer.from(
    await page.evaluate(async () => {
      const canvas = document.createElement('canvas');
      canvas.width = 3000;
      canvas.height = 2000;
      const pen = canvas.getContext('2d')!;
      pen.fillStyle = '#678';
      pen.fillRect(0, 0, 3000, 2000);
      const blob = await new Promise<Blob>((give) => canvas.toBlob((b) => give(b!), 'image/jpeg'));
      return [...new Uint8Array(await blob.arrayBuffer())];
    }),
  );
  const exif = Buffer.concat([
    Buffer.from('Exif\0\0MM\0*\0\0\0\x08\0\0', 'latin1'),
    Buffer.from('GPSLatitude 51.5'),
  ]);
  const head = Buffer.from([0xff, 0xe1, 0, exif.length + 2]);
  return Buffer.concat([plain.subarray(0, 2), head, exif, plain.subarray(2)]);
};

describe('on the hangar floor', () => {
  it('takes a photo, marks it by touch and by keyboard, drops what the camera wrote, and packs it in the copy', async () => {
    const { page, noise } = await openSheet(browser, address, [1100, 900]);
    await page.getByRole('button', { name: 'Left side' }).click();
    await touchInPicture(page, 'U7L-L7L');
    const file = await cameraPhoto(page);
    expect(file.includes('GPSLatitude')).toBe(true);
    await page
      .getByLabel('Photo from a file')
      .setInputFiles({ name: 'camera.jpg', mimeType: 'image/jpeg', buffer: file });
    const shot = page.getByRole('button', { name: /^Photo to mark/ });
    await shot.click({ position: { x: 60, y: 60 } });
    await shot.click({ position: { x: 90, y: 60 } });
    await page.getByRole('button', { name: 'Arrow', exact: true }).click();
    await shot.focus();
    for (const key of ['Enter', 'ArrowRight', 'ArrowRight', 'ArrowDown', 'Enter'])
      await page.keyboard.press(key);
    await page.getByRole('button', { name: 'Words', exact: true }).click();
    await page.getByLabel('Words on the photo').fill('crack <b>here');
    await shot.click({ position: { x: 30, y: 120 } });
    await page.getByLabel('Looking').fill('from below');
    await page.screenshot({ path: 'tests/browser/shots/photo-marking.png' });
    expect(await accessFaults(page)).toEqual([]);
    await page.getByRole('button', { name: 'Record the photo' }).click();
    await page.getByRole('img', { name: /Photo of U7L-L7L: from below/ }).waitFor();
    await page.screenshot({ path: 'tests/browser/shots/photo-taken.png' });
    expect(await accessFaults(page)).toEqual([]);

    // later: one mark off, another on; the earlier ones come back with undo
    await page.getByRole('button', { name: /^Change marks: Photo of U7L-L7L/ }).click();
    await page.getByRole('button', { name: 'Take off arrow 1' }).click();
    await shot.click({ position: { x: 120, y: 40 } });
    await shot.click({ position: { x: 140, y: 60 } });
    await page.screenshot({ path: 'tests/browser/shots/photo-correcting.png' });
    expect(await accessFaults(page)).toEqual([]);
    await page.getByRole('button', { name: 'Record the change' }).click();
    await page.getByRole('button', { name: 'Undo: Photo of U7L-L7L corrected' }).click();
    await page.getByRole('button', { name: /^Change marks: Photo of U7L-L7L/ }).click();
    await page.getByRole('button', { name: 'Take off arrow 1' }).waitFor();
    await page.getByRole('button', { name: 'Leave it' }).click();
    await page.getByRole('button', { name: 'Redo: Photo of U7L-L7L corrected' }).click();

    await go(page, 'Record');
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save a copy of the job' }).click();
    const saved = await download;
    expect(saved.suggestedFilename()).toMatch(/\.zip$/);
    const unpacked = unpackBackup(new Uint8Array(readFileSync(await saved.path())));
    if (!unpacked.ok) return expect.fail('the copy does not unpack');
    const [bytes] = unpacked.value.photos.values();
    expect(Buffer.from(bytes!).includes('Exif')).toBe(false);
    expect(Buffer.from(bytes!).includes('GPS')).toBe(false);
    const size = await page.evaluate(
      async (data) => {
        const picture = await createImageBitmap(new Blob([new Uint8Array(data)], { type: 'image/jpeg' }));
        return [picture.width, picture.height] as const;
      },
      [...bytes!],
    );
    // two megapixels at 3 : 2, rounded down
    expect(size[0] * size[1]).toBeLessThanOrEqual(2_000_000);
    expect(size[0] * size[1]).toBeGreaterThan(1_990_000);
    const photos = JSON.parse(unpacked.value.text).records.filter(
      (r: { kind: string }) => r.kind === 'photo',
    );
    expect(photos).toHaveLength(2);
    const record = photos.find((r: { replaces?: string }) => r.replaces !== undefined);
    expect(record.marks.map((m: { mark: string }) => m.mark)).toEqual(['ring', 'text', 'ring']);

    // elsewhere: the same job, bit for bit
    const other = await openSheet(browser, address, [1100, 900]);
    await go(other.page, 'Start');
    const choose = other.page.waitForEvent('filechooser');
    await other.page.getByRole('button', { name: /Open a file/ }).click();
    await (await choose).setFiles(await saved.path());
    await expect
      .poll(() => other.page.evaluate(() => document.querySelector('.kept-cell')?.textContent))
      .toMatch(/Saved/);
    await go(other.page, 'Record');
    const again = other.page.waitForEvent('download');
    await other.page.getByRole('button', { name: 'Save a copy of the job' }).click();
    expect(readFileSync(await (await again).path()).equals(readFileSync(await saved.path()))).toBe(true);
    expect([...noise, ...other.noise]).toEqual([]);
  });

  it('shows what another tablet brings before joining, takes it as one change, and refuses practice', async () => {
    const { page, noise } = await openSheet(browser, address, [1100, 900]);
    const doc = JSON.parse(readFileSync('demo-data/ground-loop.json', 'utf8'));
    const stamp = { by: 'Ben', at: '2031-05-04T10:00:00Z', device: 'tablet 2' };
    const records = [
      ...doc.records.slice(1),
      { ...doc.records[0], by: 'Ben' },
      { kind: 'note', id: 'n1', ...stamp, words: 'from tablet 2' },
    ];
    const offer = async (name: string, text: string): Promise<void> => {
      const choose = page.waitForEvent('filechooser');
      await page.getByRole('button', { name: "Join another tablet's job" }).click();
      await (await choose).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
    };
    await go(page, 'Start');
    await offer('practice.json', JSON.stringify({ ...doc, purpose: 'practice' }));
    await page.getByText(/Not joined: practice.json/).waitFor();
    await offer('tablet2.json', JSON.stringify({ ...doc, records }));
    const preview = page.getByRole('region', { name: 'From tablet2.json' });
    await preview.getByText(/1 note/).waitFor();
    await preview.getByText(/Said differently: 1/).waitFor();
    await preview.scrollIntoViewIfNeeded();
    await page.screenshot({ path: 'tests/browser/shots/joining.png' });
    expect(await accessFaults(page)).toEqual([]);
    await page.getByRole('button', { name: 'Join them' }).click();
    await page.getByRole('button', { name: 'Undo: Joined tablet2.json' }).click();
    await page.getByRole('button', { name: 'Redo: Joined tablet2.json' }).waitFor();
    await page.getByText(/Earlier states of this job/).waitFor();
    expect(noise).toEqual([]);
  });

  it('never loses the focus: after a tag, undo, removing, another route, and a dialog', async () => {
    const { page } = await openSheet(browser, address);
    await page.getByRole('combobox', { name: /Find a tube/ }).fill('U7L-L7L');
    await page.keyboard.press('Enter');
    const kept = async (after: string): Promise<void> => {
      await page.waitForTimeout(150);
      expect(await focused(page), after).not.toBe('BODY');
    };
    await kept('find');
    await page.getByRole('button', { name: 'Bent', exact: true }).click();
    await kept('tag');
    await page
      .getByRole('log', { name: 'Said' })
      .getByText(/Bent|Saved/)
      .waitFor({ state: 'attached' });
    await page.getByRole('button', { name: /^Undo: / }).click();
    await kept('undo');
    await page.getByRole('button', { name: /^Redo: / }).click();
    await kept('redo');
    await page.getByRole('button', { name: 'Remove bow on U7L-L7L' }).click();
    await kept('remove');
    await go(page, 'Record');
    await kept('route');
    await page.keyboard.press('Shift+?');
    await page.getByRole('dialog', { name: 'Keys' }).waitFor();
    await page.screenshot({ path: 'tests/browser/shots/keys.png' });
    expect(await accessFaults(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.getByRole('dialog', { name: 'Keys' }).waitFor({ state: 'detached' });
    await kept('dialog');
  });

  it('lays the card at the other hand', async () => {
    const { page } = await openSheet(browser, address);
    await go(page, 'Start');
    const card = page.getByRole('complementary');
    const right = (await card.boundingBox())!.x;
    await page.getByLabel('Card on the left, for the left hand').check();
    await expect.poll(async () => (await card.boundingBox())!.x).toBeLessThan(right / 2);
    await page.screenshot({ path: 'tests/browser/shots/left-hand.png' });
    expect(await misfits(page)).toEqual([]);
  });

  it.each([
    [360, 740],
    [740, 360],
    [820, 1180],
    [1180, 820],
    [2560, 1440],
    [1440, 2560],
  ])('fits %i by %i with targets of 44 px, left hand and right', async (width, height) => {
    const { page, noise } = await openSheet(browser, address, [width, height], { touch: true });
    const wrong: string[] = [];
    const route = page.getByRole('navigation', { name: 'Route' }).getByRole('button');
    for (const hand of width === 360 || width === 1180
      ? (['right', 'left'] as const)
      : (['right'] as const)) {
      await route.nth(0).click();
      await page.getByLabel('Card on the left, for the left hand').setChecked(hand === 'left');
      for (let k = 0; k < (await route.count()); k++) {
        await route.nth(k).click();
        await page.waitForTimeout(200);
        const where = `${hand} ${(await route.nth(k).textContent())?.slice(0, 10)}`;
        wrong.push(...(await misfits(page)).map((one) => `${where}: ${one}`));
        wrong.push(...(await smallTargets(page)).map((one) => `${where}: ${one}`));
      }
      await page.screenshot({ path: `tests/browser/shots/floor-${width}-${hand}.png` });
    }
    expect([...new Set(wrong)]).toEqual([]);
    expect(noise).toEqual([]);
  });
});
