/**
 * Sine, cosine, arctangent and friends from +, −, ×, ÷ and square root only, so that every engine and every processor
 * returns the same bits. (`Math.sin` and its like may differ in the last digit between engines; the five operations and
 * `Math.sqrt` are exact by IEEE 754.) The polynomials are those of FDLIBM (Sun Microsystems, 1993): `k_sin.c`,
 * `k_cos.c`, `s_atan.c`. Errors stay below 1 unit in the last place for the angles of a plan.
 *
 * Apart from trig.ts so that what is compiled to WebAssembly can have them too: plain functions of numbers, in what
 * TypeScript and AssemblyScript have in common.
 */

export const PI = Math.PI;
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

/** Sine of the angle that is `ahead` quarters of a turn ahead of `angle`, in radians (|angle| up to about 1e6). */
function sinAhead(angle: number, ahead: number): number {
  const quarter = Math.round(angle / 1.5707963267948966);
  const rest = angle - quarter * HALF_PI_HIGH - quarter * HALF_PI_LOW;
  const way = quarter + ahead - 4 * Math.floor((quarter + ahead) / 4);
  const size = way === 0 || way === 2 ? sinKernel(rest) : cosKernel(rest);
  return way < 2 ? size : -size;
}

/** Sine of `angle` in radians. */
export function sin(angle: number): number {
  return sinAhead(angle, 0);
}

/** Cosine of `angle` in radians. */
export function cos(angle: number): number {
  return sinAhead(angle, 1);
}

const ATAN_HIGH = [0.4636476090008061, 0.7853981633974483, 0.982793723247329, 1.5707963267948966];
const ATAN_LOW = [2.2698777452961687e-17, 3.061616997868383e-17, 1.3903311031230998e-17, 6.123233995736766e-17];

function atanPositive(x: number): number {
  let band = -1;
  let t = x;
  if (x >= 2.4375) {
    band = 3;
    t = -1 / x;
  } else if (x >= 1.1875) {
    band = 2;
    t = (x - 1.5) / (1 + 1.5 * x);
  } else if (x >= 0.6875) {
    band = 1;
    t = (x - 1) / (x + 1);
  } else if (x >= 0.4375) {
    band = 0;
    t = (2 * x - 1) / (2 + x);
  }
  const z = t * t;
  const w = z * z;
  const odd =
    z *
    (0.3333333333333293 +
      w *
        (0.14285714272503466 +
          w *
            (0.09090887133436507 + w * (0.06661073137387531 + w * (0.049768779946159324 + w * 0.016285820115365782)))));
  const even =
    w *
    (-0.19999999999876483 +
      w * (-0.11111110405462356 + w * (-0.0769187620504483 + w * (-0.058335701337905735 + w * -0.036531572744216916))));
  if (band < 0) return t - t * (odd + even);
  return ATAN_HIGH[band]! - (t * (odd + even) - ATAN_LOW[band]! - t);
}

/** Arctangent in radians, −π/2 to π/2. */
function atan(x: number): number {
  return x < 0 ? -atanPositive(-x) : atanPositive(x);
}

/** Direction of the vector (x, y) in radians, −π to π; 0 for the zero vector. */
export function atan2(y: number, x: number): number {
  if (x > 0) return atan(y / x);
  if (x < 0) return y < 0 ? atan(y / x) - PI : atan(y / x) + PI;
  return y > 0 ? PI / 2 : y < 0 ? -PI / 2 : 0;
}

/** Angle in radians whose sine is x (clamped to −1 … 1). */
export function asin(x: number): number {
  const c = Math.max(-1, Math.min(1, x));
  return atan2(c, Math.sqrt(1 - c * c));
}

/** Angle in radians whose cosine is x (clamped to −1 … 1). */
export function acos(x: number): number {
  const c = Math.max(-1, Math.min(1, x));
  return atan2(Math.sqrt(1 - c * c), c);
}

/** Length of the vector (x, y); `Math.hypot` differs between engines, this does not. */
export function hypot(x: number, y: number): number {
  return Math.sqrt(x * x + y * y);
}
