/** Namespace and root of ISO 17972-1:2015. */
export const cxfNamespace = 'http://colorexchangeformat.com/CxF3-core';
export const cxfRoot = 'CxF';

/** Illuminants of the standard's list by the names of CIE 015:2018; the rest are custom illuminants. */
export const cxfIlluminants: Readonly<Record<string, string>> = { A: 'A', C: 'C', D50: 'D50', D65: 'D65', F2: 'FL2', F7: 'FL7', F11: 'FL11' };

/** Written where nobody knows the day, since the standard requires one; read as not stated. */
export const unknownDate = '1970-01-01T00:00:00Z';
