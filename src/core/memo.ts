type Call = (...args: never[]) => unknown;

const same = (a: unknown, b: unknown): boolean =>
  a === b ||
  (Array.isArray(a) && Array.isArray(b) && a.length === b.length && a.every((item, i) => item === b[i]));

/** A function that gives back its latest answer when every argument is the same (`===`, lists item by item). */
export const remember = <F extends Call>(stage: F): F => {
  let latest: { readonly args: readonly unknown[]; readonly answer: unknown } | undefined;
  return ((...args: never[]) => {
    const kept = latest;
    if (kept && kept.args.length === args.length && args.every((arg, i) => same(arg, kept.args[i])))
      return kept.answer;
    const answer = stage(...args);
    latest = { args, answer };
    return answer;
  }) as F;
};
