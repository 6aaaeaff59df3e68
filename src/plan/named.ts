/** Names in a sentence that stays one: beyond these the rest is counted. */
const mostNames = 8;

/** "a, b and c"; of many the first ones and how many others there are. Empty for none. */
export function named(items: readonly string[]): string {
  if (items.length < 2) return items.join('');
  const others = items.length - mostNames;
  // One more is as short as the word for it.
  if (others <= 1) return `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`;
  return `${items.slice(0, mostNames).join(', ')} and ${others} others`;
}
