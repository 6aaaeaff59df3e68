import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { actionById, cabinPatch, commit, emptyCabin, isUnsaved, markSaved, openEditor, perform, redoEdit, sealStep, select, undoEdit } from '../../src/actions/index.ts';
import type { CommitOptions, EditOptions, Editor, EditResult, Selection } from '../../src/actions/index.ts';
import { redoLabel, undoLabel } from '../../src/actions/history.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { serialiseCabin } from '../../src/cabin/serialise-cabin.ts';
import type { Judgement } from '../../src/harmony/judgement.ts';
import type { Issue, Outcome } from '../../src/issue.ts';
import type { ImportSource } from '../../src/workers/imported-again.ts';
import { patchJudgement } from '../../src/workers/judgement-patch.ts';
import { SessionBridge } from '../../src/workers/session-bridge.ts';
import type { Show } from '../../src/workers/session-bridge.ts';
import type { OpenedWhole } from '../../src/workers/opening.ts';
import type { ChangedReply, RefusedReply } from '../../src/workers/session-protocol.ts';
import type { Look, Looks } from '../../src/workers/session-look.ts';
import { changedVerdicts } from '../model/changed-verdicts.ts';
import type { DocumentCard, Recoverable } from '../platform/document-store.ts';
import type { OpenedFile } from '../platform/open-save.ts';
import { saveFile } from '../platform/open-save.ts';
import { Keeper, tabDocument } from './keeper.ts';
import type { OpenCabin, Refusal } from './open-cabin.ts';

const largestBytes = 256 * 1024 * 1024;

/** How a document came to be open. */
interface Origin {
  readonly card: DocumentCard;
  readonly lastModified?: number;
  /** It lies in a file or beside the page as it was opened. */
  readonly saved: boolean;
  readonly text?: Blob;
  /** It was recovered from what is kept of it. */
  readonly continued?: boolean;
}

/**
 * What lies on the desk: the open document, its edits and their judgement, its file and its copy against crashes. A refused file or edit
 * leaves everything as it is. Views read `open` and call the desk; nothing else changes the document.
 */
export class Desk implements ReactiveController {
  open: OpenCabin | undefined;
  /** Name of the file being read. */
  loading: string | undefined;
  /** Joints of it that are judged by now. */
  judged = 0;
  refusal: Refusal | undefined;
  /** Why changes are not kept against a crash. */
  keepFault: Issue | undefined;
  /** Share of a change with very many readings that is kept against a crash by now; undefined where there is none. */
  keeping: number | undefined;
  /** Documents with changes that never reached a file, for the offer at the start. */
  recoverable: readonly Recoverable[] = [];

  constructor(host: ReactiveControllerHost, say: (text: string) => void) {
    this.host = host;
    this.say = say;
    host.addController(this);
  }

  private readonly host: ReactiveControllerHost;
  private readonly say: (text: string) => void;
  private readonly session = new SessionBridge();
  private readonly keeper = new Keeper({
    fault: (issue) => {
      if (this.keepFault?.code === issue?.code) return;
      this.keepFault = issue;
      if (issue !== undefined) this.say(`${issue.hint ?? issue.code}`);
      this.host.requestUpdate();
    },
    keeping: (share) => {
      if (this.keeping === share) return;
      this.keeping = share;
      this.host.requestUpdate();
    },
    lost: () => this.lock(true),
    released: (key) => {
      if (this.open?.locked === true && this.origin?.card.key === key) this.host.requestUpdate();
    },
  });

  private editor: Editor | undefined;
  private origin: Origin | undefined;
  private work: AbortController | undefined;
  /** What was open before the file that is being read; it stays where that one is refused. */
  private before: { readonly open: OpenCabin; readonly editor: Editor; readonly origin: Origin } | undefined;
  /** The document as the worker was last told. */
  private told: Cabin | undefined;
  private judgingEdit = false;
  private judgedEdits: Promise<unknown> = Promise.resolve();

  hostDisconnected(): void {
    this.session.end();
    this.keeper.dispose();
  }

  /** The document as it is now, the last edit included. */
  get present(): Cabin | undefined {
    return this.editor?.history.present;
  }

