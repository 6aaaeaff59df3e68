import { describeValue } from './describe-value.ts';
import { isPlainObject } from './json-value.ts';
import { nearestName } from './nearest-name.ts';
import type { Schema } from './schema.ts';

type Variants<T, Tag extends keyof T> = { readonly [K in T[Tag] & string]: Schema<Extract<T, Readonly<Record<Tag, K>>>> };

/** One of several kinds of object, told apart by the word in their field `tag`. */
export function variant<T extends object, Tag extends keyof T & string>(what: string, tag: Tag, code: string, variants: Variants<T, Tag>): Schema<T> {
  const schemas = new Map<string, Schema<T>>(Object.entries(variants));
  const words = [...schemas.keys()];
  const expected = `one of ${words.join(', ')}`;
  return {
    expected: what,
    read(value, faults) {
      if (!isPlainObject(value)) {
        faults.add('wrong-type', { expected: what, found: describeValue(value) });
        return undefined;
      }
      const word = value[tag];
      const schema = typeof word === 'string' ? schemas.get(word) : undefined;
      if (schema !== undefined) return schema.read(value, faults);
      faults.path.push(tag);
      if (word === undefined) faults.add('missing-field', { expected, found: 'nothing' });
      else if (typeof word !== 'string') faults.add('wrong-type', { expected, found: describeValue(word) });
      else {
        const nearest = nearestName(word, words);
        faults.add(code, {
          expected, found: describeValue(word), ...(nearest === undefined ? {} : { hint: `Did you mean ${JSON.stringify(nearest)}?` }),
        });
      }
      faults.path.pop();
      return undefined;
    },
    arrange(value) {
      const word = isPlainObject(value) ? value[tag] : undefined;
      return typeof word === 'string' ? schemas.get(word)?.arrange(value) ?? value : value;
    },
  };
}
