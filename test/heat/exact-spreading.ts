/** A plate with a source in its middle, by exact series; [m], [W/(m·K)], [K/W]. */
export interface ExactPlate {
  readonly source: readonly [number, number];
  readonly plate: readonly [number, number];
  readonly thickness: number;
  readonly conductivity: number;
  readonly beyond: number;
}

interface Exact {
  readonly max: number;
  readonly mean: number;
}

/** Temperature at the face of one mode of wave number β per unit of its flux, times k·β. */
function response(wave: number, { thickness, conductivity, beyond, plate }: ExactPlate): number {
  const film = 1 / (beyond * plate[0] * plate[1]);
  const deep = Math.tanh(wave * thickness);
  const relative = (wave * conductivity) / film;
  return (deep + relative) / (1 + relative * deep);
}

function sinc(x: number): number {
  return x === 0 ? 1 : Math.sin(x) / x;
}

/**
 * Spreading resistance of a rectangular source in the middle of a rectangular plate: cosine series of the flux, each
 * mode conducted through the plate into its film. Derived: separation of variables.
 */
export function rectangularSeries(exact: ExactPlate, modes: number): Exact {
  const { source, plate, conductivity } = exact;
  const scale = 1 / (conductivity * plate[0] * plate[1]);
  let max = 0;
  let mean = 0;
  for (let m = 0; m <= modes; m++) {
    for (let n = 0; n <= modes; n++) {
      if (m + n === 0) continue;
      const across = (2 * Math.PI * m) / plate[0];
      const along = (2 * Math.PI * n) / plate[1];
      const shape = sinc((across * source[0]) / 2) * sinc((along * source[1]) / 2);
      const weight = (m === 0 ? 1 : 2) * (n === 0 ? 1 : 2) * shape;
      const wave = Math.hypot(across, along);
      const part = (scale * weight * response(wave, exact)) / wave;
      max += part;
      mean += part * shape;
    }
  }
  return { max, mean };
}

/** Bessel function of the first kind by its integral; the trapezium rule on a whole period converges at once. */
function bessel(order: number, x: number): number {
  const steps = 64 + 2 * Math.ceil(x);
  let sum = 0;
  for (let step = 0; step < steps; step++) {
    const angle = (2 * Math.PI * step) / steps;
    sum += Math.cos(order * angle - x * Math.sin(angle));
  }
  return sum / steps;
}

/** Zero of J₁ number n: McMahon's expansion, then Newton's steps with J₁′ = J₀ − J₁/x. */
function zeroOfBessel(n: number): number {
  const start = Math.PI * (n + 0.25);
  let x = start - 3 / (8 * start);
  for (let step = 0; step < 4; step++) x -= bessel(1, x) / (bessel(0, x) - bessel(1, x) / x);
  return x;
}

/**
 * The same for a round source and plate of equal areas: Bessel series of the flux. Derived: separation of variables.
 */
export function circularSeries(exact: ExactPlate, modes: number): Exact {
  const { source, plate, conductivity } = exact;
  const inner = Math.sqrt((source[0] * source[1]) / Math.PI);
  const outer = Math.sqrt((plate[0] * plate[1]) / Math.PI);
  const scale = 1 / (Math.PI * outer ** 2 * conductivity);
  let max = 0;
  let mean = 0;
  for (let n = 1; n <= modes; n++) {
    const zero = zeroOfBessel(n);
    const wave = zero / outer;
    const shape = (2 * bessel(1, wave * inner)) / (wave * inner);
    const part = (scale * shape * response(wave, exact)) / (bessel(0, zero) ** 2 * wave);
    max += part;
    mean += part * shape;
  }
  return { max, mean };
}
