import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';

const names = ['chromium', 'chromium-browser', 'google-chrome'];
const folders = [...(process.env.PATH ?? '').split(delimiter), '/usr/bin', '/usr/local/bin'];

/** Where the Chromium is. CHROMIUM_PATH outranks. */
export const executable = (): string => {
  const places = [process.env.CHROMIUM_PATH ?? '', ...folders.flatMap((f) => names.map((n) => join(f, n)))];
  const found = places.find((place) => place !== '' && existsSync(place));
  if (!found) throw new Error('No Chromium found: `npm test` installs one, or name it in CHROMIUM_PATH.');
  return found;
};

/** Software WebGL, and nothing that talks to the outside. */
export const chromiumFlags = [
  '--no-sandbox',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
] as const;

/** A real Chromium with software WebGL and nothing that talks to the outside. */
export const openChromium = (): Promise<Browser> =>
  chromium.launch({
    executablePath: executable(),
    args: [...chromiumFlags],
  });
