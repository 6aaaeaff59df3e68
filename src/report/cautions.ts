/** What the report does not cover; printed in every one. */
export const cautions: readonly string[] = [
  'The results support a judgement. They do not replace a visual assessment under agreed conditions (ISO 3668, SAE J361).',
  'Limits between two parties are theirs to agree; the standards of colour difference give none (ASTM D3134, ASTM D7195). Values of the rule book marked "common practice, no source" or "assumption, no source" have no published source.',
  'A change of material or source touches flammability, emissions, airbag cover and glare requirements that this report does not judge. Local codes and the responsible licensed engineer decide.',
  'Caps on gloss and lightness are a design aid. Legal requirements on visibility and the responsible engineer decide.',
  'Colours on a screen or on paper are no proof. Samples are drawn from the measurements under the light named beside them, for a display that follows sRGB; differences below about one unit cannot be told from them.',
  'Simulated lights use the measured reflectance alone: fluorescence is not excited by them.',
  'A difference is judged where it was measured. Places between the spots, other parts of the lot and later lots are covered only by the spread stated.',
];