  /** The document as it was: in its file where it has changes since, and before each of the last steps, the latest first. */
  get earlier(): readonly EarlierState[] {
    if (this.editor === undefined) return [];
    const { history: { past, present }, saved } = this.editor;
    const steps = past.slice(-stepsShown).toReversed().map(({ document, label }, back): EarlierState => ({ id: `step-${back + 1}`, cabin: document, words: `before: ${label}` }));
    return [...steps, ...(saved === undefined || saved === present ? [] : [{ id: 'saved', cabin: saved, words: 'as it was saved' }])];
  }

  // Opening

  openFile({ file, handle }: OpenedFile): Promise<boolean> {
    if (file.size > largestBytes) {
      const found = `${Math.round(file.size / 1024 / 1024)} MB`;
      this.refuse({ file: file.name, issues: [{ code: 'file-too-large', severity: 'error', found, expected: 'at most 256 MB' }] });
      return Promise.resolve(false);
    }
    return this.take(file.name, async (show) => {
      // Its bytes as they are now: the file may be another one later.
      const text = new Blob([await file.arrayBuffer()], { type: file.type });
      return {
        reply: this.session.open(text, file.name, show),
        origin: (cabin) => ({
          card: { key: `file:${file.name}:${cabin.id}`, name: cabin.name, fileName: file.name, ...(handle === undefined ? {} : { handle }) },
          lastModified: file.lastModified, saved: true, text,
        }),
      };
    });
  }

  /** Opens a cabin beside the page, for example a demo; where this tab had changed it before a reload, with the changes. */
  async openAddress(address: string): Promise<boolean> {
    const key = `address:${address}`;
    if (tabDocument() === key && (await this.keeper.card(key))?.unsaved === true) return this.openKept(key);
    const name = address.split('/').pop() || address;
    return this.take(name, async (show, signal) => {
      const answer = await fetch(address, { signal });
      if (!answer.ok) throw new Error(`the server answered ${answer.status} for ${address}`);
      const text = await answer.blob();
      return { reply: this.session.open(text, name, show), origin: (cabin) => ({ card: { key, name: cabin.name, fileName: name }, saved: true, text }) };
    });
  }

  openNew(name: string, asOf: string): Promise<boolean> {
    const cabin = { ...emptyCabin(name, asOf), zones: [{ id: 'cabin', name: 'Cabin' }] };
    const key = `new:${crypto.randomUUID?.() ?? Date.now().toString(36)}`;
    return this.take(name, (show) => Promise.resolve({ reply: this.session.take(cabin, show), origin: () => ({ card: { key, name }, saved: false }) }));
  }

  /** Opens a document as it was kept in this browser. */
  async openKept(key: string): Promise<boolean> {
    const card = await this.keeper.card(key);
    const name = card?.fileName ?? card?.name ?? 'The kept document';
    return this.take(name, async (show) => {
      const { value: text, issues } = await this.keeper.recover(key);
      if (card === undefined || text === undefined) return { reply: Promise.resolve({ kind: 'refused', issues } as const), origin: () => ({ card: { key, name }, saved: false }) };
      const { unsaved, ...rest } = card;
      return { reply: this.session.open(text, name, show), origin: () => ({ card: rest, saved: !unsaved, text, continued: true }) };
    });
  }

  /** The document this tab had open before it was loaded anew, if it was kept. */
  async reopen(): Promise<boolean> {
    const key = tabDocument();
    if (key === undefined || (await this.keeper.card(key)) === undefined) return false;
    return this.openKept(key);
  }

  async findRecoverable(): Promise<void> {
    this.recoverable = await this.keeper.recoverable();
    this.host.requestUpdate();
  }

  async forget(key: string): Promise<void> {
    await this.keeper.forget(key);
    await this.findRecoverable();
  }

  refuse(refusal: Refusal | undefined): void {
    this.refusal = refusal;
    this.host.requestUpdate();
  }

  cancel(): void {
    if (this.work === undefined) return;
    this.work.abort(new DOMException('Cancelled', 'AbortError'));
    this.work = undefined;
    this.loading = undefined;
    this.session.end();
    this.putBack();
    this.host.requestUpdate();
  }

