import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readPdf } from '../kit/readPdf.ts';
import { terminal } from '../kit/terminal.ts';

const demo = 'demo-data/ground-loop.json';
const folder = mkdtempSync(join(tmpdir(), 'tubewright-'));
const file = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};
const changed = (name: string, change: (doc: Record<string, unknown>) => void): string => {
  const doc = JSON.parse(readFileSync(demo, 'utf8'));
  change(doc);
  return file(name, JSON.stringify(doc));
};

describe('the terminal', () => {
  it.each(readdirSync('models'))('checks, expands and assesses the model %s with exit 0', (name) => {
    for (const verb of ['check', 'expand', 'assess']) {
      const { status, out, err } = terminal(verb, `models/${name}`, '--json');
      expect(err).toBe('');
      expect(status).toBe(0);
      expect(() => JSON.parse(out)).not.toThrow();
    }
  });

  it('prints one stage for a person, with words and units, and says it is a working aid', () => {
    const { status, out } = terminal('assess', demo, '--only', 'load-path');
    expect(status).toBe(0);
    expect(out).toMatch(/meets .* at /);
    expect(out).toMatch(/working aid/i);
  });

  it('works the relief for a member asked for by id, and refuses an unknown one by name', () => {
    const model = JSON.parse(terminal('expand', demo, '--json').out);
    const sound = model.members[model.members.length - 1].id as string;
    const asked = JSON.parse(terminal('assess', demo, '--only', 'relief', '--target', sound, '--json').out);
    expect(asked.targets.map((t: { member: string }) => t.member)).toContain(sound);
    const { status, out } = terminal('assess', demo, '--target', 'U99R-U98R', '--json');
    expect(status).toBe(2);
    expect(JSON.parse(out).issues[0].facts.got).toBe('U99R-U98R');
  });

  it('writes the report and a CSV per table, lists them, and gives equal bytes twice', () => {
    const [a, b] = [join(folder, 'a'), join(folder, 'b')];
    const first = terminal('report', demo, '--out', a, '--paper', 'letter');
    expect(first.err).toBe('');
    expect(first.status).toBe(0);
    terminal('report', demo, '--out', b, '--paper', 'letter');
    const names = readdirSync(a, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => relative(a, join(entry.parentPath, entry.name)))
      .sort();
    expect(names).toContain('report.pdf');
    expect(names).toContain('papers/work-cards.pdf');
    expect(names.filter((n) => n.endsWith('.csv')).length).toBeGreaterThan(8);
    expect(first.out.trim().split('\n').sort()).toEqual(names.map((n) => join(a, n)));
    for (const name of names)
      expect(readFileSync(join(a, name)).equals(readFileSync(join(b, name)))).toBe(true);
  });

  it('binds what is named into the one PDF, and names what there is when a name is wrong', async () => {
    const out = join(folder, 'bound');
    const { status, err } = terminal('report', demo, '--out', out, '--papers', 'findings,work-cards');
    expect(err).toBe('');
    expect(status).toBe(0);
    expect(readdirSync(out).filter((name) => name.endsWith('.pdf'))).toEqual(['report.pdf']);
    const text = (await readPdf(new Uint8Array(readFileSync(join(out, 'report.pdf'))))).join(' ');
    expect(text).toContain('Card 1 of');
    expect(text).not.toContain('Relief cuts');
    const wrong = terminal('report', demo, '--out', out, '--papers', 'findngs', '--json');
    expect(wrong.status).toBe(2);
    expect(JSON.parse(wrong.out).issues[0].facts.expected).toContain('findings');
    expect(wrong.err).toContain('findngs');
  });

  it('holds the supplement against an older file or a time, the same bytes when they are the same state', async () => {
    const job = JSON.parse(readFileSync(demo, 'utf8'));
    const times = job.records.map(({ at }: { at: string }) => at).sort();
    const at = times[Math.floor(times.length / 2)] as string;
    const older = changed('older.json', (doc) => {
      doc.records = (doc.records as { at: string }[]).filter((record) => record.at <= at);
    });
    const csv = (since: string): string => {
      const out = join(folder, `since-${since.length}`);
      expect(terminal('report', demo, '--out', out, '--papers', 'supplement', '--since', since).status).toBe(
        0,
      );
      const text = readFileSync(join(out, 'tables/supplement.csv'), 'utf8');
      return text
        .split('\r\n')
        .filter((line) => !line.startsWith('Table,'))
        .join('\n');
    };
    const [byFile, byTime] = [csv(older), csv(at)];
    expect(byTime).toBe(byFile);
    expect(byFile).toMatch(/Decision|Finding added|Added/);
    const { status, err } = terminal(
      'report',
      demo,
      '--out',
      folder,
      '--since',
      join(folder, 'nowhere.json'),
    );
    expect(status).toBe(2);
    expect(err).toContain('nowhere.json');
  });

  it.each(['job', 'model', 'assessment'])('gives the JSON Schema of a %s', (name) => {
    const { status, out } = terminal('schema', name, '--json');
    expect(status).toBe(0);
    expect(JSON.parse(out).$schema).toMatch(/json-schema\.org/);
  });

  it('answers a mechanism as an answer: exit 0, the clusters that move are named', () => {
    const loose = changed('loose.json', (doc) => {
      const model = doc.model as { members: unknown[]; clusters: unknown[] };
      model.clusters.push({ id: 'X1', at: [10, 0, 90] }, { id: 'X2', at: [20, 0, 95] });
      model.members.push({ from: 'X1', to: 'X2', tube: { odIn: 0.75, wallIn: 0.035 } });
    });
    const { status, out } = terminal('assess', loose, '--json');
    expect(status).toBe(0);
    const { statics, truss } = JSON.parse(out);
    expect(statics.kind).toBe('movesFreely');
    expect(statics.clusters.map((c: { id: string }) => c.id)).toContain('X1');
    expect(truss.members.length).toBeGreaterThan(100);
  });
});

