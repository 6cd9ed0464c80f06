import { describe, expect, it } from 'vitest';
import { commandOf, commands, keysOf } from '../../src/app/commands.ts';
import { openJob, undoName } from '../../src/app/state/job.ts';
import { selectAll, useView } from '../../src/app/state/view.ts';
import { emptyJob } from './kit.ts';

const unique = (list: readonly string[]): boolean => new Set(list).size === list.length;

describe('commands', () => {
  it('stand once each: no id, name or key is given twice', () => {
    expect(unique(commands.map(({ id }) => id))).toBe(true);
    expect(unique(commands.map(({ name }) => name))).toBe(true);
    expect(unique(commands.flatMap(({ keys }) => keys ?? []))).toBe(true);
  });

  it('are reached by the keys they name', () => {
    const press = (key: string, also: Partial<Parameters<typeof keysOf>[0]> = {}) =>
      keysOf({ key, code: '', ctrlKey: false, metaKey: false, altKey: false, shiftKey: false, ...also });
    expect(press('z', { ctrlKey: true })).toBe(commandOf('undo').keys);
    expect(press('Z', { metaKey: true, shiftKey: true })).toBe(commandOf('redo').keys);
    expect(press('f')).toBe(commandOf('fitAll').keys);
    expect(press('F', { shiftKey: true })).toBe(commandOf('fitSelected').keys);
    expect(press('/', {})).toBe(commandOf('find').keys);
    expect(press('Escape')).toBe(commandOf('clear').keys);
    expect(press('¡', { altKey: true, code: 'Digit1' })).toBe(commandOf('go-start').keys);
  });

  it('are not offered when they have nothing to act on', () => {
    openJob('k', emptyJob());
    selectAll([]);
    expect(commandOf('tag-bent').when()).toBe(false);
    expect(commandOf('undo').when()).toBe(false);
    expect(undoName()).toBeNull();
    selectAll(['U1L-U2L']);
    expect(commandOf('tag-bent').when()).toBe(true);
    commandOf('clear').do();
    expect(useView.getState().selected).toEqual([]);
  });
});
