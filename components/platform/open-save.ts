import type { Issue } from '../../src/issue.ts';

/** A file that the user opened, with the handle to write to it again where the browser gives one. */
export interface OpenedFile {
  readonly file: File;
  readonly handle: FileSystemFileHandle | undefined;
}

/** What became of saving. `lastModified` serves to notice that something else wrote to the file since. */
export type Saved =
  | { readonly kind: 'saved'; readonly name: string; readonly handle: FileSystemFileHandle; readonly lastModified: number }
  | { readonly kind: 'downloaded'; readonly name: string }
  | { readonly kind: 'turned away' }
  | { readonly kind: 'failed'; readonly issue: Issue };

export interface SaveTarget {
  /** Name that is proposed, with its ending. */
  readonly name: string;
  /** The file to write to; a new one is asked for where there is none. */
  readonly handle?: FileSystemFileHandle | undefined;
  /** When the file was last written as far as is known; a later change refuses to be overwritten. */
  readonly lastModified?: number | undefined;
}

interface FileKind {
  readonly description: string;
  readonly accept: Readonly<Record<string, readonly string[]>>;
}
interface Pickers {
  showOpenFilePicker?: (options: { types: readonly FileKind[]; id: string }) => Promise<FileSystemFileHandle[]>;
  showSaveFilePicker?: (options: { types: readonly FileKind[]; id: string; suggestedName: string }) => Promise<FileSystemFileHandle>;
}
interface Permitting {
  queryPermission?: (wanted: { mode: 'readwrite' }) => Promise<PermissionState>;
  requestPermission?: (wanted: { mode: 'readwrite' }) => Promise<PermissionState>;
}

const kind: FileKind = { description: 'Cabin', accept: { 'application/json': ['.json'] } };
const pickers = (): Pickers => window as unknown as Pickers;

/** Whether files can be written in place; elsewhere saving is a download. */
export const savesInPlace = (): boolean => pickers().showSaveFilePicker !== undefined;

/** Asks for a cabin file; resolves to `undefined` where the user turns away. Must be called from a click or key. */
export async function openFile(): Promise<OpenedFile | undefined> {
  const picker = pickers().showOpenFilePicker;
  if (picker === undefined) return openByInput();
  try {
    const [handle] = await picker.call(window, { types: [kind], id: 'cabin' });
    return handle === undefined ? undefined : { file: await handle.getFile(), handle };
  } catch (reason) {
    if (isTurnedAway(reason)) return undefined;
    throw reason;
  }
}

function openByInput(): Promise<OpenedFile | undefined> {
  return new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = '.json,application/json';
    input.addEventListener('change', () => {
      const [file] = input.files ?? [];
      resolve(file === undefined ? undefined : { file, handle: undefined });
    });
    input.addEventListener('cancel', () => resolve(undefined));
    input.click();
  });
}

/** The handle of a dropped file, where the browser gives one. Must be called while the drop is being handled. */
export async function droppedHandle(item: DataTransferItem): Promise<FileSystemFileHandle | undefined> {
  const asking = (item as { getAsFileSystemHandle?: () => Promise<FileSystemHandle | null> }).getAsFileSystemHandle;
  const handle = await asking?.call(item);
  return handle?.kind === 'file' ? handle as FileSystemFileHandle : undefined;
}

/** What is written; made where it is a function, once the user has said where to. */
export type SavedText = string | (() => Promise<Blob>);

const madeOf = (text: SavedText): Promise<Blob> => (typeof text === 'string' ? Promise.resolve(new Blob([text], { type: 'application/json' })) : text());

/** Writes a text to the file given, else to one the user is asked for, else as a download. Must be called from a click or key. */
export async function saveFile(text: SavedText, { name, handle, lastModified }: SaveTarget): Promise<Saved> {
  if (!savesInPlace() && handle === undefined) return download(text, name);
  try {
    const target = handle ?? await pickers().showSaveFilePicker?.call(window, { types: [kind], id: 'cabin', suggestedName: name });
    if (target === undefined) return download(text, name);
    if (!(await mayWrite(target))) return { kind: 'failed', issue: fault('not-permitted', target.name, 'leave to write to the file', 'Save again and allow it, or save under another name.') };
    if (handle !== undefined && lastModified !== undefined && (await changedSince(target, lastModified))) {
      return { kind: 'failed', issue: fault('changed-elsewhere', target.name, 'the file as it was opened', 'Something else wrote to it meanwhile. Save under another name, or open it again.') };
    }
    await write(target, text);
    return { kind: 'saved', name: target.name, handle: target, lastModified: (await target.getFile()).lastModified };
  } catch (reason) {
    return isTurnedAway(reason) ? { kind: 'turned away' } : { kind: 'failed', issue: writeFault(reason, handle?.name ?? name) };
  }
}

/** The file is replaced only once all is written, so that a fault leaves the old one. */
async function write(handle: FileSystemFileHandle, text: SavedText): Promise<void> {
  const made = await madeOf(text);
  const stream = await handle.createWritable();
  try {
    await stream.write(made);
    await stream.close();
  } catch (reason) {
    await stream.abort().catch(() => undefined);
    throw reason;
  }
}

async function mayWrite(handle: FileSystemFileHandle): Promise<boolean> {
  const { queryPermission, requestPermission } = handle as Permitting;
  if (queryPermission === undefined || (await queryPermission.call(handle, { mode: 'readwrite' })) === 'granted') return true;
  return (await requestPermission?.call(handle, { mode: 'readwrite' })) === 'granted';
}

async function changedSince(handle: FileSystemFileHandle, lastModified: number): Promise<boolean> {
  try {
    return (await handle.getFile()).lastModified > lastModified;
  } catch {
    return false;
  }
}

/** How long the address of a download is kept: browsers begin to read it after the click. */
const downloadMs = 30_000;

async function download(text: SavedText, name: string): Promise<Saved> {
  const address = URL.createObjectURL(await madeOf(text));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), downloadMs);
  return { kind: 'downloaded', name };
}

const isTurnedAway = (reason: unknown): boolean => reason instanceof DOMException && reason.name === 'AbortError';

const fault = (code: string, found: string, expected: string, hint: string): Issue => ({ code, severity: 'error', found, expected, hint });

function writeFault(reason: unknown, name: string): Issue {
  const full = reason instanceof DOMException && reason.name === 'QuotaExceededError';
  return fault(full ? 'disk-full' : 'not-written', `${name}: ${reason instanceof Error ? reason.message : String(reason)}`, 'a file that can be written',
    full ? 'Make room, then save again.' : 'The file is as it was. Save under another name.');
}
