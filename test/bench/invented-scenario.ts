/** What may vary in an invented scenario. */
export interface ScenarioPlan {
  readonly title: string;
  /** Two banks, or three with one on each side of the fins. */
  readonly banks: 2 | 3;
  /** Most fans side by side in a bank. */
  readonly most: number;
  /** Diameters of holes to choose from [mm], and how many kinds of dust filter. */
  readonly front: readonly number[];
  readonly rear: readonly number[];
  readonly filters: 1 | 2 | 3;
}

/** The first one stands also under `elements`. */
const filters = [
  '{ name: coarse, screen: 280 x 95 mm, open: 55 %, wire: 0.2 mm }',
  '{ name: fine, screen: 280 x 95 mm, open: 42 %, wire: 0.12 mm }',
  '{ name: foam, filter: foam, face: 280 x 95 mm, thickness: 4 mm, pores: 30 ppi }',
];

function holes(diameters: readonly number[]): string {
  return `{ hole: [${diameters.map((diameter) => `${diameter} mm`).join(', ')}] }`;
}

/**
 * An invented box: fins that up to three fans blow through, a board in the chamber behind them, up to three fans at
 * the exit. Three duties.
 *
 * @param plan what may vary
 */
export function inventScenario(plan: ScenarioPlan): string {
  const count = plan.most === 1 ? '1' : `1 to ${plan.most}`;
  const hasPull = plan.banks === 3;
  return `# Invented scenario, made by a program: no real product.
title: ${plan.title}

site: { room: 25 °C, altitude: 200 m, humidity: 50 % }
listener: { distance: 1 m }

heat:
  - { part: rectifier, power: 260 W, at: 70 °C, on: stack, fixed: 0.14 K/W, slope: 0.3 %/K, limit: 85 °C }
  - { part: board, power: 40 W, in: core, limit: { air: 50 °C } }

airway:
  chambers: [core]
  legs:
    - { leg: intake, from: outside, to: core, through: [front, dust, push, stack${hasPull ? ', pull' : ''}] }
    - { leg: gap-round-stack, from: outside, to: core, through: [side-gap] }
    - { leg: exhaust, from: core, to: outside, through: [exit, rear] }

elements:
  front: { perforated: 280 x 95 mm, hole: ${plan.front[0]} mm, web: 1.5 mm, sheet: 1.5 mm, facing: shroud }
  dust: { screen: 280 x 95 mm, open: 55 %, wire: 0.2 mm }
  push: { bank: fans, face: 92 mm, depth: 26 mm, inlet-gap: 8 mm, outlet-gap: 5 mm }
  stack: { fins: tower, face: 276 x 92 mm, depth: 30 mm, pitch: 2 mm, fin: 0.4 mm }
${hasPull ? '  pull: { bank: fans, face: 92 mm, depth: 26 mm, inlet-gap: 5 mm }\n' : ''}  side-gap: { slot: 180 x 5 mm }
  exit: { bank: fans, face: 80 mm, depth: 26 mm, outlet-gap: 8 mm }
  rear: { perforated: 260 x 90 mm, hole: ${plan.rear[0]} mm, web: 2 mm, sheet: 1.5 mm }

choices:
  push: { fans: catalog, count: ${count}, empty: allowed }
${hasPull ? `  pull: { fans: catalog, count: ${count}, empty: allowed }\n` : ''}  exit: { fans: catalog, count: ${count}, empty: allowed }
  front: ${holes(plan.front)}
  dust:
    element:
${filters
  .slice(0, plan.filters)
  .map((filter) => `      - ${filter}\n`)
  .join('')}  rear: ${holes(plan.rear)}

duties:
  - { duty: idle, share: 40 %, heat: 45 % }
  - { duty: work, share: 60 %, heat: 100 % }
  - { duty: hot day, share: 0 %, heat: 100 %, room: 35 °C }
`;
}
