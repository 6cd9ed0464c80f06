// `npm start`: builds the app, serves it on this machine only, prints the address and opens it where there is a screen.
import { spawn } from 'node:child_process';
import { build, preview } from 'vite';

await build({ logLevel: 'warn' });
const server = await preview({
  preview: { host: '127.0.0.1', port: 4173, strictPort: false },
  logLevel: 'warn',
});
const address = server.resolvedUrls?.local[0] ?? 'http://127.0.0.1:4173/';
console.log(
  `\nTubewright is served at ${address}\nIt opens with the demo job: an invented aircraft after an invented mishap.\nStop with Ctrl+C.`,
);

const opener = { darwin: ['open'], win32: ['cmd', '/c', 'start', ''] }[process.platform] ?? ['xdg-open'];
const hasScreen = process.platform !== 'linux' || Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
if (hasScreen && !process.env.CI) {
  const child = spawn(opener[0], [...opener.slice(1), address], { stdio: 'ignore', detached: true });
  child.on('error', () => console.log(`Open ${address} in a browser.`));
  child.unref();
} else {
  console.log(`Open ${address} in a browser.`);
}
