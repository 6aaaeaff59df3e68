import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { ImportChoices, PlannedImport } from '../../src/actions/plan-imports.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import type { Issue } from '../../src/issue.ts';
import type { RequestSheet } from '../../src/report/requests/index.ts';
import { counted } from '../../src/report/number-text.ts';
import { ImportBridge } from '../../src/workers/import-bridge.ts';
import type { FoundReply } from '../../src/workers/import-protocol.ts';
import { rememberedMapping, rememberMapping } from '../platform/mapping-memory.ts';
import type { Desk } from './desk.ts';

const largestBytes = 64 * 1024 * 1024;

/** One file that the user brought, from reading to taking over. */
export interface ImportItem {
  readonly key: string;
  readonly name: string;
  readonly state: 'reading' | 'found' | 'refused' | 'taken';
  /** Share of the reading that is done. */
  readonly share: number;
  readonly found?: FoundReply;
  readonly choices: ImportChoices;
  /** The choices began as those of an earlier file of the same shape. */
  readonly remembered: boolean;
  readonly planned?: PlannedImport;
  /** Why it was refused. */
  readonly issues: readonly Issue[];
}

/** The files that are being imported: read and planned in a worker, taken over as one step of undo. */
export class ImportDesk implements ReactiveController {
  items: readonly ImportItem[] = [];
  planning = false;
  taking = false;

  constructor(host: ReactiveControllerHost, desk: () => Desk, say: (text: string) => void) {
    this.host = host;
    this.desk = desk;
    this.say = say;
    host.addController(this);
  }

  private readonly host: ReactiveControllerHost;
  private readonly desk: () => Desk;
  private readonly say: (text: string) => void;
  private readonly bridge = new ImportBridge();
  private readonly work = new Map<string, AbortController>();
  private count = 0;
  private wanted = false;
  private plannedOn: Cabin | undefined;

  hostConnected(): void {
    this.replan();
  }

  /** A cabin that was changed elsewhere is planned on anew. */
  hostUpdated(): void {
    if (this.plannedOn !== undefined && this.desk().present !== this.plannedOn) this.replan();
  }

  item(key: string | undefined): ImportItem | undefined {
    return this.items.find((item) => item.key === key);
  }

  /** Files whose readings can be taken over as they are now. */
  get ready(): readonly ImportItem[] {
    return this.items.filter(({ state, planned }) => state === 'found' && planned?.taken === true);
  }

  /** Gives the key of the first of the files. */
  add(files: readonly (File | { readonly name: string; readonly blob: Blob })[]): string | undefined {
    const keys = files.map((file) => {
      const key = `file-${(this.count += 1)}`;
      const blob = file instanceof File ? file : file.blob;
      this.items = [...this.items, { key, name: file.name, state: 'reading', share: 0, choices: {}, remembered: false, issues: [] }];
      void this.read(key, file.name, blob);
      return key;
    });
    this.host.requestUpdate();
    return keys[0];
  }

  addText(text: string): string | undefined {
    return this.add([{ name: `pasted ${this.items.filter(({ name }) => name.startsWith('pasted ')).length + 1}`, blob: new Blob([text]) }]);
  }

  choose(key: string, change: Partial<ImportChoices>): void {
    this.change(key, (item) => ({ choices: { ...item.choices, ...change } }));
    this.replan();
  }

  cancel(key: string): void {
    this.work.get(key)?.abort(new DOMException('Cancelled', 'AbortError'));
    this.remove(key);
  }

  remove(key: string): void {
    this.items = this.items.filter((item) => item.key !== key);
    this.bridge.forget(key);
    this.host.requestUpdate();
    this.replan();
  }

  clearTaken(): void {
    for (const { key } of this.items.filter(({ state }) => state === 'taken')) this.bridge.forget(key);
    this.items = this.items.filter(({ state }) => state !== 'taken');
    this.host.requestUpdate();
  }