  private async take(
    file: string,
    begin: (show: Show, signal: AbortSignal) => Promise<{ readonly reply: Promise<OpenedWhole | RefusedReply>; readonly origin: (cabin: Cabin) => Origin }>,
  ): Promise<boolean> {
    this.cancel();
    const work = new AbortController();
    this.work = work;
    this.loading = file;
    this.refuse(undefined);
    await this.keeper.flush();
    if (this.open !== undefined && this.editor !== undefined && this.origin !== undefined && !this.open.judging) {
      this.before = { open: this.open, editor: this.editor, origin: this.origin };
    }
    this.judged = 0;
    const show: Show = (opened, share) => {
      if (this.work !== work) return;
      this.judged = share === undefined ? opened.judgement.joints.length : Math.round(share * opened.cabin.joints.length);
      if (share === undefined) this.open = { ...closed, file, judging: true, selection: this.open?.judging === true ? this.open.selection : {}, ...opened };
      this.host.requestUpdate();
    };
    try {
      const { reply: asked, origin } = await begin(show, work.signal);
      const reply = await asked;
      if (this.work !== work) return false;
      if (reply.kind === 'refused') {
        this.refuse({ file, issues: reply.issues });
        return false;
      }
      await this.begin(file, reply, origin(reply.cabin));
      return true;
    } catch (reason) {
      if (this.work === work && !work.signal.aborted) this.refuse({ file, issues: [unreadable(reason)] });
      return false;
    } finally {
      if (this.work === work) {
        this.work = undefined;
        this.loading = undefined;
        if (this.open?.judging === true || this.refusal !== undefined) this.putBack();
        this.host.requestUpdate();
      }
    }
  }

  private async begin(file: string, { cabin, judgement, paths, issues }: OpenedWhole, origin: Origin): Promise<void> {
    this.editor = select(openEditor(cabin, origin.saved ? cabin : undefined), this.open?.judging === true ? this.open.selection : {});
    this.origin = origin;
    this.told = cabin;
    this.before = undefined;
    this.open = { ...closed, file, cabin, judgement, paths, issues };
    this.showEditor();
    const owned = await this.keeper.begin(origin.card, cabin, { unsaved: !origin.saved, continued: origin.continued === true, ...(origin.text === undefined ? {} : { text: origin.text }) });
    this.lock(!owned);
    // What was edited meanwhile had nobody to keep it.
    if (owned && this.origin === origin && this.editor.history.present !== cabin) this.keeper.keep(this.editor.history.present, isUnsaved(this.editor));
  }

  /** After a file that was not taken, the worker is told again of what stays open. */
  private putBack(): void {
    const { before } = this;
    this.before = undefined;
    if (before === undefined) {
      if (this.open?.judging === true) this.open = undefined;
      return;
    }
    this.open = before.open;
    this.editor = before.editor;
    this.origin = before.origin;
    this.tellAnew();
  }

  // Editing

  /** Does an action of the registry. Edits in a row with the same key are one step of undo. */
  do(id: string, values: Readonly<Record<string, unknown>>, options: EditOptions = {}): EditResult {
    const action = actionById(id);
    if (action === undefined) throw new RangeError(`there is no action ${id}`);
    return this.edit((editor) => perform(editor, action, values, options));
  }

  /** Takes a cabin made from the present one in another way, as by an import or a plan, as one step; of an import, `source` is what it was made of. */
  commit(cabin: Cabin, label: string, options: CommitOptions = {}, source?: ImportSource): EditResult {
    return this.edit((editor) => commit(editor, cabin, label, options), source);
  }

  undo(): void {
    this.move(undoEdit, 'Undone', this.open?.undo);
  }

  redo(): void {
    this.move(redoEdit, 'Done again', this.open?.redo);
  }

  /** Ends a step of undo, as when a drag ends. */
  seal(): void {
    if (this.editor !== undefined) this.editor = sealStep(this.editor);
  }

  select(selection: Selection): void {
    if (this.editor !== undefined && this.open?.judging !== true) {
      this.editor = select(this.editor, selection);
      this.showEditor();
    } else if (this.open !== undefined) {
      this.open = { ...this.open, selection };
      this.host.requestUpdate();
    }
  }

  private move(step: (editor: Editor) => Editor, word: string, label: string | undefined): void {
    if (this.editor === undefined || label === undefined || this.open?.locked === true) return;
    this.editor = step(this.editor);
    this.say(`${word}: ${label}`);
    this.edited();
  }

