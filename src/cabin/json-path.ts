/** A step into a JSON value: the key of an object or the index of an array. */
export type PathSegment = string | number;

const plainKey = /^[A-Za-z_$][\w$]*$/u;

/** Text of a path as issues carry it: `parts[3].standsBy["light exposed"]`; empty for the document itself. */
export function pathText(segments: readonly PathSegment[]): string {
  let text = '';
  for (const segment of segments) {
    if (typeof segment === 'number') text += `[${segment}]`;
    else if (plainKey.test(segment)) text += text === '' ? segment : `.${segment}`;
    else text += `[${JSON.stringify(segment.length > 100 ? `${segment.slice(0, 100)}…` : segment)}]`;
  }
  return text;
}

/** The segments of a path text; what cannot be read as a path ends it there. */
export function pathSegments(path: string): PathSegment[] {
  const step = /\[(\d+)\]|\[("(?:[^"\\]|\\.)*")\]|\.?([A-Za-z_$][\w$]*)/uy;
  const segments: PathSegment[] = [];
  for (let match = step.exec(path); match !== null; match = step.exec(path)) {
    if (match[1] !== undefined) segments.push(Number(match[1]));
    else if (match[2] !== undefined) segments.push(String(JSON.parse(match[2])));
    else segments.push(match[3] ?? '');
  }
  return segments;
}

/** The path of a member of the object at a path. */
export function memberPath(path: string, key: string): string {
  const member = pathText([key]);
  return member.startsWith('[') || path === '' ? path + member : `${path}.${member}`;
}
