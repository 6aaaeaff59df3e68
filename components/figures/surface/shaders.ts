import { evenShare, lampPoints, leastCosine } from './lamp.ts';
import { steepest } from './strip-fields.ts';

const decimal = (value: number): string => (Number.isInteger(value) ? value.toFixed(1) : String(value));

/** One triangle over the whole target. */
export const vertexShader = `#version 300 es
void main() {
  gl_Position = vec4(gl_VertexID == 1 ? 3.0 : -1.0, gl_VertexID == 2 ? 3.0 : -1.0, 0.0, 1.0);
}`;

/** Range of the body's light, and of the shine's logarithm, that 16 bits hold. */
export const bodyRange = 8;
export const shineScale = 256;
export const shineOctaves = 24;

/** `facetLight` of every pixel of one side, two numbers of 16 bits each in the four channels; row 0 of the target is the top of the picture. */
export const fragmentShader = `#version 300 es
precision highp float;
precision highp int;
uniform sampler2D grain;
uniform bool grained, mirrored;
uniform vec2 field, grainPerMm, offset, turn;
uniform float scale;
uniform vec2 size;
uniform float perMm, edge, lip, lipAt;
uniform int side, samples;
uniform vec3 eye, towards, lamps[${lampPoints}];
uniform float alpha, index;
uniform vec2 shadow;
out vec4 packed_;

vec2 fold(vec2 place, out vec2 seen) {
  vec2 turns = floor(place / field);
  vec2 rest = min(place - turns * field, field - 1e-4);
  vec2 odd = mirrored ? mod(turns, 2.0) : vec2(0.0);
  seen = 1.0 - 2.0 * odd;
  return mix(rest, max(vec2(0.0), field - 1e-4 - rest), odd);
}

vec2 slopeAt(vec2 mm) {
  if (!grained) return vec2(0.0);
  vec2 along = vec2(mm.x * turn.x + mm.y * turn.y, mm.y * turn.x - mm.x * turn.y) * grainPerMm + offset;
  vec2 seen;
  vec2 at = fold(along, seen);
  vec2 own = texture(grain, (at + 0.5) / field).rg * seen * scale;
  return vec2(own.x * turn.x - own.y * turn.y, own.x * turn.y + own.y * turn.x);
}

float lipSlope(float row) {
  float into = side == 0 ? row - lipAt : lipAt - row;
  if (lip <= 0.0 || into <= 0.0) return 0.0;
  float share = min(${decimal(steepest)}, into / lip);
  float slope = share / sqrt(1.0 - share * share);
  return side == 0 ? -slope : slope;
}

float litShare(float row) {
  if (side == 0 || shadow.y <= 0.0 || row >= shadow.y) return 1.0;
  float t = max(0.0, (row - shadow.x) / (shadow.y - shadow.x));
  return t * t * (3.0 - 2.0 * t);
}

float fresnel(float cosine) {
  if (index == 0.0) return 1.0;
  float refracted = sqrt(index * index - 1.0 + cosine * cosine);
  float across = (cosine - refracted) / (cosine + refracted);
  float along = (index * index * cosine - refracted) / (index * index * cosine + refracted);
  return (across * across + along * along) / 2.0;
}

float hidden(float cosine, float square) {
  return (sqrt(1.0 + square * (1.0 - cosine * cosine) / (cosine * cosine)) - 1.0) / 2.0;
}

vec2 facetLight(vec2 mm, vec2 slope, float lit) {
  vec3 normal = normalize(vec3(-slope, 1.0));
  float least = max(${decimal(leastCosine)}, towards.z);
  float body = ${decimal(1 - evenShare)} * lit * max(0.0, dot(normal, towards)) / least + ${decimal(evenShare)} * (1.0 + normal.z) / 2.0;
  if (alpha < 0.0 || lit == 0.0) return vec2(body, 0.0);
  vec3 view = normalize(eye - vec3(mm, 0.0));
  float seen = dot(normal, view);
  if (seen <= 0.01) return vec2(body, 0.0);
  float square = alpha * alpha;
  float hiddenSeen = hidden(seen, square);
  int step_ = alpha > 0.12 ? ${lampPoints} : 1;
  float sum = 0.0;
  float count = 0.0;
  for (int i = (step_ - 1) / 2; i < ${lampPoints}; i += step_) {
    count += 1.0;
    vec3 light = normalize(lamps[i] - vec3(mm, 0.0));
    float incoming = dot(normal, light);
    if (incoming <= 0.01) continue;
    vec3 half_ = normalize(light + view);
    // The sine by the cross product, since the cosine is too near to 1 to tell.
    vec3 aside = cross(normal, half_);
    float sineSquare = dot(aside, aside);
    float spread = sineSquare + (1.0 - sineSquare) * square;
    sum += square / (spread * spread) * fresnel(dot(view, half_)) / (1.0 + hiddenSeen + hidden(incoming, square));
  }
  return vec2(body, ${decimal(1 - evenShare)} * lit * sum / count / (4.0 * seen * least));
}

vec2 halves(float share) {
  float whole = floor(clamp(share, 0.0, 1.0) * 65535.0 + 0.5);
  float high = floor(whole / 256.0);
  return vec2(high, whole - 256.0 * high) / 255.0;
}

void main() {
  vec2 sum = vec2(0.0);
  vec2 corner = floor(gl_FragCoord.xy);
  for (int i = 0; i < samples * samples; i += 1) {
    vec2 place = corner + (vec2(float(i % samples), float(i / samples)) + 0.5) / float(samples);
    vec2 slope = slopeAt(vec2(place.x, place.y - edge) / perMm) + vec2(0.0, lipSlope(place.y));
    sum += facetLight((place - size / 2.0) / perMm, slope, litShare(place.y - edge));
  }
  sum /= float(samples * samples);
  packed_ = vec4(halves(sum.x / ${decimal(bodyRange)}), halves(log2(1.0 + sum.y * ${decimal(shineScale)}) / ${decimal(shineOctaves)}));
}`;