describe('bad input at the terminal', () => {
  const bad: readonly (readonly [string, () => string])[] = [
    ['no such file', () => join(folder, 'nowhere.json')],
    ['a folder', () => folder],
    ['not JSON', () => file('broken.json', '{"format": "tubewright-job", ')],
    ['another format', () => file('other.json', '{"format": "something-else", "version": 1}')],
    [
      'a newer version',
      () =>
        changed('newer.json', (doc) => {
          doc.version = 99;
        }),
    ],
    [
      'a wrong type',
      () =>
        changed('type.json', (doc) => {
          doc.name = 7;
        }),
    ],
    [
      'NaN for a number',
      () => file('nan.json', readFileSync(demo, 'utf8').replace(/"stationIn":\s*[-\d.]+/, '"stationIn":NaN')),
    ],
    ['50 MB of garbage', () => file('garbage.json', 'x'.repeat(50 * 1024 * 1024))],
  ];
  it.each(bad)('%s: exit 2, file, place and mend in words, never a stack trace', (_, make) => {
    const path = make();
    const { status, out, err } = terminal('check', path, '--json');
    expect(status).toBe(2);
    const { issues } = JSON.parse(out);
    expect(issues.length).toBeGreaterThan(0);
    for (const i of issues) {
      expect(i.file).toBe(path);
      expect(i.mend).not.toBe('');
    }
    expect(err).toContain(path);
    expect(err).not.toMatch(/\n\s+at .*:\d+/);
  });

  const odd: readonly (readonly [string, (doc: Record<string, unknown>) => void, RegExp])[] = [
    [
      'an unknown id in a record',
      (doc) => {
        const first = (doc.records as { of?: string }[]).find((r) => r.of);
        if (first) first.of = 'U99R';
      },
      /U99R/,
    ],
    [
      'a duplicate record id',
      (doc) => void (doc.records as unknown[]).push((doc.records as unknown[])[0]),
      /id-twice/,
    ],
    [
      'a zero-length member',
      (doc) => {
        const model = doc.model as { clusters: unknown[]; members: unknown[] };
        model.clusters.push({ id: 'Y1', at: [5, 0, 5] }, { id: 'Y2', at: [5, 0, 5] });
        model.members.push({ from: 'Y1', to: 'Y2' });
      },
      /Y1-Y2/,
    ],
  ];
  it.each(odd)('%s: the rest stays usable and the issue names it', (name, change, expected) => {
    const { status, out } = terminal('check', changed(`${name}.json`, change), '--json');
    expect(status).toBe(0);
    expect(JSON.stringify(JSON.parse(out).issues)).toMatch(expected);
  });

  it('an unknown verb or option: exit 2 and one JSON document', () => {
    for (const words of [
      ['dance', demo],
      ['check'],
      ['check', demo, '--only', 'truss'],
      ['report', demo],
      ['assess', demo, '--only', 'nothing'],
    ]) {
      const { status, out } = terminal(...words, '--json');
      expect(status).toBe(2);
      expect(JSON.parse(out).issues.length).toBeGreaterThan(0);
    }
  });
});
