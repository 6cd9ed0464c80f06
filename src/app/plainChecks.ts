// The page's content policy forbids code made of text. The schema library reads this before it makes its checks,
// so this file is imported first, by the page and by the worker.
Object.assign(globalThis, { __zod_globalConfig: { jitless: true } });
