import type { GrainSlopes } from './grain-slopes.ts';
import type { LitSide } from './lit-side.ts';
import { bodyRange, fragmentShader, shineOctaves, shineScale, vertexShader } from './shaders.ts';
import type { ShadingInput } from './shade-by-processor.ts';
import type { StripFields } from './strip-fields.ts';
import { samplesOf } from './strip-fields.ts';

/** Grains kept on the graphics card, 4 MB each and more. */
const mostTextures = 12;

/** Light of 65,536 steps of the shine's logarithm. */
const shineOfStep = Float32Array.from({ length: 65_536 }, (_, step) => (2 ** ((step / 65_535) * shineOctaves) - 1) / shineScale);

/** Works out the light of strips with WebGL 2, one context for all of them. */
export class GraphicsShader {
  private readonly gl: WebGL2RenderingContext;
  private readonly program: WebGLProgram;
  private readonly places = new Map<string, WebGLUniformLocation | null>();
  private readonly textures = new Map<GrainSlopes, WebGLTexture>();
  private readonly target: WebGLFramebuffer;
  private readonly store: WebGLTexture;
  private size = [0, 0];

  private constructor(gl: WebGL2RenderingContext, program: WebGLProgram) {
    this.gl = gl;
    this.program = program;
    this.target = gl.createFramebuffer();
    this.store = gl.createTexture();
    gl.bindVertexArray(gl.createVertexArray());
    gl.disable(gl.BLEND);
    gl.disable(gl.DITHER);
    gl.pixelStorei(gl.UNPACK_ALIGNMENT, 1);
  }

  /** Undefined where there is no WebGL 2 or it cannot do what is asked. */
  static create(): GraphicsShader | undefined {
    try {
      const gl = new OffscreenCanvas(1, 1).getContext('webgl2', { antialias: false, depth: false, alpha: true, powerPreference: 'low-power' });
      const program = gl === null ? undefined : link(gl);
      return gl === null || program === undefined ? undefined : new GraphicsShader(gl, program);
    } catch {
      return undefined;
    }
  }

  /** Undefined where the context was lost on the way. */
  shade({ layout, scene, sides, shadow, draft }: ShadingInput): StripFields | undefined {
    const { gl } = this;
    const { width, height, top, bottom, perMm, lips } = layout;
    if (gl.isContextLost() || Math.max(width, height) > gl.getParameter(gl.MAX_TEXTURE_SIZE)) return undefined;
    this.resize(width, height);
    gl.useProgram(this.program);
    gl.clearColor(0, 0, 0, 0);
    gl.disable(gl.SCISSOR_TEST);
    gl.clear(gl.COLOR_BUFFER_BIT);
    gl.enable(gl.SCISSOR_TEST);
    gl.uniform2f(this.at('size'), width, height);
    gl.uniform1f(this.at('perMm'), perMm);
    gl.uniform3f(this.at('eye'), ...scene.eye);
    gl.uniform3f(this.at('towards'), ...scene.towards);
    gl.uniform3fv(this.at('lamps[0]'), scene.lamps.flat());
    gl.uniform2f(this.at('shadow'), shadow.core, shadow.end);
    for (const index of [0, 1] as const) {
      const side = sides[index];
      if (side === undefined) continue;
      const [first, end] = index === 0 ? [0, top] : [bottom, height];
      gl.uniform1i(this.at('side'), index);
      gl.uniform1f(this.at('edge'), index === 0 ? 0 : bottom);
      gl.uniform1f(this.at('lip'), lips[index]);
      gl.uniform1f(this.at('lipAt'), index === 0 ? top - lips[0] : bottom + lips[1]);
      gl.uniform1f(this.at('alpha'), side.alpha ?? -1);
      gl.uniform1f(this.at('index'), side.metal ? 0 : side.n);
      this.setGrain(side.grain, perMm, draft);
      gl.scissor(0, first, width, end - first);
      gl.drawArrays(gl.TRIANGLES, 0, 3);
    }
    return this.read(width, height);
  }

