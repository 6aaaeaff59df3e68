import { cabinPatch, patchCabin } from '../actions/cabin-patch.ts';
import { planImport } from '../actions/plan-imports.ts';
import type { ImportStep } from '../actions/plan-imports.ts';
import type { Cabin } from '../cabin/cabin.ts';
import { decodeText } from '../formats/decode-text.ts';
import { readerById, readText, sniffFormats } from '../formats/readers.ts';
import type { ReadingSet } from '../formats/reading-set.ts';
import { summariseReadings, textLayout } from '../formats/reading-summary.ts';
import type { RequestSheet } from '../report/requests/request-sheet.ts';
import { sameValue } from '../actions/edit.ts';
import type { ChosenFile, ImportAnswer, ImportProgress, ImportRequest, PlannedReply } from './import-protocol.ts';

interface Planned {
  readonly before: Cabin;
  readonly file: ChosenFile;
  /** Ids of the request sheets it was planned with. */
  readonly asked: string;
  readonly step: ImportStep;
}

export type Tell = (news: ImportProgress) => void;

/** What the import worker holds: the sets of the files that were read, and the cabin that they are planned on. */
export class ImportSession {
  private readonly sets = new Map<string, ReadingSet>();
  private cabin: Cabin | undefined;
  /** Steps of the last plan, which serve again as far as neither cabin nor choices changed. */
  private steps: readonly Planned[] = [];

  /** Answers a request; `digest` gives the SHA-256 of bytes where the platform has it. */
  async answer(request: ImportRequest, tell: Tell, digest: (bytes: Uint8Array) => Promise<string | undefined>): Promise<ImportAnswer> {
    switch (request.kind) {
      case 'read': {
        const { key, name, blob } = request.file;
        const bytes = new Uint8Array(await blob.arrayBuffer());
        return this.read(key, name, bytes, await digest(bytes), tell);
      }
      case 'cabin': this.cabin = request.cabin; return { kind: 'done' };
      case 'patch': this.cabin = this.cabin && patchCabin(this.cabin, request.patch); return { kind: 'done' };
      case 'forget': this.sets.delete(request.key); return { kind: 'done' };
      case 'plan': return { kind: 'planned', files: this.plan(request) };
      case 'take': {
        const before = this.cabin;
        const files = this.plan(request);
        const after = this.steps.at(-1)?.step.cabin ?? before;
        if (before === undefined || after === undefined) throw new Error('no cabin is known');
        this.cabin = after;
        return { kind: 'taken', patch: cabinPatch(before, after), files };
      }
    }
  }

  private read(key: string, name: string, bytes: Uint8Array, sha256: string | undefined, tell: Tell): ImportAnswer {
    tell({ kind: 'progress', share: 0 });
    const decoded = decodeText(bytes, name);
    const { text } = decoded;
    if (text === undefined) return { kind: 'refused', issues: decoded.issues };
    tell({ kind: 'progress', share: 0.1 });
    const { value: set, issues } = readText({ text, file: name, ...(sha256 === undefined ? {} : { sha256 }) }, { progress: (share) => tell({ kind: 'progress', share: 0.4 + 0.5 * share }) });
    const every = [...decoded.issues, ...issues];
    if (set === undefined) return { kind: 'refused', issues: every };
    this.sets.set(key, set);
    const reader = sniffFormats(text)[0]?.reader.id ?? set.reader;
    return {
      kind: 'found', reader, label: readerById(reader)?.label ?? reader, encoding: encodingOf(bytes, every), layout: textLayout(reader, text, set),
      ...(sha256 === undefined ? {} : { sha256 }), summary: summariseReadings(set), issues: every,
    };
  }

  private plan({ files, sheets }: { readonly files: readonly ChosenFile[]; readonly sheets: readonly RequestSheet[] }): PlannedReply['files'] {
    const asked = sheets.flatMap(({ lines }) => lines.map(({ id }) => id)).join(' ');
    let cabin = this.cabin;
    if (cabin === undefined) throw new Error('no cabin is known');
    const steps: Planned[] = [];
    for (const file of files) {
      const set = this.sets.get(file.key);
      if (set === undefined) continue;
      const known = this.steps[steps.length];
      const serves = known !== undefined && known.before === cabin && known.file.key === file.key && known.asked === asked && sameValue(known.file.choices, file.choices);
      const step: ImportStep = serves ? known.step : planImport(cabin, set, file.choices, sheets);
      steps.push({ before: cabin, file, asked, step });
      cabin = step.cabin;
    }
    this.steps = steps;
    return steps.map(({ file: { key }, step: { planned } }) => ({ key, planned }));
  }
}

function encodingOf(bytes: Uint8Array, issues: readonly { readonly code: string }[]): string {
  const [first, second, third] = bytes;
  if (first === 0xff && second === 0xfe) return 'UTF-16 (little end first)';
  if (first === 0xfe && second === 0xff) return 'UTF-16 (big end first)';
  if (issues.some(({ code }) => code === 'text-encoding')) return 'Windows-1252 (Latin-1)';
  return first === 0xef && second === 0xbb && third === 0xbf ? 'UTF-8 with a byte-order mark' : 'UTF-8';
}
