/** Steps back that are kept. */
export const historyLimit = 100;

/** A document that undo or redo leads to, and the name of the edit that lies between it and the next one. */
export interface Step<Document> {
  readonly document: Document;
  readonly label: string;
}

/** Undo by snapshots: documents share what did not change, so that a step costs what it changed. */
export interface History<Document> {
  /** Oldest first; the last is what undo leads to. */
  readonly past: readonly Step<Document>[];
  readonly present: Document;
  /** The first is what redo leads to. */
  readonly future: readonly Step<Document>[];
  /** Key of the step that may still grow: a drag or typing that goes on. */
  readonly growing?: string;
}

/**
 * `step`: the edit can be undone. `never`: the document is put in place of the one that was there, as when a file is opened, and
 * nothing from before can be reached.
 */
export type Capture = 'step' | 'never';

export interface Recorded {
  readonly label: string;
  /** Edits in a row with the same key make one step, until `seal()`, undo or an edit with another key or none. */
  readonly key?: string;
  readonly capture?: Capture;
}

export const startHistory = <Document>(present: Document): History<Document> => ({ past: [], present, future: [] });

/** The history after an edit; the same history where the document is the same object. A new edit ends what could be redone. */
export function record<Document>(history: History<Document>, document: Document, { label, key, capture = 'step' }: Recorded): History<Document> {
  if (capture === 'never') return startHistory(document);
  if (document === history.present) return history;
  const growing = key === undefined ? {} : { growing: key };
  const last = history.past.at(-1);
  if (key !== undefined && key === history.growing && last !== undefined) {
    return { past: history.past.with(-1, { document: last.document, label }), present: document, future: [], ...growing };
  }
  return { past: [...history.past, { document: history.present, label }].slice(-historyLimit), present: document, future: [], ...growing };
}

/** Ends the step that grows, so that the next edit is a step of its own: at the end of a drag, when a field is left. */
export const seal = <Document>(history: History<Document>): History<Document> =>
  (history.growing === undefined ? history : { past: history.past, present: history.present, future: history.future });

/** One step back; the same history where there is none. */
export function undo<Document>({ past, present, future, ...rest }: History<Document>): History<Document> {
  const last = past.at(-1);
  if (last === undefined) return { past, present, future, ...rest };
  return { past: past.slice(0, -1), present: last.document, future: [{ document: present, label: last.label }, ...future] };
}

/** One undone step forward again; the same history where there is none. */
export function redo<Document>({ past, present, future, ...rest }: History<Document>): History<Document> {
  const [next, ...others] = future;
  if (next === undefined) return { past, present, future, ...rest };
  return { past: [...past, { document: present, label: next.label }], present: next.document, future: others };
}

/** Name of the edit that undo takes back; undefined where there is none. */
export const undoLabel = <Document>(history: History<Document>): string | undefined => history.past.at(-1)?.label;
export const redoLabel = <Document>(history: History<Document>): string | undefined => history.future[0]?.label;
