/**
 * Sine, cosine, arctangent and friends from +, −, ×, ÷ and square root only, so that every engine and every processor
 * returns the same bits. (`Math.sin` and its like may differ in the last digit between engines; the five operations and
 * `Math.sqrt` are exact by IEEE 754.) The polynomials are those of FDLIBM (Sun Microsystems, 1993): `k_sin.c`,
 * `k_cos.c`, `s_atan.c`. Errors stay below 1 unit in the last place for the angles of a plan.
 */

import { PI } from "./arc.js";

export { acos, asin, atan, atan2, PI } from "./arc.js";

export const TAU = 2 * PI;

const HALF_PI_HIGH = 1.5707963267341256; // first 33 bits of π/2
const HALF_PI_LOW = 6.077100506506192e-11; // π/2 − high

function sinKernel(x: number): number {
  const z = x * x;
  const r =
    0.00833333333332249 +
    z *
      (-0.0001984126982985795 +
        z * (0.0000027557313707070068 + z * (-2.5050760253406863e-8 + z * 1.58969099521155e-10)));
  return x + x * z * (-0.16666666666666632 + z * r);
}

function cosKernel(x: number): number {
  const z = x * x;
  const r =
    z *
    (0.0416666666666666 +
      z *
        (-0.001388888888887411 +
          z *
            (0.00002480158728947673 +
              z * (-2.7557314351390663e-7 + z * (2.087572321298175e-9 + z * -1.1359647557788195e-11)))));
  return 1 - (0.5 * z - z * r);
}

/** Sine and cosine of `angle` (radians, |angle| up to about 1e6) as `[sin, cos]`. */
export function sinCos(angle: number): [number, number] {
  const quarter = Math.round(angle / 1.5707963267948966);
  const rest = angle - quarter * HALF_PI_HIGH - quarter * HALF_PI_LOW;
  const s = sinKernel(rest);
  const c = cosKernel(rest);
  switch (((quarter % 4) + 4) % 4) {
    case 0:
      return [s, c];
    case 1:
      return [c, -s];
    case 2:
      return [-s, -c];
    default:
      return [-c, s];
  }
}

/** Sine of `angle` in radians. */
export function sin(angle: number): number {
  return sinCos(angle)[0];
}

/** Cosine of `angle` in radians. */
export function cos(angle: number): number {
  return sinCos(angle)[1];
}

/** Length of the vector (x, y); `Math.hypot` differs between engines, this does not. */
export function hypot(x: number, y: number): number {
  return Math.sqrt(x * x + y * y);
}

export function radians(degrees: number): number {
  return (degrees * PI) / 180;
}

export function degrees(radians: number): number {
  return (radians * 180) / PI;
}
