import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { states } from '../../src/core/walkRound/result.ts';
import { paperNames } from '../../src/present/papers/titles.ts';
import { tags } from '../../src/present/tags.ts';
import { terminal } from '../kit/terminal.ts';

const demo = 'demo-data/ground-loop.json';

describe('plan, take-off and estimate in the terminal', () => {
  it('count the tubes as the walk-round counts them, in the same order', () => {
    const estimate = JSON.parse(terminal('assess', demo, '--only', 'estimate', '--json').out);
    const coverage = JSON.parse(terminal('assess', demo, '--only', 'coverage', '--json').out);
    expect(estimate.counts).toEqual(coverage.members);
    const { out } = terminal('assess', demo, '--only', 'estimate');
    const places = states.map((state) => {
      const row = out.split('\n').find((line) => line.includes(tags[state].word));
      expect(row, state).toMatch(new RegExp(`\\b${coverage.members[state]}\\b`));
      return out.indexOf(row!);
    });
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  it('print steps, hold points, tube to buy and the weight ledger for a person', () => {
    expect(terminal('assess', demo, '--only', 'plan').out).toMatch(/hold points of the work/i);
    expect(terminal('assess', demo, '--only', 'takeoff').out).toMatch(/weight and moment ledger/i);
  });

  it('write every paper, the drawings and the tagged truss into the folder of the report', () => {
    const folder = join(mkdtempSync(join(tmpdir(), 'tubewright-')), 'r');
    expect(terminal('report', demo, '--out', folder).status).toBe(0);
    const names = ['', 'papers', 'drawings'].flatMap((under) => readdirSync(join(folder, under)));
    for (const name of paperNames) expect(names).toContain(`${name}.pdf`);
    expect(names.filter((n) => n.endsWith('.svg')).length).toBeGreaterThan(8);
    const counts = readFileSync(join(folder, 'tables/counts.csv'), 'utf8');
    const { nodes } = JSON.parse(readFileSync(join(folder, 'truss.gltf'), 'utf8'));
    const replaced = nodes.filter(
      (n: { extras: { state: string; odIn?: number } }) =>
        n.extras.odIn !== undefined && n.extras.state === tags.replace.word,
    ).length;
    expect(
      counts
        .split(/\r?\n/)
        .find((l) => l.includes(tags.replace.word))!
        .split(','),
    ).toContain(String(replaced));
  });
});
