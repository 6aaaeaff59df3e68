import type { Issue } from '../issue.ts';

/** The version of the document that this code writes and the highest that it reads. */
export const currentVersion = 1;

type JsonObject = Readonly<Record<string, unknown>>;

/** Turns a document of one version into one of the next, before any field is checked. */
type Migration = (document: JsonObject) => JsonObject;

/** Keyed by the version that is left behind. */
const migrations: ReadonlyMap<number, Migration> = new Map();

/** Brings a document to the current version, or says why its format or version cannot be read. */
export function migrate(document: JsonObject): { readonly document: JsonObject; readonly issue?: Issue } {
  if (document['format'] !== 'adjoin-cabin') {
    return {
      document,
      issue: {
        code: 'unknown-format', severity: 'error', path: 'format', expected: '"adjoin-cabin"', found: shown(document['format']),
        hint: 'This is not a cabin document.',
      },
    };
  }
  const version = document['version'];
  const isVersion = typeof version === 'number' && Number.isInteger(version) && version >= 1;
  if (isVersion && version > currentVersion) {
    return {
      document,
      issue: {
        code: 'newer-version', severity: 'error', path: 'version', expected: `a version up to ${currentVersion}`, found: String(version),
        hint: 'The document was written by a newer release; open it with that one.',
      },
    };
  }
  if (!isVersion) {
    const expected = `a version from 1 to ${currentVersion}`;
    return { document, issue: { code: 'unknown-version', severity: 'error', path: 'version', expected, found: shown(version) } };
  }
  let migrated = document;
  for (let from = version; from < currentVersion; from += 1) migrated = migrations.get(from)?.(migrated) ?? migrated;
  return { document: migrated };
}

function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  return typeof value === 'string' || typeof value === 'number' ? JSON.stringify(String(value).slice(0, 60)) : `a value of type ${typeof value}`;
}
