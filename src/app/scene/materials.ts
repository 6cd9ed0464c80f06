import { BackSide, Color, FrontSide, LinearSRGBColorSpace, ShaderMaterial } from 'three';
import type { Tag } from '../../present/tags.ts';
import type { Inks } from './inks.ts';

/**
 * A soft Lambert light with an inked outline, drawn in one pass: the silhouette is known from the normal, so neither a
 * second mesh nor blending is needed. Colours go straight to the screen as CSS says them. Orthographic only.
 */
const vertex = /* glsl */ `
  attribute vec3 colour;
  attribute vec4 look; // fill share, outline dotted, ghost, pattern
  uniform float uScale, uLeastPx, uGrowPx;
  varying vec3 vNormal, vColour;
  varying vec4 vLook;
  varying vec2 vSide;
  varying float vRadiusPx, vAlongPx, vAlong, vHalf;
  void main() {
    vec3 px = instanceMatrix[0].xyz, ax = instanceMatrix[1].xyz, pz = instanceMatrix[2].xyz;
    float radius = length(px);
    float drawn = max(radius, 0.5 * uLeastPx / uScale) + uGrowPx / uScale;
    float k = drawn / radius;
    #ifdef BALL
      vec3 place = position * k;
    #else
      vec3 place = vec3(position.x * k, position.y, position.z * k);
    #endif
    vec4 mv = modelViewMatrix * instanceMatrix * vec4(place, 1.0);
    gl_Position = projectionMatrix * mv;
    vec3 axis = mat3(modelViewMatrix) * normalize(ax);
    vNormal = mat3(modelViewMatrix) * normalize(normal.x * px / radius + normal.y * normalize(ax) + normal.z * pz / radius);
    float seen = max(length(axis.xy), 1e-4);
    vSide = vec2(axis.y, -axis.x) / seen;
    vRadiusPx = drawn * uScale;
    float halfLong = 0.5 * length(ax);
    vAlong = position.y * 2.0 * halfLong / (2.0 * drawn);
    vHalf = halfLong / (2.0 * drawn);
    vAlongPx = position.y * 2.0 * halfLong * uScale * seen;
    vColour = colour;
    vLook = look;
  }
`;

const fragment = /* glsl */ `
  uniform vec3 uPaper, uInk;
  uniform float uRimPx, uNight;
  varying vec3 vNormal, vColour;
  varying vec4 vLook;
  varying vec2 vSide;
  varying float vRadiusPx, vAlongPx, vAlong, vHalf;

  // 1 where x is below the edge, smoothed over a pixel
  float below(float x, float edge) { return clamp((edge - x) / max(fwidth(x), 1e-4) + 0.5, 0.0, 1.0); }

  // across runs from -1 to 1 over the visible width, along in widths of the band
  float patterned(float kind, float along, float across) {
    float a = abs(across);
    if (kind < 1.5) return below(abs(fract(along * 0.8 + 0.45 * a) - 0.5), 0.25); // chevrons
    if (kind < 2.5) { // double rings
      float f = abs(fract(along / 1.7) - 0.5);
      return below(f, 0.32) * (1.0 - below(f, 0.13));
    }
    if (kind < 3.5) return below(abs(fract(along * 0.55 + 0.3 * across) - 0.5), 0.25); // slanted band
    if (kind < 4.5) { // cross-hatch
      float p = abs(fract(along * 0.9 + 0.45 * across) - 0.5), q = abs(fract(along * 0.9 - 0.45 * across) - 0.5);
      return max(below(p, 0.17), below(q, 0.17));
    }
    if (kind < 5.5) return below(abs(across - 0.5 * sin(along * 3.4)), 0.36); // wave
    return below(a, 0.5) * below(abs(fract(along * 0.42 + 0.3) - 0.5), 0.31); // long dashes
  }

  void main() {
    vec3 n = normalize(vNormal);
    #ifdef BALL
      float across = length(n.xy);
      float sideways = n.x;
    #else
      float across = abs(dot(n.xy, vSide));
      float sideways = dot(n.xy, vSide);
    #endif
    float edgePx = (1.0 - across) * vRadiusPx;
    float rim = 1.0 - smoothstep(uRimPx - 0.5, uRimPx + 0.5, edgePx);
    float kind = vLook.w;

    if (vLook.z > 0.5) {
      if (rim < 0.5) discard;
      gl_FragColor = vec4(mix(uPaper, uInk, 0.2), 1.0);
      return;
    }
    vec3 ink = mix(vColour, uInk, 0.25);
    vec3 body = mix(uPaper, vColour, vLook.x);
    if (kind > 0.5) {
      #ifdef BALL
        float on = patterned(kind, n.y * 1.1, sideways);
      #else
        float on = patterned(kind, vAlong, sideways);
        on = max(on, step(vHalf - 0.16, abs(vAlong)));
      #endif
      body = mix(uPaper, vColour, on);
    }
    float light = dot(n, normalize(vec3(-0.45, 0.7, 0.6)));
    vec3 dark = mix(body, mix(uInk, uPaper, uNight), 0.32), bright = mix(body, mix(vec3(1.0), uInk, uNight), 0.28);
    float quiet = kind > 0.5 ? 0.35 : mix(0.45, 1.0, vLook.x);
    vec3 lit = light < 0.35 ? mix(body, dark, (0.35 - light) / 1.35 * quiet) : mix(body, bright, (light - 0.35) / 0.65 * quiet);
    #ifdef BALL
      float walked = atan(n.y, n.x) * vRadiusPx;
    #else
      float walked = vAlongPx;
    #endif
    if (vLook.y > 0.5) rim *= step(fract(walked / 5.0), 0.52);
    gl_FragColor = vec4(mix(lit, ink, rim), 1.0);
  }
`;

