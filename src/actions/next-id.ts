import { maxNameLength } from '../cabin/schema/index.ts';

/** A name as an id: small letters and digits of the Latin script without their marks, all else as single hyphens; `fallback` where nothing is left. */
export function idOfName(name: string, fallback: string): string {
  const plain = name.normalize('NFD').replaceAll(/\p{M}/gu, '').toLowerCase().replaceAll(/[^a-z0-9]+/gu, '-').replaceAll(/^-+|-+$/gu, '');
  return (plain === '' ? fallback : plain).slice(0, maxNameLength - 10).replace(/-$/u, '');
}

/** The id itself where it is free, else the first free of `id-2`, `id-3` and so on: the same for the same document. */
export function freeId(id: string, taken: Iterable<string>): string {
  const known = new Set(taken);
  if (!known.has(id)) return id;
  let number = 2;
  while (known.has(`${id}-${number}`)) number += 1;
  return `${id}-${number}`;
}

/** The first free of `stem-1`, `stem-2` and so on. */
export function numberedId(stem: string, taken: Iterable<string>): string {
  const known = new Set(taken);
  let number = 1;
  while (known.has(`${stem}-${number}`)) number += 1;
  return `${stem}-${number}`;
}

export const idsOf = (items: readonly { readonly id: string }[] | undefined): readonly string[] => (items ?? []).map(({ id }) => id);
