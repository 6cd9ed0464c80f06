// Makes a fresh machine ready: the packages of the lock file, and (with --browser) a Chromium for the browser tests.
// Needs nothing but Node and npm. Runs before `npm start` and `npm test`; does nothing when all is there.
import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const root = new URL('..', import.meta.url).pathname;
const fail = (sentence) => {
  console.error(sentence);
  process.exit(1);
};

const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19))
  fail(`Node 20.19 or newer is needed; this is ${process.versions.node}.`);

const lock = readFileSync(join(root, 'package-lock.json'));
const wanted = createHash('sha256').update(lock).update(`${process.platform} ${process.arch}`).digest('hex');
const stampFile = join(root, 'node_modules', '.ready');
const present = existsSync(stampFile) ? readFileSync(stampFile, 'utf8') : '';
if (present !== wanted) {
  console.log('Installing packages …');
  const npm = spawnSync('npm', ['ci', '--include=dev', '--no-audit', '--no-fund'], {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  if (npm.status !== 0) fail('Installing the packages failed; npm said why above.');
  writeFileSync(stampFile, wanted);
}

/** Where a Chromium is, or nothing. CHROMIUM_PATH outranks. */
export const chromium = () => {
  const names = ['chromium', 'chromium-browser', 'google-chrome'];
  const folders = [...(process.env.PATH ?? '').split(delimiter), '/usr/bin', '/usr/local/bin'];
  const places = [process.env.CHROMIUM_PATH, ...folders.flatMap((f) => names.map((n) => join(f, n)))];
  return places.find((p) => p && existsSync(p));
};

if (process.argv.includes('--browser') && !chromium()) {
  const root0 = process.getuid?.() === 0;
  if (!root0 || !existsSync('/usr/bin/apt-get'))
    fail('The browser tests need Chromium: install it, or name it in CHROMIUM_PATH.');
  console.log('Installing Chromium for the browser tests …');
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  execFileSync('apt-get', ['update'], { stdio: 'ignore', env });
  execFileSync('apt-get', ['install', '-y', '--no-install-recommends', 'chromium', 'fonts-dejavu-core'], {
    stdio: 'ignore',
    env,
  });
  if (!chromium()) fail('Chromium was installed but cannot be found; name it in CHROMIUM_PATH.');
}
