import type { Geometry, GeometryClass } from './reading.ts';

/**
 * Class of geometries that may be compared with one another.
 * The 45 degree geometries are one class whatever their azimuthal arrangement and direction of light, likewise d:8 and 8:d
 * (Helmholtz reciprocity); specular included (`di`) and excluded (`de`) never meet. Names of CIE 015:2018.
 */
export function geometryClass(geometry: Geometry | undefined): GeometryClass {
  switch (geometry) {
    case '45a:0': case '45c:0': case '45x:0': case '0:45a': case '0:45c': case '0:45x': return '45:0';
    case 'de:8': case '8:de': return 'de:8';
    case 'di:8': case '8:di': return 'di:8';
    case 'multi-angle': return 'multi-angle';
    default: return 'unknown';
  }
}

/** True for the directional 45 degree geometries, which see the orientation of a grain that annular ones average out. */
export const isDirectional = (geometry: Geometry | undefined): boolean => geometry === '45x:0' || geometry === '0:45x';