  private edit(work: (editor: Editor) => EditResult, source?: ImportSource): EditResult {
    if (this.open?.judging === true) return { editor: openEditor(this.open.cabin), issues: [stillJudged], done: false, label: undefined };
    const { editor } = this;
    if (editor === undefined) throw new Error('no document is open');
    if (this.open?.locked === true) return { editor, issues: [ownedElsewhere], done: false, label: undefined };
    const result = work(editor);
    if (result.editor === editor) return result;
    this.editor = result.editor;
    this.edited(source === undefined ? undefined : { before: editor.history.present, source });
    return result;
  }

  private edited(imported?: { readonly before: Cabin; readonly source: ImportSource }): void {
    if (this.editor === undefined) return;
    const { history: { present } } = this.editor;
    if (imported === undefined) this.keeper.keep(present, isUnsaved(this.editor));
    else this.keeper.keepImport(imported.before, present, isUnsaved(this.editor), imported.source);
    this.showEditor();
    this.judgedEdits = Promise.all([this.judgedEdits, this.judgeEdits()]);
  }

  private showEditor(): void {
    if (this.open === undefined || this.editor === undefined) return;
    const { history, selection } = this.editor;
    this.open = { ...this.open, selection, unsaved: isUnsaved(this.editor), undo: undoLabel(history), redo: redoLabel(history) };
    this.host.requestUpdate();
  }

  private lock(locked: boolean): void {
    if (this.open === undefined) return;
    this.open = { ...this.open, locked };
    this.host.requestUpdate();
  }

  // Judging

  /** Tells the worker of edits one after the other; what was edited meanwhile goes along at the next. */
  private async judgeEdits(): Promise<void> {
    if (this.judgingEdit) return;
    this.judgingEdit = true;
    try {
      for (let present = this.present; present !== undefined && this.told !== undefined && present !== this.told; present = this.present) {
        const patch = cabinPatch(this.told, present);
        this.told = present;
        const reply = await this.session.edit(patch);
        if (this.told !== present) continue;
        this.takeChange(reply, present);
      }
    } catch (reason) {
      if (!isAbort(reason)) this.tellAnew();
    } finally {
      this.judgingEdit = false;
    }
  }

  private takeChange(reply: ChangedReply | RefusedReply, cabin: Cabin): void {
    if (this.open === undefined) return;
    if (reply.kind === 'refused') {
      this.refuse({ file: 'This change', issues: reply.issues });
      this.undo();
      return;
    }
    const judgement = patchJudgement(this.open.judgement, reply.patch);
    const news = changedVerdicts(this.open.judgement, judgement, cabin);
    const paths = reply.paths.length === 0 ? this.open.paths : new Map(this.open.paths);
    if (paths !== this.open.paths) {
      for (const [joint, path] of reply.paths) {
        if (path === undefined) (paths as Map<string, unknown>).delete(joint);
        else (paths as Map<string, typeof path>).set(joint, path);
      }
    }
    this.open = { ...this.open, cabin, judgement, paths };
    if (news !== undefined) this.say(news);
    this.host.requestUpdate();
  }

  /** After the worker was lost: it gets the document whole. */
  private tellAnew(): void {
    const { present } = this;
    if (present === undefined) return;
    this.told = present;
    this.session.take(present, () => undefined).then((reply) => {
      if (this.open === undefined || this.told !== present || reply.kind === 'refused') return;
      this.open = { ...this.open, cabin: present, judgement: reply.judgement, paths: reply.paths };
      this.host.requestUpdate();
      void this.judgeEdits();
    }).catch((reason: unknown) => {
      if (!isAbort(reason)) this.refuse({ file: this.open?.file ?? present.name, issues: [unreadable(reason)] });
    });
  }

  /** How the cabin would be judged if it were like this; undefined where a trial is refused or nothing is open. The document stays as it is. */
  async tryOut(cabin: Cabin): Promise<Judgement | undefined> {
    if (this.told === undefined) return undefined;
    const reply = await this.session.try(cabinPatch(this.told, cabin));
    return reply.kind === 'refused' || this.open === undefined ? undefined : patchJudgement(this.open.judgement, reply.patch);
  }

