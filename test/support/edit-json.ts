type Segment = string | number;

function segmentsOf(path: string): Segment[] {
  const found = path.matchAll(/\[(\d+)\]|\["((?:[^"\\]|\\.)*)"\]|([^.[\]]+)/gu);
  return [...found].map((match) => (match[1] !== undefined ? Number(match[1]) : match[2] ?? match[3] ?? ''));
}

function edit(node: unknown, segments: readonly Segment[], change: (old: unknown) => unknown): unknown {
  const [first, ...rest] = segments;
  if (first === undefined) return change(node);
  if (Array.isArray(node)) {
    const copy: unknown[] = node.slice();
    const value = edit(copy[Number(first)], rest, change);
    if (value === undefined) copy.splice(Number(first), 1);
    else copy[Number(first)] = value;
    return copy;
  }
  const copy: Record<string, unknown> = { ...(node as Record<string, unknown>) };
  const value = edit(copy[first], rest, change);
  if (value === undefined) delete copy[first];
  else copy[first] = value;
  return copy;
}

/** A copy of a JSON value in which the node at a path such as `parts[2].sources[0].supplier` is replaced; `undefined` takes it out. */
export const withNode = (root: unknown, path: string, value: unknown): unknown => edit(root, segmentsOf(path), () => value);

/** The same with a function of the node that was there. */
export const changeNode = (root: unknown, path: string, change: (old: unknown) => unknown): unknown => edit(root, segmentsOf(path), change);

export const nodeAt = (root: unknown, path: string): unknown =>
  segmentsOf(path).reduce<unknown>((node, segment) => (node as Record<Segment, unknown> | undefined)?.[segment], root);