  private setGrain(grain: LitSide['grain'], perMm: number, draft: boolean): void {
    const { gl } = this;
    gl.uniform1i(this.at('grained'), grain === undefined ? 0 : 1);
    gl.uniform1i(this.at('samples'), grain === undefined ? 1 : samplesOf(Math.max(...grain.perMm) / perMm, draft));
    if (grain === undefined) return;
    gl.activeTexture(gl.TEXTURE0);
    gl.bindTexture(gl.TEXTURE_2D, this.texture(grain.slopes));
    gl.uniform1i(this.at('grain'), 0);
    gl.uniform1i(this.at('mirrored'), grain.slopes.mirrored ? 1 : 0);
    gl.uniform2f(this.at('field'), grain.slopes.width, grain.slopes.height);
    gl.uniform2f(this.at('grainPerMm'), ...grain.perMm);
    gl.uniform2f(this.at('offset'), ...grain.offset);
    gl.uniform2f(this.at('turn'), Math.cos(grain.turn), Math.sin(grain.turn));
    gl.uniform1f(this.at('scale'), grain.scale);
  }

  private texture(grain: GrainSlopes): WebGLTexture {
    const { gl, textures } = this;
    const kept = textures.get(grain);
    if (kept !== undefined) return kept;
    const [oldest] = textures;
    if (textures.size >= mostTextures && oldest !== undefined) {
      gl.deleteTexture(oldest[1]);
      textures.delete(oldest[0]);
    }
    const texture = gl.createTexture();
    gl.activeTexture(gl.TEXTURE0);
    gl.bindTexture(gl.TEXTURE_2D, texture);
    gl.texImage2D(gl.TEXTURE_2D, 0, gl.RG16F, grain.width, grain.height, 0, gl.RG, gl.FLOAT, grain.slopes);
    const wrap = grain.mirrored ? gl.CLAMP_TO_EDGE : gl.REPEAT;
    for (const [name, value] of [
      [gl.TEXTURE_MIN_FILTER, gl.LINEAR], [gl.TEXTURE_MAG_FILTER, gl.LINEAR], [gl.TEXTURE_WRAP_S, wrap], [gl.TEXTURE_WRAP_T, wrap],
    ] as const) gl.texParameteri(gl.TEXTURE_2D, name, value);
    textures.set(grain, texture);
    return texture;
  }

  private resize(width: number, height: number): void {
    const { gl } = this;
    gl.bindFramebuffer(gl.FRAMEBUFFER, this.target);
    if (this.size[0] !== width || this.size[1] !== height) {
      gl.activeTexture(gl.TEXTURE1);
      gl.bindTexture(gl.TEXTURE_2D, this.store);
      gl.texImage2D(gl.TEXTURE_2D, 0, gl.RGBA8, width, height, 0, gl.RGBA, gl.UNSIGNED_BYTE, null);
      gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, gl.NEAREST);
      gl.framebufferTexture2D(gl.FRAMEBUFFER, gl.COLOR_ATTACHMENT0, gl.TEXTURE_2D, this.store, 0);
      this.size = [width, height];
    }
    gl.viewport(0, 0, width, height);
  }

  private read(width: number, height: number): StripFields | undefined {
    const { gl } = this;
    const bytes = new Uint8Array(4 * width * height);
    gl.readPixels(0, 0, width, height, gl.RGBA, gl.UNSIGNED_BYTE, bytes);
    if (gl.isContextLost() || gl.getError() !== gl.NO_ERROR) return undefined;
    const body = new Float32Array(width * height);
    const shine = new Float32Array(width * height);
    for (let index = 0, at = 0; index < body.length; index += 1, at += 4) {
      body[index] = ((bytes[at] * 256 + bytes[at + 1]) * bodyRange) / 65_535;
      shine[index] = shineOfStep[bytes[at + 2] * 256 + bytes[at + 3]];
    }
    return { width, height, body, shine };
  }

  private at(name: string): WebGLUniformLocation | null {
    let place = this.places.get(name);
    if (place === undefined) {
      place = this.gl.getUniformLocation(this.program, name);
      this.places.set(name, place);
    }
    return place;
  }
}

function link(gl: WebGL2RenderingContext): WebGLProgram | undefined {
  const program = gl.createProgram();
  for (const [type, text] of [[gl.VERTEX_SHADER, vertexShader], [gl.FRAGMENT_SHADER, fragmentShader]] as const) {
    const shader = gl.createShader(type);
    if (shader === null) return undefined;
    gl.shaderSource(shader, text);
    gl.compileShader(shader);
    gl.attachShader(program, shader);
  }
  gl.linkProgram(program);
  return gl.getProgramParameter(program, gl.LINK_STATUS) === true ? program : undefined;
}
