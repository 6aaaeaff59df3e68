import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openEditor, perform, redoEdit, sealStep, select, undoEdit, isUnsaved, markSaved } from '../../src/actions/editor.ts';
import type { History } from '../../src/actions/history.ts';
import { historyLimit, record, redo, redoLabel, seal, startHistory, undo, undoLabel } from '../../src/actions/history.ts';
import { setJoint } from '../../src/actions/joint-actions.ts';
import { addPart, removePart, renamePart } from '../../src/actions/part-actions.ts';
import { smallCabin } from '../support/small-cabin.ts';

/** The plain list model: every state in a row with the label that led to it, and the place in it. */
interface Model {
  states: { document: number; label: string }[];
  place: number;
  growing: string | undefined;
}
interface Real {
  history: History<{ readonly value: number }>;
}

const check = (model: Model, real: Real): void => {
  expect(real.history.present.value).toBe(model.states[model.place]?.document);
  expect(undoLabel(real.history)).toBe(model.place === 0 ? undefined : model.states[model.place]?.label);
  expect(redoLabel(real.history)).toBe(model.states[model.place + 1]?.label);
  expect(real.history.past.length).toBe(model.place);
  expect(real.history.future.length).toBe(model.states.length - 1 - model.place);
};

class Edit implements fc.Command<Model, Real> {
  constructor(value: number, key: string | undefined) {
    this.value = value;
    this.key = key;
  }
  readonly value: number;
  readonly key: string | undefined;
  check = (): boolean => true;
  run(model: Model, real: Real): void {
    const label = `set ${this.value}`;
    const grows = this.key !== undefined && this.key === model.growing && model.place > 0;
    model.states.length = model.place + 1;
    if (grows) model.states[model.place] = { document: this.value, label };
    else model.states.push({ document: this.value, label });
    if (model.states.length > historyLimit + 1) model.states.shift();
    model.place = model.states.length - 1;
    model.growing = this.key;
    real.history = record(real.history, { value: this.value }, { label, ...(this.key === undefined ? {} : { key: this.key }) });
    check(model, real);
  }
  toString = (): string => `edit(${this.value}, ${this.key})`;
}

class Move implements fc.Command<Model, Real> {
  constructor(by: -1 | 1) {
    this.by = by;
  }
  readonly by: -1 | 1;
  check = (): boolean => true;
  run(model: Model, real: Real): void {
    const to = model.place + this.by;
    if (to >= 0 && to < model.states.length) model.place = to;
    if (to >= 0 && to < model.states.length) model.growing = undefined;
    real.history = this.by < 0 ? undo(real.history) : redo(real.history);
    check(model, real);
  }
  toString = (): string => (this.by < 0 ? 'undo' : 'redo');
}

class Load implements fc.Command<Model, Real> {
  constructor(value: number) {
    this.value = value;
  }
  readonly value: number;
  check = (): boolean => true;
  run(model: Model, real: Real): void {
    model.states = [{ document: this.value, label: '' }];
    model.place = 0;
    model.growing = undefined;
    real.history = record(real.history, { value: this.value }, { label: 'open', capture: 'never' });
    check(model, real);
  }
  toString = (): string => `load(${this.value})`;
}

class Seal implements fc.Command<Model, Real> {
  check = (): boolean => true;
  run(model: Model, real: Real): void {
    model.growing = undefined;
    real.history = seal(real.history);
    check(model, real);
  }
  toString = (): string => 'seal';
}

class Nothing implements fc.Command<Model, Real> {
  check = (): boolean => true;
  run(model: Model, real: Real): void {
    const before = real.history;
    real.history = record(real.history, real.history.present, { label: 'nothing' });
    expect(real.history).toBe(before);
    check(model, real);
  }
  toString = (): string => 'nothing';
}

const keys = fc.constantFrom(undefined, undefined, 'drag', 'type');
const commands = [
  fc.tuple(fc.nat(), keys).map(([value, key]) => new Edit(value, key)), fc.constant(new Move(-1)), fc.constant(new Move(1)),
  fc.nat().map((value) => new Load(value)), fc.constant(new Seal()), fc.constant(new Nothing()),
];

describe('undo and redo', () => {
  test('do what a list of states with a place in it does', () => {
    fc.assert(fc.property(fc.commands(commands, { maxCommands: 60, size: 'max' }), (steps) => {
      fc.modelRun(() => ({ model: { states: [{ document: -1, label: '' }], place: 0, growing: undefined }, real: { history: startHistory({ value: -1 }) } }), steps);
    }), { numRuns: 400, seed: 20261125 });
  }, 120_000);

  test('keep a hundred steps', () => {
    let history = startHistory(0);
    for (let value = 1; value <= 130; value += 1) history = record(history, value, { label: `to ${value}` });
    let steps = 0;
    for (let last = history; (last = undo(history)) !== history && last.present !== history.present; history = last) steps += 1;
    expect([steps, history.present]).toEqual([100, 30]);
  });
});

describe('the editor', () => {
  const editor = openEditor(smallCabin());

  test('undoes to the very document that was there, and redoes to the very one that was left', () => {
    const first = perform(editor, renamePart, { part: 'console', name: 'Lid' });
    const second = perform(first.editor, removePart, { part: 'console' });
    expect(second.label).toBe('Remove part Lid with 2 joints');
    const back = undoEdit(undoEdit(second.editor));
    expect(back.history.present).toBe(editor.history.present);
    expect(redoEdit(redoEdit(back)).history.present).toBe(second.editor.history.present);
    expect(undoLabel(second.editor.history)).toBe('Remove part Lid with 2 joints');
  });

  test('makes one step of a drag, until it is sealed', () => {
    let dragged = editor;
    for (const gapMm of [1, 2, 3]) dragged = perform(dragged, setJoint, { joint: 'j1', gapMm }, { key: 'gap of j1' }).editor;
    expect(dragged.history.past.map(({ label }) => label)).toEqual(['Change gap to 3 mm of joint Dash upper and Dash lower']);
    const apart = perform(sealStep(dragged), setJoint, { joint: 'j1', gapMm: 4 }, { key: 'gap of j1' }).editor;
    expect(apart.history.past.length).toBe(2);
    expect(undoEdit(apart).history.present.joints[0]?.gapMm).toBe(3);
  });

  test('selecting is no step, and leaves what can be redone', () => {
    const undone = undoEdit(perform(editor, renamePart, { part: 'console', name: 'Lid' }).editor);
    const selected = select(undone, { parts: ['console', 'nobody'], joint: 'j1', decision: 'd9' });
    expect(selected.history).toBe(undone.history);
    expect(selected.selection).toEqual({ parts: ['console'], joint: 'j1' });
    expect(redoLabel(selected.history)).toBe('Rename Console lid to Lid');
  });

  test('selects what is added, lets go what is gone, and knows what is saved', () => {
    const added = perform(editor, addPart, { name: 'Dash upper', zone: 'dash', supplier: 'quill', material: 'moulded' });
    expect(added.editor.selection).toEqual({ parts: ['dash-upper-2'] });
    expect(isUnsaved(added.editor)).toBe(true);
    expect(isUnsaved(markSaved(added.editor))).toBe(false);
    const gone = undoEdit(added.editor);
    expect(gone.selection).toEqual({});
    expect(isUnsaved(gone)).toBe(false);
  });

  test('a refused edit changes nothing and says why', () => {
    const { editor: same, done, issues } = perform(editor, setJoint, { joint: 'j1', reference: 'console' });
    expect([same === editor, done, issues.map(({ code, path }) => [code, path])]).toEqual([true, false, [['reference-not-of-joint', 'joints[0].reference']]]);
  });
});
