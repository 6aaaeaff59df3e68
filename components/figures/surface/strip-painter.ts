import type { HeightMap } from '../../../src/texture/height-map.ts';
import { composePicture } from './compose-picture.ts';
import { GrainStore } from './grain-store.ts';
import { litScene } from './lamp.ts';
import { litSide } from './lit-side.ts';
import { GraphicsShader } from './shade-by-graphics.ts';
import { shadeByProcessor } from './shade-by-processor.ts';
import type { ShadingInput } from './shade-by-processor.ts';
import { stepShadow } from './strip-layout.ts';
import type { Painting, StripPicture, StripRequest } from './strip-request.ts';

/** Paints strips: by WebGL 2 where there is such a thing, else on the processor. */
export class StripPainter {
  private readonly store = new GrainStore();
  private graphics: GraphicsShader | undefined;
  private tried = false;

  /** `canvas` leaves WebGL alone. */
  prefer(painting: Painting): void {
    this.tried = painting === 'canvas';
    this.graphics = undefined;
  }

  take(id: number, map: HeightMap): void {
    this.store.take(id, map);
  }

  paint({ layout, sides: asked, stepMm, viewMm, lamp, draft }: StripRequest): StripPicture {
    const scene = litScene(lamp, viewMm);
    const shadow = stepShadow(layout, stepMm, scene.towards);
    const sides = [litSide(asked[0], this.store), litSide(asked[1], this.store)] as const;
    const input: ShadingInput = { layout, scene, sides, shadow, draft };
    const byGraphics = this.shader()?.shade(input);
    if (byGraphics === undefined) this.graphics = undefined;
    const fields = byGraphics ?? shadeByProcessor(input);
    return {
      ...composePicture(fields, layout, sides, shadow.end), width: layout.width, height: layout.height,
      painted: byGraphics === undefined ? 'canvas' : 'webgl2',
    };
  }

  private shader(): GraphicsShader | undefined {
    if (!this.tried) {
      this.tried = true;
      this.graphics = GraphicsShader.create();
    }
    return this.graphics;
  }
}