  /** The open cabin judged by another rule book, with the share that is done on the way; undefined where an edit or another book overtook it. */
  async judgeBy(ruleBook: string | object, progress?: (share: number) => void): Promise<Outcome<Judgement> | undefined> {
    const { told } = this;
    const reply = await this.session.judgeBy(ruleBook, progress);
    if (reply.kind === 'overtaken' || this.told !== told || this.open === undefined) return undefined;
    return reply.kind === 'changed' ? { value: patchJudgement(this.open.judgement, reply.patch), issues: [] } : { value: undefined, issues: reply.issues };
  }

  /** What else there is to see of the open cabin as it was judged last: measurement quality, masters, request sheets, files for suppliers. */
  look<L extends Look>(look: L): Promise<Looks[L['what']]> {
    return this.session.look(look);
  }

  // Keeping

  /** Writes the document to its file, or to another. Must be called from a click or key. */
  async save(elsewhere = false): Promise<void> {
    const { editor, origin } = this;
    if (editor === undefined || origin === undefined) return;
    const cabin = editor.history.present;
    const name = origin.card.fileName ?? `${cabin.id}.cabin.json`;
    const saved = await saveFile(() => this.textOf(cabin), elsewhere ? { name } : { name, handle: origin.card.handle, lastModified: origin.lastModified });
    if (saved.kind === 'turned away' || this.editor === undefined) return;
    if (saved.kind === 'failed') {
      this.refuse({ file: name, issues: [saved.issue] });
      return;
    }
    const card: DocumentCard = { ...origin.card, name: cabin.name, fileName: saved.name, ...(saved.kind === 'saved' ? { handle: saved.handle } : {}) };
    this.origin = { card, saved: true, ...(saved.kind === 'saved' ? { lastModified: saved.lastModified } : {}) };
    const edits = this.editor;
    this.editor = edits.history.present === cabin ? markSaved(edits) : { ...edits, saved: cabin };
    this.keeper.keep(this.editor.history.present, isUnsaved(this.editor), card);
    if (this.open !== undefined) this.open = { ...this.open, file: saved.name };
    this.showEditor();
    this.say(saved.kind === 'saved' ? `Saved to ${saved.name}` : `${saved.name} went to your downloads`);
  }

  /** Made in the worker where that holds just this document, since of a large one it takes long. */
  private async textOf(cabin: Cabin): Promise<Blob> {
    await this.judgedEdits;
    return this.told === cabin ? this.session.text() : new Blob([serialiseCabin(cabin)], { type: 'application/json' });
  }

  /** Writes what is to be kept now. */
  async flush(): Promise<void> {
    await this.keeper.flush();
  }

  /** Makes this tab the owner of a document that another one has open, with what that one changed. */
  async takeOver(): Promise<void> {
    const key = this.origin?.card.key;
    if (key === undefined) return;
    if (await this.keeper.takeOver(key)) await this.openKept(key);
  }

  async close(): Promise<void> {
    await this.keeper.close();
    this.session.end();
    this.open = undefined;
    this.editor = undefined;
    this.origin = undefined;
    this.told = undefined;
    this.host.requestUpdate();
    await this.findRecoverable();
  }
}

/** Steps back that can be compared with. */
const stepsShown = 8;

/** A state of the open document that came before the present one. */
export interface EarlierState {
  readonly id: string;
  readonly cabin: Cabin;
  readonly words: string;
}

const closed = { judging: false, issues: [], paths: new Map(), selection: {}, unsaved: false, undo: undefined, redo: undefined, locked: false } as const;

const ownedElsewhere: Issue = {
  code: 'open-elsewhere', severity: 'error', found: 'the cabin open in another tab', expected: 'one tab that changes it', hint: 'Take it over to change it here.',
};

const stillJudged: Issue = {
  code: 'still-judged', severity: 'error', found: 'a cabin whose joints are still being judged', expected: 'one that is judged', hint: 'It can be changed as soon as all its joints are judged.',
};

const isAbort = (reason: unknown): boolean => reason instanceof DOMException && reason.name === 'AbortError';

const unreadable = (reason: unknown): Issue => ({
  code: 'not-readable',
  severity: 'error',
  found: reason instanceof Error ? reason.message : String(reason),
  expected: 'a cabin file that can be read',
  hint: 'Check the name and that the file is still there, then open it again.',
});
