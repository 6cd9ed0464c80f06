// `npm run bench [WORD]`: runs every tests/bench/*.bench.ts whose name has WORD, prints ratios, fails only when one throws.
import { readdirSync } from 'node:fs';
import { createServer } from 'vite';

const word = process.argv[2] ?? '';
const vite = await createServer({
  server: { middlewareMode: true, hmr: false, ws: false },
  appType: 'custom',
  logLevel: 'error',
});
for (const file of readdirSync('tests/bench')
  .filter((name) => name.endsWith('.bench.ts') && name.includes(word))
  .sort()) {
  console.log(`\n${file}`);
  const { run } = await vite.ssrLoadModule(`/tests/bench/${file}`);
  for (const line of await run()) console.log(`  ${line}`);
}
await vite.close();
process.exit(0);
