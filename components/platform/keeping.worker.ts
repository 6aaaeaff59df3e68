import { cabinPatch, patchCabin } from '../../src/actions/cabin-patch.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import type { ReadingsPiece } from '../../src/workers/import-protocol.ts';
import { fromPieces } from '../../src/workers/patch-pieces.ts';
import { answered, committed, openDatabase } from './database.ts';
import type { HeavyReply, HeavyWrite } from './heavy-write.ts';

const pieces: ReadingsPiece[] = [];

/** Writes the document that the kept one becomes by a patch, whole; one message a piece, then the write. */
addEventListener('message', ({ data }: MessageEvent<ReadingsPiece | HeavyWrite>) => {
  if (data.kind === 'piece') {
    pieces.push(data);
    return;
  }
  write(data).then((): HeavyReply => ({ done: true }), (reason: unknown): HeavyReply => ({
    done: false, name: reason instanceof Error || reason instanceof DOMException ? reason.name : '', message: reason instanceof Error ? reason.message : String(reason),
  })).then((reply) => postMessage(reply), () => undefined);
});

async function write({ database: name, version, patch, kept }: HeavyWrite): Promise<void> {
  const database = await openDatabase(name, version, () => undefined);
  try {
    const transaction = database.transaction(['bases', 'kept'], 'readwrite', { durability: 'relaxed' });
    const base = await answered(transaction.objectStore('bases').get(kept.key) as IDBRequest<{ readonly key: string; readonly cabin: Cabin } | undefined>);
    if (base === undefined) throw new Error('the document is not kept');
    const cabin = patchCabin(base.cabin, fromPieces(patch, pieces));
    transaction.objectStore('bases').put({ key: kept.key, cabin });
    transaction.objectStore('kept').put({ ...kept, patch: cabinPatch(cabin, cabin) });
    await committed(transaction);
  } finally {
    database.close();
  }
}