  /** Takes over every file that is ready, as one step. */
  async take(): Promise<boolean> {
    const { ready } = this;
    let present = this.desk().present;
    if (present === undefined || ready.length === 0 || this.taking) return false;
    this.taking = true;
    this.host.requestUpdate();
    try {
      const chosen = ready.map(({ key, choices }) => ({ key, choices }));
      const sheets = await this.sheets();
      let { cabin, files } = await this.bridge.take(present, chosen, sheets);
      // What was edited meanwhile is kept: the files are taken once more, on top of it.
      while (this.desk().present !== undefined && this.desk().present !== present) {
        present = this.desk().present as Cabin;
        ({ cabin, files } = await this.bridge.take(present, chosen, sheets));
      }
      const taken = new Map(files.filter(({ planned }) => planned.taken).map(({ key, planned }) => [key, planned]));
      const readings = [...taken.values()].reduce((sum, planned) => sum + planned.readings, 0);
      const lights = [...taken.values()].reduce((sum, planned) => sum + planned.newLights.length, 0);
      const from = taken.size === 1 ? ready.find(({ key }) => taken.has(key))?.name ?? 'a file' : counted(taken.size, 'file');
      const what = [...(readings > 0 ? [counted(readings, 'reading')] : []), ...(lights > 0 ? [counted(lights, 'light')] : [])].join(' and ') || 'nothing new';
      const result = this.desk().commit(cabin, `Import ${what} from ${from}`, { checkedAgainst: present }, { files: this.bridge.sources(chosen), sheets });
      if (!result.done) {
        this.say(`Not taken over: ${result.issues[0]?.hint ?? result.issues[0]?.code ?? 'refused'}`);
        return false;
      }
      for (const { key, found } of ready) {
        const planned = taken.get(key);
        if (planned !== undefined && found !== undefined) rememberMapping(found.layout.shape, planned.mapping);
      }
      this.items = this.items.map((item) => (taken.has(item.key) ? { ...item, state: 'taken' as const, planned: taken.get(item.key) ?? item.planned } : item) as ImportItem);
      this.say(`Taken over: ${what} from ${from}. Undo takes all of it back.`);
      return true;
    } catch (reason) {
      if (!isAbort(reason)) this.say('The import failed; nothing was changed.');
      return false;
    } finally {
      this.taking = false;
      this.host.requestUpdate();
      this.replan();
    }
  }

  private async read(key: string, name: string, blob: Blob): Promise<void> {
    const work = new AbortController();
    this.work.set(key, work);
    try {
      if (blob.size > largestBytes) {
        const found = `${Math.round(blob.size / 1024 / 1024)} MB`;
        this.change(key, () => ({ state: 'refused', issues: [{ code: 'file-too-large', severity: 'error', found, expected: 'at most 64 MB', hint: 'Split the file.' }] }));
        return;
      }
      const reply = await this.bridge.read(key, name, blob, {
        signal: work.signal,
        progress: (share) => this.change(key, () => ({ share })),
      });
      if (reply.kind === 'refused') {
        this.change(key, () => ({ state: 'refused', issues: reply.issues }));
        this.say(`${name} was not read: ${counted(reply.issues.filter(({ severity }) => severity === 'error').length, 'fault')}`);
        return;
      }
      const cabin = this.desk().present;
      const remembered = cabin === undefined ? undefined : rememberedMapping(reply.layout.shape, cabin);
      this.change(key, () => ({ state: 'found', share: 1, found: reply, issues: reply.issues, choices: remembered ?? {}, remembered: remembered !== undefined }));
      this.replan();
    } catch (reason) {
      if (isAbort(reason)) return;
      this.change(key, () => ({ state: 'refused', issues: [{ code: 'not-readable', severity: 'error', found: reason instanceof Error ? reason.message : String(reason), expected: 'a file that can be read' }] }));
    } finally {
      this.work.delete(key);
    }
  }

  /** The sheets that files with request ids answer. */
  private async sheets(): Promise<readonly RequestSheet[]> {
    return this.items.some(({ state, found }) => state === 'found' && found?.summary.answersRequests === true) ? this.desk().look({ what: 'requests' }) : [];
  }

  private change(key: string, change: (item: ImportItem) => Partial<ImportItem>): void {
    this.items = this.items.map((item) => (item.key === key ? { ...item, ...change(item) } : item));
    this.host.requestUpdate();
  }

  /** Plans all files that were read, once more if something changes meanwhile. */
  private replan(): void {
    this.wanted = true;
    if (!this.planning) void this.plan();
  }

  private async plan(): Promise<void> {
    this.planning = true;
    try {
      while (this.wanted) {
        this.wanted = false;
        const cabin = this.desk()?.present;
        const files = this.items.filter(({ state }) => state === 'found').map(({ key, choices }) => ({ key, choices }));
        this.plannedOn = cabin;
        if (cabin === undefined || files.length === 0) break;
        const reply = await this.bridge.plan(cabin, files, await this.sheets());
        const planned = new Map(reply.files.map((file) => [file.key, file.planned]));
        this.items = this.items.map((item) => (planned.has(item.key) && item.state === 'found' ? { ...item, planned: planned.get(item.key) } : item) as ImportItem);
        this.host.requestUpdate();
      }
    } catch (reason) {
      if (!isAbort(reason)) this.say('Planning the import failed.');
    } finally {
      this.planning = false;
      this.host.requestUpdate();
    }
  }
}

const isAbort = (reason: unknown): boolean => reason instanceof DOMException && reason.name === 'AbortError';
