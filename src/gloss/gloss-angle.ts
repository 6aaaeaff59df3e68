/** Angles of incidence of glossmeters. Source: ISO 2813:2014. */
export const glossAngles = [20, 60, 85] as const;
export type GlossMeterAngle = (typeof glossAngles)[number];
