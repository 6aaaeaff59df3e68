/** The program that made a result, as printed in reports and by `--version`. */
export const software = { name: 'Adjoin', version: '0.1.0' } as const;
