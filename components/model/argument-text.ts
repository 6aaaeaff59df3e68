import type { Argument } from '../../src/actions/argument.ts';

/** What stands in a field for a value of the document. */
export function argumentText(argument: Argument, value: unknown): string {
  if (value === undefined || value === null) return '';
  switch (argument.kind) {
    case 'structure': return JSON.stringify(value, null, 1);
    case 'point': return (value as readonly number[]).join(', ');
    case 'points': return (value as readonly (readonly number[])[]).map((point) => point.join(', ')).join('\n');
    case 'names': case 'numbers': case 'places': case 'references': return (value as readonly unknown[]).join(', ');
    default: return String(value);
  }
}

/**
 * The value that a field's text stands for; the action's own check reads it after. An empty field is `null` where the value may be taken
 * out, else `undefined`. Text that is not of the kind is passed on as it is, for the check to name the fault.
 */
export function argumentValue(argument: Argument, text: string): unknown {
  const { kind, presence, choices } = argument;
  const trimmed = text.trim();
  if (trimmed === '' && !(kind === 'text' && presence === 'needed')) return presence === 'clearable' ? null : undefined;
  switch (kind) {
    case 'number': case 'formula': return numberOf(trimmed);
    case 'flag': return trimmed === 'true';
    case 'choice': return choices?.find((choice) => String(choice) === trimmed) ?? trimmed;
    case 'point': return numbersOf(trimmed);
    case 'points': return trimmed.split('\n').filter((line) => line.trim() !== '').map(numbersOf);
    case 'numbers': case 'places': return numbersOf(trimmed);
    case 'names': case 'references': return trimmed.split(',').map((id) => id.trim()).filter(Boolean);
    case 'structure': return parsed(trimmed);
    case 'text': return text;
    default: return trimmed;
  }
}

/** A decimal comma counts as a point where it can be nothing else. */
function numberOf(text: string): unknown {
  const value = Number(/^[+-]?\d+,\d+$/.test(text) ? text.replace(',', '.') : text);
  return Number.isNaN(value) ? text : value;
}

const numbersOf = (text: string): unknown => text.split(/[,;\s]+/).filter(Boolean).map(numberOf);

function parsed(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return text;
  }
}
