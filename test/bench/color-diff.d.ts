declare module 'color-diff' {
  export interface LabColour { readonly L: number; readonly a: number; readonly b: number }
  export function diff(first: LabColour, second: LabColour): number;
}
