/** A request of IndexedDB as a promise. */
export const answered = <T>(request: IDBRequest<T>): Promise<T> => new Promise((resolve, reject) => {
  request.addEventListener('success', () => resolve(request.result));
  request.addEventListener('error', () => reject(request.error ?? new Error('The request to the store failed')));
});

/** A transaction, resolved when it is committed. Faults of single requests come out as that of the transaction. */
export const committed = (transaction: IDBTransaction): Promise<void> => new Promise((resolve, reject) => {
  transaction.addEventListener('complete', () => resolve());
  transaction.addEventListener('abort', () => reject(transaction.error ?? new Error('The store gave up the transaction')));
});

/** Opens a database, made by `upgrade` from the version that is there. Another tab that wants a newer version is not kept waiting. */
export function openDatabase(name: string, version: number, upgrade: (database: IDBDatabase, from: number) => void): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(name, version);
    request.addEventListener('upgradeneeded', (event) => upgrade(request.result, event.oldVersion));
    request.addEventListener('blocked', () => reject(new DOMException('Another tab holds an older version of the store open', 'InvalidStateError')));
    request.addEventListener('error', () => reject(request.error ?? new Error('The store cannot be opened')));
    request.addEventListener('success', () => {
      request.result.addEventListener('versionchange', () => request.result.close());
      resolve(request.result);
    });
  });
}