const haloFragment = /* glsl */ `
  uniform vec3 uInk;
  void main() { gl_FragColor = vec4(uInk, 1.0); }
`;

/** Numbers of the patterns in the shader; those without one are drawn by fill and outline alone. */
export const patternNumber = {
  dotted: 0,
  solid: 0,
  chevrons: 1,
  rings: 2,
  band: 3,
  hatch: 4,
  wave: 5,
  dashes: 6,
} as const satisfies Record<Tag['pattern'], number>;

/** A CSS colour as the numbers the screen gets, without colour management. */
export const rgb = (css: string): Color => new Color().setStyle(css, LinearSRGBColorSpace);

const make = (ball: boolean, halo: boolean): ShaderMaterial =>
  new ShaderMaterial({
    vertexShader: vertex,
    fragmentShader: halo ? haloFragment : fragment,
    uniforms: {
      uScale: { value: 1 },
      uLeastPx: { value: 1 },
      uGrowPx: { value: 0 },
      uPaper: { value: new Color() },
      uInk: { value: new Color() },
      uRimPx: { value: 1 },
      uNight: { value: 0 },
    },
    defines: ball ? { BALL: '' } : {},
    side: halo ? BackSide : FrontSide,
  });

/** One material for each thing that is instanced. Halos are the back faces of an enlarged copy, so they never cover. */
export const makeMaterials = () =>
  ({
    tube: make(false, false),
    ball: make(true, false),
    band: make(false, false),
    haloTube: make(false, true),
    haloBall: make(true, true),
  }) as const;

export type Materials = ReturnType<typeof makeMaterials>;

/** Least drawn diameter as a share of a tube's, and growth of the radius in CSS pixels. */
const sizes = {
  tube: { least: 1, grow: 0 },
  ball: { least: 1.75, grow: 0 },
  band: { least: 2, grow: 1 },
  haloTube: { least: 1, grow: 4 },
  haloBall: { least: 1.75, grow: 4 },
} as const satisfies Record<keyof Materials, { least: number; grow: number }>;

/** Puts every material in the inks of a light. */
export const setInks = (materials: Materials, inks: Inks): void => {
  for (const name of Object.keys(sizes) as (keyof Materials)[]) {
    const { uniforms } = materials[name];
    const halo = name === 'haloTube' || name === 'haloBall';
    uniforms.uPaper!.value = rgb(inks.paper);
    uniforms.uInk!.value = rgb(halo ? inks.accent : inks.ink);
    uniforms.uLeastPx!.value = inks.leastTube * sizes[name].least;
    uniforms.uGrowPx!.value = sizes[name].grow;
    uniforms.uRimPx!.value = inks.line;
    uniforms.uNight!.value = inks.tag === 'dark' ? 1 : 0;
  }
};
