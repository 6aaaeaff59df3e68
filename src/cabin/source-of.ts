import type { Part, Source } from './cabin.ts';

/** The source that a part stands by: the one picked, else the part's own choice, else the first. A pick the part does not have counts as none. */
export function sourceOf(part: Part, pick?: string): Source {
  const wanted = (id: string | undefined): Source | undefined => (id === undefined ? undefined : part.sources.find((source) => source.id === id));
  const source = wanted(pick) ?? wanted(part.source) ?? part.sources[0];
  if (source === undefined) throw new RangeError(`part ${part.id} has no source`);
  return source;
}
