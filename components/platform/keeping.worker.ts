import { cabinPatch, patchCabin } from '../../src/actions/cabin-patch.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { GatheredCabin } from '../../src/workers/cabin-pieces.ts';
import type { ReadingsPiece } from '../../src/workers/import-protocol.ts';
import { fromPieces } from '../../src/workers/patch-pieces.ts';
import { answered, committed, openDatabase } from './database.ts';
import type { HeavyReply, HeavyWrite, KeepingRequest, WholeWrite } from './heavy-write.ts';

const pieces: ReadingsPiece[] = [];
const coming = new GatheredCabin();

/** Writes the document that the kept one becomes by a patch, or another one, whole; one message a piece, then the write. */
addEventListener('message', ({ data }: MessageEvent<KeepingRequest>) => {
  if (data.kind === 'piece') pieces.push(data);
  else if (data.kind === 'gather') coming.take(data.piece);
  else {
    write(data).then((): HeavyReply => ({ done: true }), (reason: unknown): HeavyReply => ({
      done: false, name: reason instanceof Error || reason instanceof DOMException ? reason.name : '', message: reason instanceof Error ? reason.message : String(reason),
    })).then((reply) => postMessage(reply), () => undefined);
  }
});

async function write(wanted: HeavyWrite | WholeWrite): Promise<void> {
  const { database: name, version, kept } = wanted;
  const database = await openDatabase(name, version, () => undefined);
  try {
    const transaction = database.transaction(['bases', 'kept'], 'readwrite', { durability: 'relaxed' });
    const cabin = wanted.kind === 'write whole' ? coming.gathered() : await patched(transaction, wanted);
    transaction.objectStore('bases').put({ key: kept.key, cabin });
    transaction.objectStore('kept').put({ ...kept, patch: cabinPatch(cabin, cabin) });
    await committed(transaction);
  } finally {
    database.close();
  }
}

async function patched(transaction: IDBTransaction, { kept, patch }: HeavyWrite): Promise<Cabin> {
  const base = await answered(transaction.objectStore('bases').get(kept.key) as IDBRequest<{ readonly key: string; readonly cabin: Cabin } | undefined>);
  if (base === undefined) throw new Error('the document is not kept');
  return patchCabin(base.cabin, fromPieces(patch, pieces));
}
