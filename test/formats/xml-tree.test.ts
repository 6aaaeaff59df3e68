import * as fc from 'fast-check';
import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { describe, expect, test } from 'vitest';
import type { XmlElement } from '../../src/formats/xml-tree.ts';
import { readXml } from '../../src/formats/xml-tree.ts';
import { element, xmlText } from '../../src/formats/xml-text.ts';
import type { XmlNode } from '../../src/formats/xml-text.ts';

// Oracle: fast-xml-parser, a general library that shares no code with ours.
const oracle = new XMLParser({ preserveOrder: true, ignoreAttributes: false, attributeNamePrefix: '', parseTagValue: false, parseAttributeValue: false, trimValues: false, ignoreDeclaration: true, htmlEntities: true });

type Plain = readonly [name: string, attributes: Readonly<Record<string, string>>, text: string, children: readonly Plain[]];

const ours = (node: XmlElement): Plain => [node.name, Object.fromEntries(node.attributes.map(({ name, value }) => [name, value])), node.text, node.children.map(ours)];

function theirs(node: Readonly<Record<string, unknown>>): Plain {
  const name = Object.keys(node).find((key) => key !== ':@') ?? '';
  // The library's own documented shape of an ordered tree.
  const items = node[name] as readonly Readonly<Record<string, unknown>>[];
  const attributes = (node[':@'] ?? {}) as Readonly<Record<string, string>>;
  const text = items.filter((item) => '#text' in item).map((item) => String(item['#text'])).join('');
  return [name, attributes, text, items.filter((item) => !('#text' in item)).map(theirs)];
}

const word = fc.stringMatching(/^[a-zA-Z_][a-zA-Z0-9_.-]{0,6}$/u).filter((text) => !/^(?:xml|constructor|prototype|toString|valueOf|hasOwnProperty)/iu.test(text));
const content = fc.stringMatching(/^[ -~äöüλ\n]{1,20}$/u).filter((text) => text.trim() !== '');
const tree: fc.Arbitrary<XmlNode> = fc.letrec<{ node: XmlNode }>((tie) => ({
  node: fc.tuple(word, fc.dictionary(word, fc.stringMatching(/^[ -~ä]{1,10}$/u), { maxKeys: 3, noNullPrototype: true }), fc.oneof({ depthSize: 'small' }, content, fc.array(tie('node'), { maxLength: 3 })))
    .map(([name, attributes, inside]) => element(name, attributes, inside)),
})).node;

describe('the XML reader', () => {
  test('finds the tree that a general library finds', () => {
    fc.assert(fc.property(tree, (node) => {
      const text = xmlText(node);
      expect(XMLValidator.validate(text)).toBe(true);
      const { root, faults } = readXml(text);
      expect(faults.list()).toEqual([]);
      const [expected] = (oracle.parse(text) as Readonly<Record<string, unknown>>[]).filter((item) => !('#text' in item));
      if (root === undefined || expected === undefined) throw new Error(text);
      const trimmed = ([name, attributes, inside, children]: Plain): Plain => [name, attributes, children.length === 0 ? inside : inside.trim(), children.map(trimmed)];
      expect(trimmed(ours(root))).toEqual(trimmed(theirs(expected)));
    }), { numRuns: 300, seed: 11 });
  });

  test.each([
    ['<a>&lt;&gt;&amp;&quot;&apos;&#65;&#x41;&#x1F600;</a>', '<>&"\'AA\u{1f600}'], ['<a><![CDATA[<b>&amp;]]></a>', '<b>&amp;'], ['<a>x<!-- <b> -->y<?go <c>?>z</a>', 'xyz'], ['<a>1\r\n2\r3\n4</a>', '1\n2\n3\n4'],
    ['\ufeff<?xml version="1.0"?>\n<!-- before --><a>in</a><!-- after -->\n', 'in'],
  ])('%j holds %j (XML 1.0, 2.4, 2.5, 2.7, 2.11, 4.1, 4.6)', (text, expected) => {
    expect(readXml(text).root?.text).toBe(expected);
  });

  test('line ends and tabs of an attribute are blanks, those by number are not (XML 1.0, 3.3.3)', () => {
    expect(readXml('<a b="1\r\n2\t3&#10;4"/>').root?.attributes[0]?.value).toBe('1 2 3\n4');
  });

  test('prefixes stand for namespaces, inner declarations go before outer ones (Namespaces in XML 1.0, 6)', () => {
    const { root } = readXml('<p:a xmlns:p="urn:1" xmlns="urn:2"><b/><p:c xmlns:p="urn:3"/><d xmlns=""/></p:a>');
    expect([root, ...(root?.children ?? [])].map((node) => [node?.name, node?.namespace])).toEqual([['a', 'urn:1'], ['b', 'urn:2'], ['c', 'urn:3'], ['d', '']]);
  });

  test.each([
    ['<a', 1, 1], ['<a b></a>', 1, 5], ['<a b=1/>', 1, 6], ['<a b="1"c="2"/>', 1, 9], ['<a b="<"/>', 1, 7], ['<a>\n</b>', 2, 1], ['<a/>\n<b/>', 2, 1], ['x<a/>', 1, 1], ['<a/>x', 1, 5], ['<1/>', 1, 1], ['<a>&</a>', 1, 4], ['<a>&b;</a>', 1, 4],
    ['<a><!-- </a>', 1, 4], ['<a><![CDATA[ </a>', 1, 4], ['<a>\n  <b>\n</a>', 3, 1], ['<p:a/>', 1, 1], ['<a b="1" b="2"/>', 1, 13], ['</a>', 1, 1], ['<a>&#xD800;</a>', 1, 4], ['<a>&#1114112;</a>', 1, 4],
  ])('%j is refused at line %i, column %i', (text, line, column) => {
    const { root, faults } = readXml(text);
    expect(root).toBeUndefined();
    expect(faults.list()).toMatchObject([{ severity: 'error', line, column }]);
  });
});
