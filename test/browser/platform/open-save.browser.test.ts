import { afterEach, expect, test } from 'vitest';
import { openFile, saveFile, savesInPlace } from '../../../components/platform/open-save.ts';

/** Handles of the origin's own file system are real files that can be written without asking; the pickers alone are stood in for. */
const page = window as unknown as Record<string, unknown>;
const own = { open: page['showOpenFilePicker'], save: page['showSaveFilePicker'] };
afterEach(() => {
  page['showOpenFilePicker'] = own.open;
  page['showSaveFilePicker'] = own.save;
});

const fileOf = async (name: string): Promise<FileSystemFileHandle> => (await navigator.storage.getDirectory()).getFileHandle(name, { create: true });
const textOf = async (handle: FileSystemFileHandle): Promise<string> => (await handle.getFile()).text();
const turnAway = (): Promise<never> => Promise.reject(new DOMException('The user aborted a request.', 'AbortError'));

test('a new file is asked for by a proposed name, and written to in place after that', async () => {
  const handle = await fileOf('one.cabin.json');
  const asked: unknown[] = [];
  page['showSaveFilePicker'] = (options: unknown) => {
    asked.push(options);
    return Promise.resolve(handle);
  };
  expect(savesInPlace()).toBe(true);
  const first = await saveFile('first', { name: 'proposed.cabin.json' });
  expect(asked).toMatchObject([{ suggestedName: 'proposed.cabin.json' }]);
  expect(first).toMatchObject({ kind: 'saved', name: 'one.cabin.json' });
  expect(await textOf(handle)).toBe('first');
  if (first.kind !== 'saved') throw new Error('not saved');
  expect(await saveFile('second', { ...first, name: 'proposed.cabin.json' })).toMatchObject({ kind: 'saved' });
  expect([await textOf(handle), asked.length]).toEqual(['second', 1]);
});

test('a file that something else wrote to meanwhile is left as it is', async () => {
  const handle = await fileOf('two.cabin.json');
  const saved = await saveFile('mine', { name: 'x', handle });
  if (saved.kind !== 'saved') throw new Error('not saved');
  await new Promise((resolve) => setTimeout(resolve, 20));
  const other = await handle.createWritable();
  await other.write('theirs');
  await other.close();
  expect(await saveFile('mine again', { name: 'x', handle, lastModified: saved.lastModified })).toMatchObject({ kind: 'failed', issue: { code: 'changed-elsewhere' } });
  expect(await textOf(handle)).toBe('theirs');
});

test('a fault in writing leaves the old file and is an issue', async () => {
  const handle = await fileOf('three.cabin.json');
  await saveFile('old', { name: 'x', handle });
  const failing = Object.create(handle, {
    createWritable: { value: async () => {
      const stream = await handle.createWritable();
      return { write: () => Promise.reject(new DOMException('No space left', 'QuotaExceededError')), close: () => stream.close(), abort: () => stream.abort() };
    } },
    name: { value: 'three.cabin.json' }, queryPermission: { value: undefined },
  }) as FileSystemFileHandle;
  expect(await saveFile('new', { name: 'x', handle: failing })).toMatchObject({ kind: 'failed', issue: { code: 'disk-full' } });
  expect(await textOf(handle)).toBe('old');
});

test('leave to write that is refused is said', async () => {
  const handle = await fileOf('four.cabin.json');
  const locked = Object.create(handle, { name: { value: 'four.cabin.json' }, queryPermission: { value: () => Promise.resolve('prompt') }, requestPermission: { value: () => Promise.resolve('denied') } }) as FileSystemFileHandle;
  expect(await saveFile('x', { name: 'x', handle: locked })).toMatchObject({ kind: 'failed', issue: { code: 'not-permitted' } });
});

test('opening gives the file with its handle; turning away is no fault', async () => {
  const handle = await fileOf('five.cabin.json');
  await saveFile('text', { name: 'x', handle });
  page['showOpenFilePicker'] = () => Promise.resolve([handle]);
  const opened = await openFile();
  expect([await opened?.file.text(), opened?.handle === handle]).toEqual(['text', true]);
  page['showOpenFilePicker'] = turnAway;
  page['showSaveFilePicker'] = turnAway;
  expect(await openFile()).toBeUndefined();
  expect(await saveFile('x', { name: 'x' })).toEqual({ kind: 'turned away' });
});

test('without file access a file comes by an input and goes by a download', async () => {
  page['showOpenFilePicker'] = undefined;
  page['showSaveFilePicker'] = undefined;
  expect(savesInPlace()).toBe(false);
  const clicks: (HTMLAnchorElement | HTMLInputElement)[] = [];
  const [anchorClick, inputClick] = [HTMLAnchorElement.prototype.click, HTMLInputElement.prototype.click];
  HTMLAnchorElement.prototype.click = function click() { clicks.push(this); };
  HTMLInputElement.prototype.click = function click() { clicks.push(this); };
  try {
    expect(await saveFile('{"downloaded": true}', { name: 'down.cabin.json' })).toEqual({ kind: 'downloaded', name: 'down.cabin.json' });
    const link = clicks[0] as HTMLAnchorElement;
    expect([link.download, await (await fetch(link.href)).text()]).toEqual(['down.cabin.json', '{"downloaded": true}']);
    const opening = openFile();
    const input = clicks[1] as HTMLInputElement;
    const transfer = new DataTransfer();
    transfer.items.add(new File(['picked'], 'picked.json'));
    input.files = transfer.files;
    input.dispatchEvent(new Event('change'));
    expect(await (await opening)?.file.text()).toBe('picked');
    const turned = openFile();
    clicks[2]?.dispatchEvent(new Event('cancel'));
    expect(await turned).toBeUndefined();
  } finally {
    HTMLAnchorElement.prototype.click = anchorClick;
    HTMLInputElement.prototype.click = inputClick;
  }
});
